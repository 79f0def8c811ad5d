namespace LubeController.Core;

/// <summary>Writes the output image: pump and vent valve by the phase, relay, warning output and lamp by the alarms.</summary>
internal sealed class OutputDriver
{
    private const int LampHalfPeriodMs = 250;

    private readonly Settings _settings;
    private readonly Outputs _outputs;
    private readonly AlarmList _alarms;
    private readonly PhaseMachine _phases;
    private readonly PressureDose _line;
    private readonly OutputTest _test;
    private int _pumpOffMs = Saturating.Never;
    private int _lampMs;

    public OutputDriver(Settings settings, Outputs outputs, AlarmList alarms, PhaseMachine phases, PressureDose line, OutputTest test)
    {
        _settings = settings;
        _outputs = outputs;
        _alarms = alarms;
        _phases = phases;
        _line = line;
        _test = test;
    }

    /// <summary>Whether the pump has been off for longer than stored pressure may cause pulses.</summary>
    public bool IsIdle => _pumpOffMs > _settings[SettingField.RunOnMs];

    public void Advance(int elapsedMs)
    {
        _pumpOffMs = _outputs.Pump ? 0 : Saturating.Add(_pumpOffMs, elapsedMs);
        if (_alarms.AnyUnseen)
            _lampMs = (_lampMs + (elapsedMs % (2 * LampHalfPeriodMs))) % (2 * LampHalfPeriodMs);
    }

    public void Drive()
    {
        Phase phase = _phases.Phase;
        bool doses = phase == Phase.Dose && (!_line.Chosen || _line.PumpRuns);
        bool pump = (doses || phase == Phase.Prime) && !_alarms.InterlockStands && !_alarms.HoldingStands;
        _outputs.Pump = pump;
        if (pump)
        {
            _pumpOffMs = 0;
            _line.NotePumpOn();
        }

        // Closed exactly while the pump runs: it never pumps into the open valve, and no line stands under pressure.
        _outputs.VentValve = _line.Chosen && pump == _settings.Is(SettingField.VentValveNormallyOpen);
        _outputs.HealthyRelay = !_alarms.FailureStands;
        _outputs.Warning = _alarms.OtherStands || phase == Phase.Stopped || phase == Phase.Prime;
        bool flashes = _alarms.AnyUnseen;
        if (!flashes)
            _lampMs = 0;
        _outputs.Lamp = flashes ? _lampMs < LampHalfPeriodMs : _alarms.AnyShown;
        if (phase == Phase.OutputTest)
            _test.Drive(_outputs);
    }

    public int DeadlineMs() => _alarms.AnyUnseen ? LampHalfPeriodMs - (_lampMs % LampHalfPeriodMs) : Saturating.Never;

    public void TransferPumpOff(StateStream stream) =>
        _pumpOffMs = stream.UpTo(_pumpOffMs, Saturating.Add(_settings[SettingField.RunOnMs], 1));

    public void TransferLamp(StateStream stream) => _lampMs = stream.Number(_lampMs);
}
