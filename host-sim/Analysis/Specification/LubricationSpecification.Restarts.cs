namespace LubeController.Analysis.Specification;

/// <summary>Power-ups that come too soon after each other, or too often.</summary>
public sealed partial class LubricationSpecification
{
    private void PassRestarts(int elapsedMs)
    {
        ref Restarts restarts = ref _state.Restarts;
        restarts.PoweredMs = More(restarts.PoweredMs, elapsedMs, _settings.SaveIntervalMs);
        if (restarts.Count > 0)
            restarts.WindowMs = More(restarts.WindowMs, elapsedMs, _settings.RestartWindowMs);
    }

    /// <summary>
    /// Called at a power-up that finds a saved state. The rules do not say whether a reset forgets those before: it does not,
    /// since nothing that a person presses makes them fewer.
    /// </summary>
    private void NoteRestart()
    {
        ref Restarts restarts = ref _state.Restarts;
        bool tooSoon = restarts.PoweredMs < _settings.SaveIntervalMs;
        restarts.PoweredMs = 0;
        if (_settings.RestartsMost == 0)
            return;
        if (restarts.WindowMs >= _settings.RestartWindowMs)
            restarts = default;
        restarts.Count++;
        if (tooSoon || restarts.Count > _settings.RestartsMost)
            NoteAtPowerUp(AlarmId.RestartUnexpected);
    }
}
