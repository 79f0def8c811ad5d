namespace LubeController.Core;

/// <summary>
/// The steps of a dose by pressure. Injectors that were not recharged deliver nothing although the pressure rises as ever:
/// so the pump starts only from a line that has stood vented for vent-time, and a pressure cycle counts only once the
/// line has stood so again.
/// </summary>
internal sealed class PressureDose
{
    private readonly Settings _settings;
    private readonly PressureWatch _pressure;
    private readonly ScanEvents _events;
    private int _heldMs;
    private int _ventingMs;
    private int _fallenMs;
    private DoseStep _step;
    private int _cycles;

    public PressureDose(Settings settings, PressureWatch pressure, ScanEvents events)
    {
        _settings = settings;
        _pressure = pressure;
        _events = events;
    }

    public DoseStep Step => _step;

    /// <summary>Pressure cycles counted in the present or pending dose.</summary>
    public int Cycles => _cycles;

    /// <summary>Whether doses end by pressure at all; if not, nothing here acts.</summary>
    public bool Chosen => _settings.DoseMode == DoseMode.Pressure;

    public bool PumpRuns => _step == DoseStep.Pressurise || _step == DoseStep.Hold;

    public bool IsComplete => _cycles >= _settings[SettingField.PressureCycles];

    /// <summary>
    /// Whether the line was not vented in its time. After power-up a pressure switch must first show a level:
    /// that decides, and its debounce bounds the wait.
    /// </summary>
    public bool IsNotVented =>
        Vents && _pressure.IsKnown && _ventingMs >= _settings[SettingField.VentLimitMs] && !IsRecharged;

    private bool Vents => _step == DoseStep.Recharge || _step == DoseStep.Vent;

    private bool IsRecharged => _pressure.IsFallen && _fallenMs >= _settings[SettingField.VentMs];

    /// <summary>The phase became dose: venting that was cut short is finished, anything else starts from a recharged line.</summary>
    /// <returns>Whether the pump starts just now.</returns>
    public bool Begin() => _step != DoseStep.Vent && Start();

    /// <summary>The phase is no longer dose. A pressure cycle whose pressure was held is kept, any other is lost.</summary>
    public void Interrupt()
    {
        if (_step != DoseStep.Vent)
            _step = DoseStep.None;
    }

    /// <summary>
    /// The line was not vented: the pressure that seemed to be held may have been a false signal, so the pressure cycle
    /// is repeated: the injectors had better discharge once too often than not at all.
    /// </summary>
    public void Abandon() => _step = DoseStep.None;

    /// <summary>The dose was completed, or doses no longer end by pressure.</summary>
    public void End()
    {
        _step = DoseStep.None;
        _cycles = 0;
        _ventingMs = 0;
    }

    /// <summary>Forgets everything, as where another dose mode is set.</summary>
    public void Clear()
    {
        End();
        _heldMs = 0;
        _fallenMs = 0;
    }

    /// <summary>The time for venting counts from zero again, after its limit has acted.</summary>
    public void Renew() => _ventingMs = 0;

    /// <summary>The pump is on and the vent valve closed: nothing is vented any more.</summary>
    public void NotePumpOn()
    {
        _ventingMs = 0;
        _fallenMs = 0;
    }

    /// <param name="elapsedMs">Time that has passed.</param>
    /// <param name="pumpRan">Whether the pump was on, and the vent valve closed, throughout.</param>
    /// <param name="inDose">Whether the phase was dose throughout.</param>
    public void Advance(int elapsedMs, bool pumpRan, bool inDose)
    {
        if (!Chosen)
            return;
        if (pumpRan && _step == DoseStep.Hold)
            _heldMs = Saturating.Add(_heldMs, elapsedMs);
        if (!pumpRan && _pressure.IsFallen)
            _fallenMs = Saturating.Add(_fallenMs, elapsedMs);
        if (inDose && Vents)
            _ventingMs = Saturating.Add(_ventingMs, elapsedMs);
    }

    /// <summary>Takes what the pressure watch has just been shown.</summary>
    public void Sample()
    {
        if (_pressure.IsKnown && !_pressure.IsFallen)
            _fallenMs = 0;
    }

    /// <summary>Takes the next step where it is due. Pressure that is lost just as its hold time ends was not held.</summary>
    /// <returns>Whether the pump starts just now.</returns>
    public bool MakeStep()
    {
        switch (_step)
        {
            case DoseStep.Recharge:
                return IsRecharged && Pressurise();
            case DoseStep.Pressurise:
                if (_pressure.IsReached)
                    EnterStep(DoseStep.Hold);
                return false;
            case DoseStep.Hold:
                if (!_pressure.IsReached)
                    EnterStep(DoseStep.Pressurise);
                else if (_heldMs >= _settings[SettingField.HoldMs])
                    EnterStep(DoseStep.Vent);
                return false;
            case DoseStep.Vent:
                if (!IsRecharged)
                    return false;
                _cycles = Saturating.Add(_cycles, 1);
                return !IsComplete && Pressurise();
            default:
                return Start();
        }
    }

    /// <summary>Time to the next end of a time in the phase dose; an abandoned step restarts at once.</summary>
    public int DeadlineMs()
    {
        int deadline = _step == DoseStep.None ? 1 : Saturating.Never;
        if (_step == DoseStep.Hold)
            deadline = Saturating.Remaining(_settings[SettingField.HoldMs], _heldMs);
        if (Vents && _pressure.IsKnown)
            deadline = Saturating.Remaining(_settings[SettingField.VentLimitMs], _ventingMs);
        if (Vents && _pressure.IsFallen)
            deadline = Saturating.Min(deadline, Saturating.Remaining(_settings[SettingField.VentMs], _fallenMs));
        return deadline;
    }

    public void Transfer(StateStream stream)
    {
        _step = (DoseStep)stream.Number((int)_step);
        _cycles = stream.UpTo(_cycles, _settings[SettingField.PressureCycles]);
        _heldMs = stream.UpTo(_heldMs, _settings[SettingField.HoldMs]);
        _ventingMs = stream.UpTo(_ventingMs, _settings[SettingField.VentLimitMs]);
        _fallenMs = stream.UpTo(_fallenMs, _settings[SettingField.VentMs]);
    }

    private bool Start()
    {
        if (IsRecharged)
            return Pressurise();
        EnterStep(DoseStep.Recharge);
        return false;
    }

    private bool Pressurise()
    {
        // The line was vented, so pressure gets its whole time again, however much of it an interrupted dose had used;
        // the dose's limit on pump-on time bounds them all.
        _pressure.Renew();
        EnterStep(DoseStep.Pressurise);
        return true;
    }

    private void EnterStep(DoseStep next)
    {
        _step = next;
        _heldMs = 0;
        _events.Add(ScanEvent.DoseStepTaken, (int)next, _cycles);
    }
}
