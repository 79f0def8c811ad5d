namespace LubeController.Analysis.Specification;

/// <summary>Line pressure, and the steps of a dose by pressure on a single-line system.</summary>
public sealed partial class LubricationSpecification
{
    private bool HasTransmitter => _settings.OverpressurePa is not null;

    private bool SwitchShowsPressure => _settings.PressureSwitchUse == PressureSwitchUse.Reached;

    private bool OverPressure =>
        _inputs.PressurePa > _settings.OverpressurePa
        || (_settings.PressureSwitchUse == PressureSwitchUse.Limit && _state.Levels.Pressure.Level);

    private bool LimitKnown => _settings.PressureSwitchUse != PressureSwitchUse.Limit || _state.Levels.Pressure.Known;

    /// <summary>4 to 20 mA stand for 0 to the span: 3.6 mA is a fortieth of it below, 21 mA a sixteenth above (NAMUR NE 43).</summary>
    private bool SignalLost => HasTransmitter && _settings.PressureSpanPa > 0
        && (_inputs.PressurePa < -(_settings.PressureSpanPa / 40) || _inputs.PressurePa > _settings.PressureSpanPa + (_settings.PressureSpanPa / 16));

    /// <summary>A switch just powered up is heard first.</summary>
    private bool PressureKnown => !SwitchShowsPressure || _state.Levels.Pressure.Known;

    private bool Recharged => _state.Held.Vented && _state.Line.VentedMs >= _settings.VentMs;

    private bool StepPumps => _state.Line.Step is PressureStep.Pressurise or PressureStep.Hold;

    private bool StepVents => _state.Line.Step is PressureStep.Recharge or PressureStep.Vent;

    private bool ByPressure => _settings.DoseMode == DoseMode.Pressure;

    private void PassPressure(int elapsedMs)
    {
        if (_state.Phase == Phase.Dose && _state.Pump && _settings.PressureMissingMs > 0 && !_state.Held.PressureReached)
            _state.Dose.PressureMissingMs = More(_state.Dose.PressureMissingMs, elapsedMs, _settings.PressureMissingMs);
        if (!ByPressure)
            return;
        ref LineState line = ref _state.Line;
        if (_state.Pump && line.Step == PressureStep.Hold)
            line.HeldMs = More(line.HeldMs, elapsedMs, _settings.HoldMs);
        if (!_state.Pump && _state.Held.Vented)
            line.VentedMs = More(line.VentedMs, elapsedMs, _settings.VentMs);
        if (_state.Phase == Phase.Dose && !_state.Held.PumpHeld && StepVents)
            line.VentingMs = More(line.VentingMs, elapsedMs, _settings.VentLimitMs);
    }

    /// <summary>In a dose by pressure switch and transmitter must both show pressure, or both none; elsewhere either shows it.</summary>
    private void TakePressure()
    {
        _state.Levels.Pressure.Take(_inputs.PressureSwitch, _settings.PressureDebounceMs);
        bool bySwitch = SwitchShowsPressure && _state.Levels.Pressure.Level;
        bool byTransmitter = HasTransmitter && _inputs.PressurePa >= _settings.PressureReachedPa;
        bool both = SwitchShowsPressure && HasTransmitter && ByPressure;
        ref Held held = ref _state.Held;
        held.PressureReached = both ? bySwitch && byTransmitter : bySwitch || byTransmitter;
        held.Vented = PressureKnown && !bySwitch && (!HasTransmitter || _inputs.PressurePa <= _settings.PressureVentedPa);
        if (held.PressureReached)
            _state.Dose.PressureMissingMs = 0;
        if (PressureKnown && !held.Vented)
            _state.Line.VentedMs = 0;
    }

    /// <summary>Takes the next step of the dose where it is due.</summary>
    private void JudgeStep()
    {
        ref LineState line = ref _state.Line;
        switch (line.Step)
        {
            case PressureStep.None:
                BeginStep();
                break;
            case PressureStep.Recharge when Recharged:
                Pressurise();
                break;
            case PressureStep.Pressurise when _state.Held.PressureReached:
                TakeStep(PressureStep.Hold);
                break;
            case PressureStep.Hold when !_state.Held.PressureReached:
                TakeStep(PressureStep.Pressurise);
                break;
            case PressureStep.Hold when line.HeldMs >= _settings.HoldMs:
                TakeStep(PressureStep.Vent);
                break;
            case PressureStep.Vent when Recharged:
                line.Cycles++;
                if (line.Cycles < _settings.PressureCycles)
                    Pressurise();
                break;
            default:
                break;
        }
    }

    private void BeginStep()
    {
        if (Recharged)
            Pressurise();
        else
            TakeStep(PressureStep.Recharge);
    }

    /// <summary>The pump starts against a vented line: pressure, and the first pulse, are awaited anew.</summary>
    private void Pressurise()
    {
        AllowFirstPulse();
        _state.Dose.PressureMissingMs = 0;
        TakeStep(PressureStep.Pressurise);
    }

    private void TakeStep(PressureStep step)
    {
        _state.Line.Step = step;
        _state.Line.HeldMs = 0;
    }

    /// <summary>A dose goes on: cut short in venting it finishes that, cut short elsewhere it begins that pressure cycle again.</summary>
    private void GoOnWithStep()
    {
        if (ByPressure && _state.Line.Step != PressureStep.Vent)
            BeginStep();
    }

    private void InterruptStep()
    {
        if (_state.Line.Step != PressureStep.Vent)
            _state.Line.Step = PressureStep.None;
    }

    private void JudgeVenting()
    {
        if (!StepVents || !PressureKnown || _state.Line.VentingMs < _settings.VentLimitMs || Recharged)
            return;
        FailDose(AlarmId.LineNotVented);
        _state.Line.Step = PressureStep.None;
    }
}
