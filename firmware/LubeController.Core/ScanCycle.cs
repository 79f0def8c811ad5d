namespace LubeController.Core;

/// <summary>
/// What the core is made of, and the order in which a scan goes through it: first the time that has passed, then the inputs, then
/// the decisions, then the outputs.
/// </summary>
internal sealed class ScanCycle
{
    public readonly AlarmConditions Conditions;
    public readonly DoseControl Doses;
    public readonly DoseProgress Dose;
    public readonly PhaseMachine Phases;
    public readonly Presses Presses;
    public readonly PressureDose Line;
    public readonly RestartCount Restarts;
    public readonly Sensors Sensors;
    public readonly QuietSpan Span = new QuietSpan();

    private readonly Settings _settings;
    private readonly Inputs _inputs;
    private readonly Outputs _outputs;
    private readonly AlarmList _alarms;
    private readonly bool _hasRule;
    private readonly Buttons _buttons;
    private readonly OutputDriver _driver;
    private readonly OutputTest _test;
    private readonly OverdueClock _overdue;
    private readonly PulseIntake _pulses;
    private readonly RestClock _rest;
    private readonly DoseSchedule _schedule;

    public ScanCycle(Inputs inputs, Outputs outputs, Settings settings, ScanEvents events, AlarmList alarms, IRestRule? rule)
    {
        _settings = settings;
        _inputs = inputs;
        _outputs = outputs;
        _alarms = alarms;
        _hasRule = rule != null;
        _buttons = new Buttons(settings);
        _overdue = new OverdueClock(settings);
        _rest = new RestClock(settings, rule);
        Restarts = new RestartCount(settings);
        Sensors = new Sensors(settings, inputs);
        Dose = new DoseProgress(settings);
        Line = new PressureDose(settings, Sensors.Pressure, events);
        Phases = new PhaseMachine(settings, events, alarms, Sensors.Switches, Line);
        _schedule = new DoseSchedule(settings, alarms, Sensors, Phases, Dose, _rest);
        _test = new OutputTest(settings, Phases);
        _driver = new OutputDriver(settings, outputs, alarms, Phases, Line, _test);
        Doses = new DoseControl(settings, inputs, events, alarms, Sensors, Phases, Dose, Line, _rest, _overdue);
        _pulses = new PulseIntake(settings, inputs, outputs, events, alarms, Sensors, Doses, _driver);
        Conditions = new AlarmConditions(settings, inputs, events, alarms, Sensors, _rest, _overdue);
        Presses = new Presses(inputs, events, alarms, _buttons, Phases, Doses, Dose, new Reset(inputs, alarms, Sensors, Phases, Doses, Dose, Line, _rest));
    }

    private bool SupplyIsLow => _alarms.IsActive(AlarmId.SupplyLow);

    private bool DoseRuns => Phases.Phase == Phase.Dose && _outputs.Pump;

    /// <summary>The core starts where no valid state is found: a rest begins, and a dose is due after the restart delay.</summary>
    public void Begin()
    {
        Sensors.Switches.Renew();
        _rest.Begin();
        Dose.MakeDue();
    }

    public void PowerUp()
    {
        Span.ResetClock(false);
        Span.EndNow();
        Sensors.Forget();
        _buttons.Forget();
        _outputs.MakeSafe();
        Phases.PowerUp();
    }

    /// <summary>One scan that decides.</summary>
    public void Run()
    {
        PassTime();
        Doses.ClearFailure();
        SampleInputs();
        Decide();
        _driver.Drive();
        Sensors.Held.CopyFrom(_inputs);
        PlanNext();
    }

    /// <summary>The transmitter and the supply may drift within what says the same.</summary>
    public void FollowDrift()
    {
        Sensors.Held.PressureMbar = _inputs.PressureMbar;
        Sensors.Held.SupplyMv = _inputs.SupplyMv;
    }

    /// <summary>Lets the quiet time pass without a decision: none was due.</summary>
    public void PassQuietTime()
    {
        Span.ShortenDeadlines();
        PassTime();
    }

