namespace LubeController.Analysis.Specification;

/// <summary>What is kept of the rest, and of the time since the last dose.</summary>
internal record struct RestState
{
    /// <summary>Elapsed time of this rest, ms.</summary>
    internal long ElapsedMs;

    /// <summary>Shaft pulses of this rest.</summary>
    internal long ShaftPulses;

    /// <summary>Whether this rest followed failed, so that it lasts the restart delay at least.</summary>
    internal bool AfterFailure;

    /// <summary>Powered time since the last completed dose, ms.</summary>
    internal long OverdueMs;
}

/// <summary>When the next dose is due.</summary>
internal sealed class RestClock(SpecSettings settings, SpecState state, SpecScan scan, Shaft shaft)
{
    /// <summary>A pending dose waits for the restart delay, in failed for that of a new try; a new one for its rest, and for the delay after a reset.</summary>
    internal bool DoseIsDue
    {
        get
        {
            bool waits = state.Dose.Pending || state.Rest.AfterFailure;
            int delayMs = state.Phase == Phase.Failed ? settings.NewTryDelayMs : settings.RestartDelayMs;
            return (!waits || state.PhaseMs >= delayMs) && (state.Dose.Pending || RestIsOver);
        }
    }

    private bool Counts => state.Phase is not (Phase.Dose or Phase.RetryPause) && (shaft.MachineTurns || !settings.RestOnlyWhileRunning);

    private bool RestIsOver
    {
        get
        {
            RestState rest = state.Rest;
            bool byTime = rest.ElapsedMs >= settings.RestMs;
            bool byShaft = rest.ShaftPulses >= settings.RestShaftPulses;
            bool byFallback = state.Alarm(AlarmId.ShaftSignalLost).Active && rest.ElapsedMs >= settings.FallbackMs;
            return settings.RestMode switch
            {
                RestMode.Time => byTime,
                RestMode.Shaft => byShaft || byFallback,
                _ => byTime || byShaft,
            };
        }
    }

    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        if (Counts)
            state.Rest.ElapsedMs += elapsedMs;
        if (!shaft.BothSayStandstill)
            state.Rest.OverdueMs += elapsedMs;
    }

    /// <summary>Shaft pulses came in the time that has passed, so they belong to the rest as it stood.</summary>
    internal void CountShaftPulses()
    {
        if (Counts)
            state.Rest.ShaftPulses += scan.Inputs.ShaftPulses;
    }
}
