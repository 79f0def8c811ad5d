using System;

namespace LubeController.Analysis.Specification;

/// <summary>What is kept of the pump.</summary>
internal record struct PumpState
{
    /// <summary>It is on.</summary>
    internal bool On;

    /// <summary>Time since it went off, up to just beyond the run-on time, ms.</summary>
    internal int OffMs;

    /// <summary>It was held by an alarm.</summary>
    internal bool Held;

    /// <summary>Pump-on time without a revolution, ms.</summary>
    internal int StillMs;

    /// <summary>It was on for too long without a revolution; only a reset ends that.</summary>
    internal bool StandsStill;
}

/// <summary>The pump and its revolutions.</summary>
internal sealed class Pump(SpecSettings settings, SpecState state, SpecScan scan, AlarmBook alarms, StandingAlarms standing)
{
    /// <summary>Whether a pulse now cannot be its doing: it is off, and so is the run-on time over.</summary>
    internal bool IsIdle => !state.Pump.On && state.Pump.OffMs > settings.RunOnMs;

    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        ref PumpState pump = ref state.Pump;
        if (!pump.On)
            pump.OffMs = Durations.More(pump.OffMs, elapsedMs, Durations.JustBeyond(settings.RunOnMs));
        else if (settings.RevolutionMissingMs is int limit)
            pump.StillMs = Durations.More(pump.StillMs, elapsedMs, limit);
    }

    /// <summary>Counts its revolutions.</summary>
    internal void CountRevolutions()
    {
        if (settings.RevolutionMissingMs is not int limit)
            return;
        ref PumpState pump = ref state.Pump;
        if (scan.Inputs.PumpRevolutions > 0)
            pump.StillMs = Math.Min(pump.StillMs, scan.Inputs.PumpRevolutionAgeMs);
        if (pump.StillMs >= limit)
            pump.StandsStill = true;
    }

    /// <summary>That the pump stands still, too, only a running pump can show; the contact shows it all the time.</summary>
    internal void Reset()
    {
        state.Pump.StillMs = 0;
        if (!state.Pump.StandsStill)
            return;
        state.Pump.StandsStill = false;
        if (state.Levels.Overload.Accepted == false)
            alarms.EndAtOnce(AlarmId.PumpOverload);
    }

    /// <summary>It runs where the phase wants it and no alarm forbids it.</summary>
    internal void Drive()
    {
        bool byPressure = settings.DoseMode == DoseMode.Pressure;
        bool doses = state.Phase == Phase.Dose && (!byPressure || state.Line.Step is PressureStep.Pressurise or PressureStep.Hold);
        state.Pump.On = (doses || state.Phase == Phase.Prime) && !standing.Any(AlarmAction.Interlock) && !standing.Any(AlarmAction.Holding);
        if (!state.Pump.On)
            return;

        // The vent valve is closed: nothing is vented any more.
        state.Pump.OffMs = 0;
        state.Line.VentingMs = 0;
        state.Line.VentedMs = 0;
    }
}