    /// <summary>Hands all state through, but for the header. The order and width of the fields are the format of the saved state.</summary>
    public void Transfer(StateStream stream)
    {
        Phases.TransferPhase(stream);
        Sensors.Switches.TransferReady(stream);
        Phases.TransferElapsed(stream);
        _driver.TransferPumpOff(stream);
        _overdue.Transfer(stream);
        _driver.TransferLamp(stream);
        Doses.TransferCompleted(stream);
        Presses.TransferRefused(stream);
        Sensors.Held.Transfer(stream, _hasRule && _settings.RestMode == RestMode.Rule);
        _outputs.Transfer(stream);
        _alarms.Transfer(stream);
        Sensors.Switches.Transfer(stream);
        Sensors.TransferLevels(stream);
        _buttons.Transfer(stream);
        Sensors.Pressure.Transfer(stream);
        Sensors.Shaft.Transfer(stream);
        Dose.Transfer(stream);
        Line.Transfer(stream);
        Sensors.Pump.Transfer(stream);
        Sensors.Comparison.Transfer(stream);
        Restarts.Transfer(stream);
        Sensors.Supply.Transfer(stream);
        Sensors.Warmth.Transfer(stream);
        Conditions.Transfer(stream);
        Doses.TransferHeld(stream);
        _rest.Transfer(stream);
    }

    private void PassTime()
    {
        int elapsedMs = Span.ElapsedMs;
        int pulses = Span.Pulses;
        if (elapsedMs == 0 && pulses == 0)
            return;
        bool pumpOn = _outputs.Pump;
        bool doseRuns = DoseRuns;
        if (!Sensors.StandStill)
            _overdue.Advance(elapsedMs);
        _schedule.Advance(elapsedMs, pulses);
        if (doseRuns)
            Dose.Advance(elapsedMs);
        Line.Advance(elapsedMs, pumpOn, Phases.Phase == Phase.Dose && !Doses.IsHeld);
        Sensors.Advance(Span, doseRuns, pumpOn, SupplyIsLow);
        _buttons.Advance(elapsedMs);
        _alarms.Advance(elapsedMs);
        Phases.Advance(elapsedMs);
        Restarts.Advance(elapsedMs);
        _driver.Advance(elapsedMs);
        Span.Clear();
    }

    private void SampleInputs()
    {
        Conditions.CheckSupply();
        Sensors.Comparison.Sample(_inputs.PumpRevolutions, Sensors.Pressure.IsReached);
        _pulses.Sample();
        Sensors.Sample();
        Line.Sample();
    }

    private void Decide()
    {
        if (!Line.Chosen)
            Line.Clear();
        _pulses.CheckSwitches();
        Conditions.Check();
        if (!Dose.Pending)
            _rest.AskRule(_inputs);
        Conditions.Settle();
        Doses.ObeyHolding();
        Doses.Check();
        Presses.Answer();
        if (Phases.Phase == Phase.Prime && (!_buttons.IsHeld(Button.Prime) || Phases.ElapsedMs >= _settings[SettingField.PrimeLimitMs]))
            Phases.LeavePrime();
        if (_schedule.IsDue && Presses.PumpMayStart)
            Doses.Begin(Phases.Phase == Phase.Failed);
        if (Phases.Phase == Phase.RetryPause && Phases.ElapsedMs >= _settings[SettingField.RetryPauseMs])
            Phases.Enter(Phase.Dose);
        if (Phases.Phase == Phase.OutputTest && (_test.IsOver || _alarms.FailureStands))
            Phases.Enter(Phase.Stopped);
        Conditions.Settle();
        Phases.ObeyAlarms(Doses.Fails);
        if (_inputs.Stop && Phases.Phase != Phase.Stopped)
            Stop();
    }

    private void Stop()
    {
        Dose.ForgetPosition();
        Phases.Enter(Phase.Stopped);
    }

    private void PlanNext()
    {
        int deadline = Saturating.Min(PhaseDeadlineMs(), _alarms.DeadlineMs());
        deadline = Saturating.Min(deadline, Sensors.DeadlineMs(DoseRuns, _outputs.Pump, SupplyIsLow));
        deadline = Saturating.Min(deadline, _buttons.DeadlineMs());
        if (!Sensors.StandStill)
            deadline = Saturating.Min(deadline, _overdue.DeadlineMs());
        deadline = Saturating.Min(deadline, _driver.DeadlineMs());
        int pulses = Sensors.Shaft.DeadlineShaftPulses(Sensors.Held.MachineRunning);
        Span.Plan(deadline, Saturating.Min(pulses, _schedule.DeadlineShaftPulses()));
    }

    private int PhaseDeadlineMs()
    {
        switch (Phases.Phase)
        {
            case Phase.Dose:
                return Doses.DeadlineMs();
            case Phase.RetryPause:
                return Saturating.Remaining(_settings[SettingField.RetryPauseMs], Phases.ElapsedMs);
            case Phase.OutputTest:
                return Saturating.Min(_test.DeadlineMs(), _schedule.DeadlineMs());
            case Phase.Prime:
                return Saturating.Min(Saturating.Remaining(_settings[SettingField.PrimeLimitMs], Phases.ElapsedMs), _schedule.DeadlineMs());
            default:
                return _schedule.DeadlineMs();
        }
    }
}
