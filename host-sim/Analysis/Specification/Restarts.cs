namespace LubeController.Analysis.Specification;

/// <summary>Power-ups that found a saved state.</summary>
internal record struct RestartState
{
    /// <summary>Time since power came, ms, up to the save interval.</summary>
    internal int PoweredMs;

    /// <summary>How many since the window began.</summary>
    internal int Count;

    /// <summary>Powered time since the window began with the first of them, ms, up to the window's length.</summary>
    internal int WindowMs;
}

/// <summary>Power-ups that come too soon after each other, or too often.</summary>
[RegressionModel("the window in which restarts are counted, and that a reset forgets none of them")]
internal sealed class Restarts(SpecSettings settings, SpecState state)
{
    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        ref RestartState restarts = ref state.Restarts;
        restarts.PoweredMs = Durations.More(restarts.PoweredMs, elapsedMs, settings.SaveIntervalMs);
        if (restarts.Count > 0)
            restarts.WindowMs = Durations.More(restarts.WindowMs, elapsedMs, settings.RestartWindowMs);
    }

    /// <summary>
    /// Counts a power-up that finds a saved state. The rules do not say whether a reset forgets those before: it does not, since
    /// nothing that a person presses makes them fewer.
    /// </summary>
    /// <returns>Whether it is unexpected.</returns>
    internal bool CountPowerUp()
    {
        ref RestartState restarts = ref state.Restarts;
        bool tooSoon = restarts.PoweredMs < settings.SaveIntervalMs;
        restarts.PoweredMs = 0;
        if (settings.RestartsMost == 0)
            return false;
        if (restarts.WindowMs >= settings.RestartWindowMs)
            restarts = default;
        restarts.Count++;
        return tooSoon || restarts.Count > settings.RestartsMost;
    }
}
