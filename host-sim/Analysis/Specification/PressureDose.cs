namespace LubeController.Analysis.Specification;

/// <summary>The steps of a dose by pressure on a single-line system. In a dose of another kind nothing here happens.</summary>
[RegressionModel("recharging before the first pressure cycle, the number of pressure cycles, pressure lost while it is held, and where an interrupted dose goes on")]
internal sealed class PressureDose(SpecSettings settings, SpecState state, AlarmBook alarms, LinePressure pressure, SwitchTimers timers)
{
    /// <summary>Whether the pump waits for the line.</summary>
    internal bool IsWaiting => IsUsed && state.Line.Step is not (PressureStep.Pressurise or PressureStep.Hold);

    /// <summary>Whether all its pressure cycles are counted.</summary>
    internal bool IsOver => IsUsed && state.Line.Cycles >= settings.PressureCycles;

    private bool IsUsed => settings.DoseMode == DoseMode.Pressure;

    private bool Recharged => state.Line.IsVented && state.Line.VentedMs >= settings.VentMs;

    private bool StepVents => state.Line.Step is PressureStep.Recharge or PressureStep.Vent;

    /// <summary>Lets time pass.</summary>
    internal void Pass(int elapsedMs)
    {
        if (!IsUsed)
            return;
        ref LineState line = ref state.Line;
        if (state.Pump.On && line.Step == PressureStep.Hold)
            line.HeldMs = Durations.More(line.HeldMs, elapsedMs, settings.HoldMs);
        if (!state.Pump.On && line.IsVented)
            line.VentedMs = Durations.More(line.VentedMs, elapsedMs, settings.VentMs);
        if (state.Phase == Phase.Dose && !state.Pump.Held && StepVents)
            line.VentingMs = Durations.More(line.VentingMs, elapsedMs, settings.VentLimitMs);
    }

    /// <summary>Goes to the next step of the dose where it is due.</summary>
    internal void Advance()
    {
        if (!IsUsed)
            return;
        ref LineState line = ref state.Line;
        switch (line.Step)
        {
            case PressureStep.None:
                BeginStep();
                break;
            case PressureStep.Recharge when Recharged:
                Pressurise();
                break;
            case PressureStep.Pressurise when line.IsReached:
                GoTo(PressureStep.Hold);
                break;
            case PressureStep.Hold when !line.IsReached:
                GoTo(PressureStep.Pressurise);
                break;
            case PressureStep.Hold when line.HeldMs >= settings.HoldMs:
                GoTo(PressureStep.Vent);
                break;
            case PressureStep.Vent when Recharged:
                line.Cycles++;
                if (line.Cycles < settings.PressureCycles)
                    Pressurise();
                break;
            default:
                break;
        }
    }

    /// <summary>A line that is not vented in its time fails the dose.</summary>
    internal void FailIfNotVented()
    {
        if (!IsUsed || !StepVents || !pressure.IsKnown || state.Line.VentingMs < settings.VentLimitMs || Recharged)
            return;
        alarms.FailDose(AlarmId.LineNotVented);
        state.Line.Step = PressureStep.None;
    }

    /// <summary>A dose goes on: cut short in venting it finishes that, cut short elsewhere it begins that pressure cycle again.</summary>
    internal void GoOn()
    {
        if (IsUsed && state.Line.Step != PressureStep.Vent)
            BeginStep();
    }

    /// <summary>A dose is cut short.</summary>
    internal void Interrupt()
    {
        if (state.Line.Step != PressureStep.Vent)
            state.Line.Step = PressureStep.None;
    }

    private void BeginStep()
    {
        if (Recharged)
            Pressurise();
        else
            GoTo(PressureStep.Recharge);
    }

    /// <summary>The pump starts against a vented line: pressure, and the first pulse, are awaited again.</summary>
    private void Pressurise()
    {
        timers.AllowFirstPulse();
        state.Dose.PressureMissingMs = 0;
        GoTo(PressureStep.Pressurise);
    }

    private void GoTo(PressureStep step)
    {
        state.Line.Step = step;
        state.Line.HeldMs = 0;
    }
}
