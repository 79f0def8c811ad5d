namespace LubeController.Core;

/// <content>What the inputs tell: edges of the cycle switches, levels, and the conditions of the alarms.</content>
public sealed partial class Controller
{
    private bool StandsStill => _shaft.SaysStandstill && !_held.MachineRunning;

    private void TakeInputs()
    {
        JudgeSupply();
        _compare.Sample(_inputs.PumpRevolutions, _pressure.IsReached);
        bool ready = _readyMs == 0;
        bool believed = !Alarms.IsActive(AlarmId.SupplyLow);
        for (int index = 0; believed && index < _settings[SettingField.SwitchCount]; index++)
        {
            SwitchEdge edge = _switches[index].Sample(_inputs.CycleSwitch(index), ready);
            if (edge != SwitchEdge.None)
                JudgeEdge(index, edge);
        }

        int levels = _settings[SettingField.LevelDebounceMs];
        _low.Sample(_inputs.LevelLow != _settings.Is(SettingField.LevelLowInverted), levels, true);
        _empty.Sample(_inputs.LevelEmpty != _settings.Is(SettingField.LevelEmptyInverted), levels, true);
        _pressure.Sample(_inputs);
        _line.Sample();
        _shaft.Sample(_inputs.MachineRunning);
        _pump.Sample(_inputs);
    }

