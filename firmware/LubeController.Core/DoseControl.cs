namespace LubeController.Core;

/// <summary>Begins doses, counts their edges, bounds them, and completes or fails them.</summary>
internal sealed class DoseControl
{
    private readonly Settings _settings;
    private readonly Inputs _inputs;
    private readonly ScanEvents _events;
    private readonly AlarmList _alarms;
    private readonly Sensors _sensors;
    private readonly CycleSwitches _switches;
    private readonly PhaseMachine _phases;
    private readonly DoseProgress _dose;
    private readonly PressureDose _line;
    private readonly RestClock _rest;
    private readonly OverdueClock _overdue;
    private bool _fails;
    private bool _pumpHeld;
    private int _completed;

    public DoseControl(Settings settings, Inputs inputs, ScanEvents events, AlarmList alarms, Sensors sensors, PhaseMachine phases, DoseProgress dose, PressureDose line, RestClock rest, OverdueClock overdue)
    {
        _settings = settings;
        _inputs = inputs;
        _events = events;
        _alarms = alarms;
        _sensors = sensors;
        _switches = sensors.Switches;
        _phases = phases;
        _dose = dose;
        _line = line;
        _rest = rest;
        _overdue = overdue;
    }

    /// <summary>Whether the dose under way has failed in this scan.</summary>
    public bool Fails => _fails;

    /// <summary>Whether a low supply holds the dose under way.</summary>
    public bool IsHeld => _pumpHeld;

    /// <summary>Doses completed, saturating.</summary>
    public int Completed => _completed;

    /// <summary>A scan begins: nothing has failed yet.</summary>
    public void ClearFailure() => _fails = false;

    /// <summary>A reset has cleared what stood: a failure counts only if a dose-ending alarm is left.</summary>
    public void ForgiveFailure() => _fails &= _alarms.DoseEndingStands;

    /// <summary>The dose under way fails.</summary>
    public void Fail() => _fails = true;

    /// <summary>Holds the dose while the supply is low. One that was held goes on as after an interruption: the line must be pressurised again.</summary>
    public void ObeyHolding()
    {
        bool held = _alarms.HoldingStands;
        if (held == _pumpHeld)
            return;
        _pumpHeld = held;
        if (_phases.Phase != Phase.Dose)
            return;
        if (held)
            _line.Interrupt();
        else if (_line.Chosen)
            _line.Begin();
        if (!held)
            _switches.AllowFirstPulse();
    }

    /// <summary>Begins a dose, or goes on with the pending one.</summary>
    /// <param name="newTry">Whether it is a new try from failed.</param>
    public void Begin(bool newTry)
    {
        _dose.Begin();
        _switches.AllowFirstPulse();
        if (newTry)
        {
            // What was found before the try began is why it is one.
            _fails = false;

            // The failure stands already, so a try is given a timeout and a pump-on time of its own; else it would end at once.
            _dose.RenewPumpOn();
            _sensors.Pressure.Renew();
            _line.Renew();
            _switches.GrantTry();
        }

        _phases.EnterDose(newTry);
    }

    /// <summary>Completes the dose under way, or fails it at one of its limits.</summary>
    public void Check()
    {
        if (_phases.Phase != Phase.Dose || _alarms.HoldingStands)
            return;
        if (_settings.DoseMode == DoseMode.RunTime && _dose.IsComplete)
        {
            Complete();
            return;
        }

        // What follows is bounded by pump-on time.
        if (_line.Chosen && !PumpRunsByPressure())
            return;
        if (_dose.IsTooLong)
            Fail(AlarmId.DoseTooLong);
        if (_sensors.Pressure.IsMissing)
            Fail(AlarmId.LinePressureMissing);
        CheckTimeouts();
    }

    /// <summary>Takes an accepted edge of the dose-ending switch.</summary>
    /// <param name="index">The switch.</param>
    /// <param name="idle">Whether the pump has been off for too long to have caused it.</param>
    public void AddEdge(int index, bool idle)
    {
        if (!idle && !_line.Chosen && _phases.InDose)
        {
            _events.Add(_dose.Count() ? ScanEvent.PulseCounted : ScanEvent.PulseOpened, index, _dose.Edges);
            if (_settings.DoseMode == DoseMode.Cycles && _dose.IsComplete)
                Complete();
            return;
        }

        if (idle || _phases.Phase == Phase.Prime || _phases.Phase == Phase.Stopped || _line.Chosen)
        {
            _events.Add(ScanEvent.PulseSeen, index, 0);
            return;
        }

        int credit = _dose.Credit();
        _events.Add(credit < 0 ? ScanEvent.PulseOpened : ScanEvent.PulseCredited, index, credit < 0 ? 0 : credit);
    }

    public int DeadlineMs()
    {
        if (_pumpHeld)
            return Saturating.Never;
        if (!_line.Chosen)
            return _dose.DeadlineMs();
        return _line.PumpRuns ? Saturating.Min(_dose.DeadlineMs(), _line.DeadlineMs()) : _line.DeadlineMs();
    }

    public void TransferCompleted(StateStream stream) => _completed = stream.Counter(_completed);

    public void TransferHeld(StateStream stream) => _pumpHeld = stream.Flag(_pumpHeld);

    /// <summary>Takes the next step of a dose by pressure.</summary>
    /// <returns>Whether the pump runs in it.</returns>
    private bool PumpRunsByPressure()
    {
        if (_line.MakeStep())
            _switches.AllowFirstPulse();
        if (_line.IsComplete)
        {
            Complete();
            return false;
        }

        if (_line.IsNotVented)
        {
            Fail(AlarmId.LineNotVented);
            _line.Abandon();
        }

        return _line.PumpRuns;
    }

    private void CheckTimeouts()
    {
        for (int index = 0; index < _switches.Count; index++)
        {
            CycleSwitch one = _switches[index];
            if (!one.TimeoutOver)
                continue;
            if (one.RetryLeft)
            {
                one.UseRetry();
                _phases.Enter(Phase.RetryPause);
            }
            else
            {
                Fail(AlarmId.DividerStalled);
            }
        }
    }

    private void Fail(AlarmId id)
    {
        _alarms.Hold(id);
        _fails = true;
    }

    private void Complete()
    {
        _events.Add(ScanEvent.DoseCompleted, _line.Chosen ? _line.Cycles : _dose.Edges, 0);
        _completed = Saturating.Add(_completed, 1);
        _overdue.Renew();
        _alarms.SetCondition(AlarmId.LubricationOverdue, false);
        _dose.End();
        _line.End();
        _rest.Begin();
        _rest.AskRule(_inputs);
        if (_phases.IsTry)
            _alarms.EndShownByDose();
        _phases.Enter(_alarms.PumpStoppingStands ? Phase.Failed : Phase.Rest);
    }
}
