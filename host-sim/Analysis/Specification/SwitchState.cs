namespace LubeController.Analysis.Specification;

/// <summary>One cycle switch between two scans.</summary>
internal sealed class SwitchState
{
    /// <summary>Its debounced level.</summary>
    internal InputFilter Filter;

    /// <summary>Pump-on time of doses since its last accepted edge, ms.</summary>
    internal long TimerMs;

    /// <summary>Time since its last accepted edge to on, up to the shortest interval, ms.</summary>
    internal int SinceOnMs;

    /// <summary>The same for the edge to off.</summary>
    internal int SinceOffMs;

    /// <summary>Retries used.</summary>
    internal int RetriesUsed;

    /// <summary>First-pulse allowance that its timeout has now, ms; the dose-ending switch's only.</summary>
    internal int AllowanceMs;

    /// <summary>Pulses of others since its last accepted edge.</summary>
    internal WitnessCounts Witnesses;

    /// <summary>Its chatter.</summary>
    internal ChatterState Chatter;

    /// <summary>Another switch has proved it wrong; until reset.</summary>
    internal bool Proved;

    /// <summary>It was found wrong and is not believed, until reset has cleared the alarm.</summary>
    internal bool Faulty;

    /// <summary>Whether it is found wrong now.</summary>
    internal bool IsWrong => Proved || Chatter.On;

    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs, int shortestIntervalMs)
    {
        Filter.Pass(elapsedMs);
        Chatter.Pass(elapsedMs);
        SinceOnMs = Durations.More(SinceOnMs, elapsedMs, shortestIntervalMs);
        SinceOffMs = Durations.More(SinceOffMs, elapsedMs, shortestIntervalMs);
    }

    /// <summary>Its next level accepted is a baseline, and no edge.</summary>
    internal void ForgetLevel()
    {
        Filter = default;
        Chatter = default;
    }

    /// <summary>Timer, retries and allowance begin again.</summary>
    internal void Renew(int allowanceMs)
    {
        TimerMs = 0;
        RetriesUsed = 0;
        AllowanceMs = allowanceMs;
    }
}