    /// <summary>Nothing that a switch says under too low a supply is believed; afterwards its first level is a baseline.</summary>
    private void JudgeSupply()
    {
        _supply.Sample(_inputs.SupplyMv, _settings.Is(SettingField.SupplyMeasured), _settings[SettingField.SupplyLimitMv], _settings[SettingField.SupplyHysteresisMv]);
        Alarms.SetCondition(AlarmId.SupplyLow, _supply.IsLow);
        Alarms.Settle(AlarmId.SupplyLow);
        if (!Alarms.IsActive(AlarmId.SupplyLow))
            return;
        _readyMs = _settings[SettingField.ReadyDelayMs];
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].Forget();
    }

    /// <summary>A dose that was held goes on as after an interruption: the line has to be pressurised anew.</summary>
    private void ObeyHolding()
    {
        bool held = Alarms.HoldingStands;
        if (held == _pumpHeld)
            return;
        _pumpHeld = held;
        if (Phase != Phase.Dose)
            return;
        if (held)
            _line.Interrupt();
        else if (_line.Chosen)
            _line.Begin();
        if (!held)
            AllowFirstPulse();
    }

    private void JudgeEdge(int index, SwitchEdge edge)
    {
        if (edge == SwitchEdge.Off && _settings[SettingField.EdgesPerCycle] == 1)
            return;
        CycleSwitch source = _switches[index];
        if (source.Distrusted)
        {
            Events.Add(ScanEvent.PulseDistrusted, index, 0);
            return;
        }

        if (source.IsTooFast(edge))
        {
            Events.Add(ScanEvent.PulseTooFast, index, 0);
            Alarms.Touch(AlarmId.PulseTooFast);
            return;
        }

        bool idle = _pumpOffMs > _settings[SettingField.RunOnMs];
        source.Accept(edge);
        if (idle)
            Alarms.Touch(AlarmId.PulseWhileIdle);
        else if (edge == SwitchEdge.On)
            TellOthers(index);
        if (edge == SwitchEdge.On)
            Compare(index);
        if (index == _settings.DoseEndingIndex)
            UseEdge(index, idle);
        else
            Events.Add(ScanEvent.PulseSeen, index, 0);
    }

    private void Compare(int index)
    {
        bool pumpOn = _outputs.Pump;
        if (index == _settings.DoseEndingIndex && _compare.HearCycle(pumpOn))
            Events.Add(ScanEvent.SensorsDisagree, SensorComparison.ByVolume, _compare.VolumePercent);
        if (pumpOn && _compare.HearPulse(_pressure.IsReached))
            Events.Add(ScanEvent.SensorsDisagree, SensorComparison.ByPressure, 0);
    }

    private void UseEdge(int index, bool idle)
    {
        if (!idle && !_line.Chosen && (Phase == Phase.Dose || Phase == Phase.RetryPause))
        {
            Events.Add(_dose.Count() ? ScanEvent.PulseCounted : ScanEvent.PulseOpened, index, _dose.Edges);
            if (_settings.DoseMode == DoseMode.Cycles && _dose.IsComplete)
                CompleteDose();
            return;
        }

        if (idle || Phase == Phase.Prime || Phase == Phase.Stopped || _line.Chosen)
        {
            Events.Add(ScanEvent.PulseSeen, index, 0);
            return;
        }

        int credit = _dose.Credit();
        Events.Add(credit < 0 ? ScanEvent.PulseOpened : ScanEvent.PulseCredited, index, credit < 0 ? 0 : credit);
    }

    /// <summary>Each piston moves once in a cycle: a switch that stays silent while another gives pulses is wrong.</summary>
    private void TellOthers(int source)
    {
        for (int index = 0; index < _settings[SettingField.SwitchCount]; index++)
        {
            if (index != source && _switches[index].HearOther(source))
                FindWrong(index, 2);
        }
    }

    private void FindWrong(int index, int how)
    {
        Events.Add(ScanEvent.SwitchFound, index, how);
        _switches[index].Distrusted = true;
        if (index == _settings.DoseEndingIndex)
            _doseFails = true;
    }

    private void JudgeSwitches()
    {
        bool wrong = false;
        bool endsDose = false;
        for (int index = 0; index < _settings[SettingField.SwitchCount]; index++)
        {
            CycleSwitch one = _switches[index];

            // Chatter that comes back while the fault is latched ends a new try, too; a switch that is proved wrong is no more wrong by it.
            bool again = one.TakeChatterBegan() && !one.ProvedWrong;
            if (again || (one.Chatters && !one.Distrusted))
                FindWrong(index, 1);
            wrong |= one.Chatters || one.ProvedWrong;
            endsDose |= one.Distrusted && index == _settings.DoseEndingIndex;
        }

        Alarms.SetSwitchFault(endsDose);
        Alarms.SetCondition(AlarmId.CycleSwitchFault, wrong);
    }

    /// <summary>A contact that has not shown anything since power-up leaves its condition as it stood.</summary>
    private void JudgeConditions()
    {
        JudgeSwitches();
        if (!_settings.Is(SettingField.LevelLowFitted) || _low.Known)
            Alarms.SetCondition(AlarmId.ReservoirLow, _settings.Is(SettingField.LevelLowFitted) && _low.Level);
        if (!_settings.Is(SettingField.LevelEmptyFitted) || _empty.Known)
            Alarms.SetCondition(AlarmId.ReservoirEmpty, _settings.Is(SettingField.LevelEmptyFitted) && _empty.Level);
        if (_pressure.IsOver || _pressure.IsLimitKnown)
            Alarms.SetCondition(AlarmId.LineOverpressure, _pressure.IsOver);
        Alarms.SetCondition(AlarmId.ShaftSignalLost, _shaft.IsLost);
        Alarms.SetCondition(AlarmId.LubricationOverdue, _overdueMs >= _settings[SettingField.OverdueMs]);
        Alarms.SetCondition(AlarmId.SettingsInvalid, !_settingsValid);
        JudgeComparisons();
        if (_pump.IsStill || _pump.IsKnown)
            Alarms.SetCondition(AlarmId.PumpOverload, _pump.IsOverloaded || _pump.IsStill);
        _warmth.Sample(_inputs.TemperatureDeciC, _settings.Is(SettingField.ColdJudged), _settings[SettingField.ColdLimitDeciC], _settings[SettingField.ColdHysteresisDeciC]);
        Alarms.SetCondition(AlarmId.LubricantCold, _warmth.IsLow);
        Alarms.SetCondition(AlarmId.ScanOverrun, _inputs.ScanLate);
        if (!_dose.Pending)
            _rest.Ask(_inputs);
        JudgeRule();
    }

    /// <summary>Where a pressure that is watched against its limit cannot be believed, nothing protects the line.</summary>
    private void JudgeComparisons()
    {
        bool shaft = _shaft.IsContradicted;
        if (shaft && !_shaftWasContradicted)
            Events.Add(ScanEvent.SensorsDisagree, SensorComparison.ByShaft, 0);
        _shaftWasContradicted = shaft;
        Alarms.SetProtectionLost(_compare.PressureWrong && _settings.Is(SettingField.PressureTransmitterFitted));
        Alarms.SetCondition(AlarmId.SensorsDisagree, shaft || _compare.VolumeWrong || _compare.PressureWrong);
        Alarms.SetCondition(AlarmId.PressureSignalLost, _pressure.IsLost);
    }

    private void JudgeRule()
    {
        Alarms.SetCondition(AlarmId.RuleFault, _rest.RuleFailed);
        Alarms.Settle();
    }
}
