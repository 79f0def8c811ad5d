namespace LubeController.Core;

/// <summary>Says of every alarm whether its condition is present, from what sensors, timers and settings show.</summary>
internal sealed class AlarmConditions
{
    private readonly Settings _settings;
    private readonly Inputs _inputs;
    private readonly ScanEvents _events;
    private readonly AlarmList _alarms;
    private readonly Sensors _sensors;
    private readonly RestClock _rest;
    private readonly OverdueClock _overdue;
    private bool _shaftWasContradicted;

    public AlarmConditions(Settings settings, Inputs inputs, ScanEvents events, AlarmList alarms, Sensors sensors, RestClock rest, OverdueClock overdue)
    {
        _settings = settings;
        _inputs = inputs;
        _events = events;
        _alarms = alarms;
        _sensors = sensors;
        _rest = rest;
        _overdue = overdue;
    }

    /// <summary>Whether the settings handed over last were accepted.</summary>
    public bool SettingsAreValid { get; set; }

    /// <summary>Settles supply-low ahead of the others: while it is active no cycle switch is trusted, and the first level afterwards is a baseline.</summary>
    public void CheckSupply()
    {
        _sensors.SampleSupply();
        _alarms.SetCondition(AlarmId.SupplyLow, _sensors.Supply.IsLow);
        _alarms.Settle(AlarmId.SupplyLow);
        if (_alarms.IsActive(AlarmId.SupplyLow))
            _sensors.Switches.Forget();
    }

    /// <summary>Sets every other condition. A contact that has not shown anything since power-up leaves its condition as it stood.</summary>
    public void Check()
    {
        CheckLevel(AlarmId.ReservoirLow, SettingField.LevelLowFitted, _sensors.LevelLow);
        CheckLevel(AlarmId.ReservoirEmpty, SettingField.LevelEmptyFitted, _sensors.LevelEmpty);
        PressureWatch pressure = _sensors.Pressure;
        if (pressure.IsOver || pressure.IsLimitKnown)
            _alarms.SetCondition(AlarmId.LineOverpressure, pressure.IsOver);
        _alarms.SetCondition(AlarmId.ShaftSignalLost, _sensors.Shaft.IsLost);
        _alarms.SetCondition(AlarmId.LubricationOverdue, _overdue.IsOver);
        _alarms.SetCondition(AlarmId.SettingsInvalid, !SettingsAreValid);
        CheckComparisons();
        _alarms.SetCondition(AlarmId.PressureSignalLost, pressure.IsLost);
        PumpWatch pump = _sensors.Pump;
        if (pump.IsStill || pump.IsKnown)
            _alarms.SetCondition(AlarmId.PumpOverload, pump.IsOverloaded || pump.IsStill);
        _sensors.SampleWarmth();
        _alarms.SetCondition(AlarmId.LubricantCold, _sensors.Warmth.IsLow);
        _alarms.SetCondition(AlarmId.ScanOverrun, _inputs.ScanLate);
    }

    /// <summary>Sets the condition of rule-fault, which may change late in a scan, and settles all alarms.</summary>
    public void Settle()
    {
        _alarms.SetCondition(AlarmId.RuleFault, _rest.RuleFailed);
        _alarms.Settle();
    }

    public void Transfer(StateStream stream) => _shaftWasContradicted = stream.Flag(_shaftWasContradicted);

    private void CheckLevel(AlarmId id, int fittedField, DebouncedInput level)
    {
        bool fitted = _settings.Is(fittedField);
        if (!fitted || level.Known)
            _alarms.SetCondition(id, fitted && level.Level);
    }

    /// <summary>If the pressure that guards the limit cannot be trusted, nothing protects the line.</summary>
    private void CheckComparisons()
    {
        bool shaft = _sensors.Shaft.IsContradicted;
        if (shaft && !_shaftWasContradicted)
            _events.Add(ScanEvent.SensorsDisagree, (int)SensorPair.ShaftAndMachineRunning, 0);
        _shaftWasContradicted = shaft;
        SensorComparison comparison = _sensors.Comparison;
        _alarms.SetEscalated(AlarmId.SensorsDisagree, comparison.PressureWrong && _settings.Is(SettingField.PressureTransmitterFitted));
        _alarms.SetCondition(AlarmId.SensorsDisagree, shaft || comparison.VolumeWrong || comparison.PressureWrong);
    }
}
