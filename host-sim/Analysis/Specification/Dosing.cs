namespace LubeController.Analysis.Specification;

/// <summary>The progress of the dose that runs, is pending or comes next.</summary>
internal record struct DoseProgress
{
    /// <summary>Whether an interrupted dose waits to be resumed.</summary>
    internal bool Pending;

    /// <summary>Whether the running dose is a new try from failed.</summary>
    internal bool Try;

    /// <summary>Pulses counted; in rest the credit of run-on pulses.</summary>
    internal int Count;

    /// <summary>Pump-on time of this dose, ms.</summary>
    internal long PumpOnMs;

    /// <summary>Whether the divider's position is known, so that every pulse is a cycle.</summary>
    internal bool PositionKnown;

    /// <summary>Pump-on time in doses without line pressure, ms.</summary>
    internal int PressureMissingMs;
}

/// <summary>A dose from its begin to its end, and what ends it.</summary>
internal sealed class Dosing(
    SpecSettings settings, SpecState state, SpecScan scan, AlarmBook alarms, StandingAlarms standing, SwitchTimers timers,
    PressureDose byPressure, Phases phases)
{
    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        if (state.Phase != Phase.Dose || !state.Pump.On)
            return;
        state.Dose.PumpOnMs += elapsedMs;
        timers.Charge(elapsedMs);
        if (settings.PressureMissingMs > 0 && !state.Line.IsReached)
            state.Dose.PressureMissingMs = Durations.More(state.Dose.PressureMissingMs, elapsedMs, settings.PressureMissingMs);
    }

    /// <summary>Begins a dose, or goes on with the pending one.</summary>
    internal void Begin(bool isTry)
    {
        if (!state.Dose.Pending || isTry)
            state.Dose.PumpOnMs = 0;
        state.Dose.Pending = false;
        state.Dose.Try = isTry;
        if (isTry)
        {
            // A new try has times of its own, since its timers have run out already.
            scan.BeganBeforeTry = scan.Began;
            state.Dose.PressureMissingMs = 0;
            state.Line.VentingMs = 0;
            timers.GrantTry();
        }

        timers.AllowFirstPulse();
        byPressure.GoOn();
    }

    /// <summary>The dose waits to be resumed.</summary>
    internal void Interrupt()
    {
        state.Dose.Pending = true;
        state.Dose.Try = false;
        byPressure.Interrupt();
    }

    /// <summary>The dose is given: a full rest begins.</summary>
    internal void Complete()
    {
        scan.DoseCompleted = true;
        if (state.Dose.Try)
            alarms.EndWhatOnlyARunningPumpShows();
        state.Dose = new DoseProgress
        {
            PositionKnown = settings.DoseMode == DoseMode.Cycles && state.Dose.PositionKnown,
            PressureMissingMs = state.Dose.PressureMissingMs,
        };
        state.Line = state.Line with { Step = PressureStep.None, Cycles = 0, HeldMs = 0, VentingMs = 0 };
        state.Rest.ElapsedMs = 0;
        state.Rest.ShaftPulses = 0;
        state.Rest.OverdueMs = 0;
        alarms.Update(AlarmId.LubricationOverdue);
    }

    /// <summary>A dose-ending switch has pulsed.</summary>
    internal void CountPulse()
    {
        ref DoseProgress dose = ref state.Dose;
        if (state.Phase is Phase.Prime or Phase.Stopped)
            return;

        // Where the position is not known, counting opens at the first pulse, which therefore is not counted.
        if (!dose.PositionKnown)
        {
            dose.PositionKnown = true;
            return;
        }

        // The next dose keeps at least one pulse to be given with the pump on.
        bool inDose = state.Phase is Phase.Dose or Phase.RetryPause;
        if (dose.Count < (inDose ? settings.DosePulses : settings.DosePulses - 1))
            dose.Count++;
        if (inDose && dose.Count >= settings.DosePulses)
            phases.Fire(PhaseEvent.DoseOver);
    }

    /// <summary>A dose that was held goes on with the supply, and its first pulse is awaited again.</summary>
    internal void ObeyHolding()
    {
        bool held = standing.Any(AlarmAction.Holding);
        if (held == state.Pump.Held)
            return;
        state.Pump.Held = held;
        if (state.Phase != Phase.Dose)
            return;
        if (held)
        {
            byPressure.Interrupt();
        }
        else
        {
            byPressure.GoOn();
            timers.AllowFirstPulse();
        }
    }

    /// <summary>Completes the dose, or fails it where it is beyond a limit or a timeout has run out.</summary>
    internal void EndWhereDue()
    {
        if (state.Phase != Phase.Dose || standing.Any(AlarmAction.Holding))
            return;
        byPressure.Advance();
        bool ran = settings.DoseMode == DoseMode.RunTime && state.Dose.PumpOnMs >= settings.DoseRunMs;
        if (ran || byPressure.IsOver)
        {
            phases.Fire(PhaseEvent.DoseOver);
            return;
        }

        byPressure.FailIfNotVented();
        if (byPressure.IsWaiting)
            return;
        if (state.Dose.PumpOnMs >= settings.DoseLimitMs)
            alarms.FailDose(AlarmId.DoseTooLong);
        if (settings.PressureMissingMs > 0 && state.Dose.PressureMissingMs >= settings.PressureMissingMs)
            alarms.FailDose(AlarmId.LinePressureMissing);
        timers.EndThoseRunOut();
    }

    /// <summary>Counting opens again at the first pulse.</summary>
    internal void ForgetPosition() => state.Dose.PositionKnown = false;
}
