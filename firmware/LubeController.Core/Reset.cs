namespace LubeController.Core;

/// <summary>
/// What a reset does: it ends conditions that only a running pump can show, renews the timers and clears what latches. It never starts the
/// pump.
/// </summary>
internal sealed class Reset
{
    private readonly Inputs _inputs;
    private readonly AlarmList _alarms;
    private readonly Sensors _sensors;
    private readonly PhaseMachine _phases;
    private readonly DoseControl _doses;
    private readonly DoseProgress _dose;
    private readonly PressureDose _line;
    private readonly RestClock _rest;

    public Reset(Inputs inputs, AlarmList alarms, Sensors sensors, PhaseMachine phases, DoseControl doses, DoseProgress dose, PressureDose line, RestClock rest)
    {
        _inputs = inputs;
        _alarms = alarms;
        _sensors = sensors;
        _phases = phases;
        _doses = doses;
        _dose = dose;
        _line = line;
        _rest = rest;
    }

    public void Perform()
    {
        bool tooLong = _alarms.IsActive(AlarmId.DoseTooLong);
        _alarms.EndShownByDose();
        if (_sensors.Switches.EndProofs())
            _alarms.EndAtOnce(AlarmId.CycleSwitchFault);
        if (tooLong)
            _dose.RenewPumpOn();
        _sensors.Pressure.Renew();
        _line.Renew();
        RenewPump();
        RenewComparison();
        TrustRule();
        _dose.ForgetPosition();
        _sensors.Switches.Renew();
        _alarms.ClearLatches();
        if (!_alarms.Stands(AlarmId.CycleSwitchFault))
            TrustSwitches();
        _doses.ForgiveFailure();
        _phases.LeaveFailed();
    }

    /// <summary>Only a running pump can show that it stands still; the contact shows an overload all the time.</summary>
    private void RenewPump()
    {
        PumpWatch pump = _sensors.Pump;
        bool still = pump.IsStill;
        pump.Renew();
        if (still && pump.IsKnown && !pump.IsOverloaded)
            _alarms.EndAtOnce(AlarmId.PumpOverload);
    }

    /// <summary>Only a running pump can show that volume or pressure and pulses disagree.</summary>
    private void RenewComparison()
    {
        _sensors.Comparison.Renew();
        if (!_sensors.Shaft.IsContradicted)
            _alarms.EndAtOnce(AlarmId.SensorsDisagree);
    }

    private void TrustRule()
    {
        _rest.TrustRule();
        if (!_dose.Pending)
            _rest.AskRule(_inputs);
        if (!_rest.RuleFailed)
            _alarms.EndAtOnce(AlarmId.RuleFault);
    }

    private void TrustSwitches()
    {
        _sensors.Switches.Trust();
        _alarms.SetEscalated(AlarmId.CycleSwitchFault, false);
    }
}
