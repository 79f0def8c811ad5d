namespace LubeController.Core;

/// <summary>Takes the edges of the cycle switches: ignores those that cannot be true, and hands the others on.</summary>
internal sealed class PulseIntake
{
    private readonly Settings _settings;
    private readonly Inputs _inputs;
    private readonly Outputs _outputs;
    private readonly ScanEvents _events;
    private readonly AlarmList _alarms;
    private readonly Sensors _sensors;
    private readonly CycleSwitches _switches;
    private readonly DoseControl _doses;
    private readonly OutputDriver _driver;

    public PulseIntake(Settings settings, Inputs inputs, Outputs outputs, ScanEvents events, AlarmList alarms, Sensors sensors, DoseControl doses, OutputDriver driver)
    {
        _settings = settings;
        _inputs = inputs;
        _outputs = outputs;
        _events = events;
        _alarms = alarms;
        _sensors = sensors;
        _switches = sensors.Switches;
        _doses = doses;
        _driver = driver;
    }

    /// <summary>Samples every cycle switch, unless the supply is too low to trust them.</summary>
    public void Sample()
    {
        if (_alarms.IsActive(AlarmId.SupplyLow))
            return;
        bool ready = _switches.AreReady;
        for (int index = 0; index < _switches.Count; index++)
        {
            SwitchEdge edge = _switches[index].Sample(_inputs.CycleSwitch(index), ready);
            if (edge != SwitchEdge.None)
                AddEdge(index, edge);
        }
    }

    /// <summary>Finds the switches that chatter, and says whether cycle-switch-fault stands for any.</summary>
    public void CheckSwitches()
    {
        bool wrong = false;
        bool endsDose = false;
        for (int index = 0; index < _switches.Count; index++)
        {
            CycleSwitch one = _switches[index];

            // Chatter that comes back while the fault is latched ends a new try, too; a switch already proved wrong is not made more so by it.
            bool again = one.ConsumeChatterBegan() && !one.ProvedWrong;
            if (again || (one.Chatters && !one.Distrusted))
                Distrust(index, SwitchProof.Chatter);
            wrong |= one.Chatters || one.ProvedWrong;
            endsDose |= one.Distrusted && index == _settings.DoseEndingIndex;
        }

        _alarms.SetEscalated(AlarmId.CycleSwitchFault, endsDose);
        _alarms.SetCondition(AlarmId.CycleSwitchFault, wrong);
    }

    private void AddEdge(int index, SwitchEdge edge)
    {
        if (edge == SwitchEdge.Off && _settings[SettingField.EdgesPerCycle] == 1)
            return;
        CycleSwitch source = _switches[index];
        if (source.Distrusted)
        {
            _events.Add(ScanEvent.PulseDistrusted, index, 0);
            return;
        }

        if (source.IsTooFast(edge))
        {
            _events.Add(ScanEvent.PulseTooFast, index, 0);
            _alarms.Touch(AlarmId.PulseTooFast);
            return;
        }

        bool idle = _driver.IsIdle;
        source.Accept(edge);
        if (idle)
            _alarms.Touch(AlarmId.PulseWhileIdle);
        else if (edge == SwitchEdge.On)
            CompareSwitches(index);
        if (edge == SwitchEdge.On)
            CompareSensors(index);
        if (index == _settings.DoseEndingIndex)
            _doses.AddEdge(index, idle);
        else
            _events.Add(ScanEvent.PulseSeen, index, 0);
    }

    /// <summary>Each piston moves once in a cycle: a switch that stays silent while another gives pulses is wrong.</summary>
    private void CompareSwitches(int source)
    {
        for (int index = 0; index < _switches.Count; index++)
        {
            if (index != source && _switches[index].CountOtherPulse(source))
                Distrust(index, SwitchProof.SecondWitness);
        }
    }

    private void CompareSensors(int index)
    {
        bool pumpOn = _outputs.Pump;
        SensorComparison comparison = _sensors.Comparison;
        if (index == _settings.DoseEndingIndex && comparison.AddCycle(pumpOn))
            _events.Add(ScanEvent.SensorsDisagree, (int)SensorPair.VolumeAndPulses, comparison.VolumePercent);
        if (pumpOn && comparison.AddPulse(_sensors.Pressure.IsReached))
            _events.Add(ScanEvent.SensorsDisagree, (int)SensorPair.PressureAndPulses, 0);
    }

    private void Distrust(int index, SwitchProof proof)
    {
        _events.Add(ScanEvent.SwitchFound, index, (int)proof);
        _switches[index].Distrusted = true;
        if (index == _settings.DoseEndingIndex)
            _doses.Fail();
    }
}
