namespace LubeController.Analysis.Specification;

/// <summary>Inputs are taken: debounced levels, fresh presses, shaft counts, pulses of the cycle switches.</summary>
public sealed partial class LubricationSpecification
{
    private int JustBeyondRunOnMs => _settings.RunOnMs == int.MaxValue ? int.MaxValue : _settings.RunOnMs + 1;

    private void TakeLevels()
    {
        // Shaft pulses came in the time that has passed, so they belong to the rest as it stood.
        if (RestCounts)
            _state.Clocks.RestPulses += _inputs.ShaftPulses;

        ref Levels levels = ref _state.Levels;
        levels.MachineRunning.Take(_inputs.MachineRunning, _settings.MachineRunningDebounceMs);
        levels.Low.Take(_inputs.LevelLow, _settings.LevelDebounceMs);
        levels.Empty.Take(_inputs.LevelEmpty, _settings.LevelDebounceMs);
        levels.Overload.Take(_inputs.PumpOverload, _settings.OverloadDebounceMs);
        levels.Stop.Take(_inputs.Stop, _settings.StopDebounceMs);
        TakeButton(ref levels.Start, Buttons.Start);
        TakeButton(ref levels.Acknowledge, Buttons.Acknowledge);
        TakeButton(ref levels.Reset, Buttons.Reset);
        TakeButton(ref levels.DoseNow, Buttons.DoseNow);
        TakeButton(ref levels.Prime, Buttons.Prime);
        TakeButton(ref levels.OutputTest, Buttons.OutputTest);

        if (_inputs.ShaftPulses > 0)
            _state.Clocks.ShaftStillMs = 0;
        if (_inputs.ShaftPulses > 0 || !MachineRuns)
            _state.Clocks.ShaftLostMs = 0;
    }

    /// <summary>A press is fresh when the button, known to have been released, is accepted as down.</summary>
    private void TakeButton(ref InputFilter filter, Buttons button)
    {
        if (filter.Take((_inputs.Pressed & button) != 0, _settings.ButtonDebounceMs) && filter.Level)
            _fresh |= button;
    }

    private void TakePulses()
    {
        bool supplyLow = _state.Alarms[(int)AlarmId.SupplyLow].Active;
        if (supplyLow)
            _state.Clocks.ReadyMs = _settings.ReadyDelayMs;
        for (int index = 0; index < _state.Switches.Length; index++)
        {
            ref SwitchState one = ref _state.Switches[index];
            bool changed = one.Filter.Take((_inputs.CycleSwitches >> index & 1) != 0, _settings.SwitchDebounceMs);
            bool wasBaseline = one.Baseline;
            one.Baseline = !supplyLow && (wasBaseline || (_state.Clocks.ReadyMs == 0 && one.Filter.Known));
            bool edge = changed && (one.Filter.Level || _settings.Switches[index].BothEdges);
            if (wasBaseline && one.Baseline && edge && Trusted(index))
                AcceptPulse(index);
        }
    }

    private bool Trusted(int index)
    {
        AlarmId fault = index == _settings.DoseEndingSwitch ? AlarmId.CycleSwitchFault : AlarmId.OtherSwitchFault;
        return (_inputs.TooFastSwitches >> index & 1) == 0 && !_state.Alarms[(int)fault].Stands;
    }

    private void AcceptPulse(int index)
    {
        Renew(index);
        if (index == _settings.DoseEndingSwitch)
            CountPulse();
    }

    private void Renew(int index)
    {
        ref SwitchState one = ref _state.Switches[index];
        one.TimerMs = 0;
        one.RetriesUsed = 0;
        one.AllowanceMs = index == _settings.DoseEndingSwitch ? _settings.FirstPulseAllowanceMs : 0;
    }

    private void CountPulse()
    {
        ref DoseProgress dose = ref _state.Dose;
        bool inDose = _state.Phase is Phase.Dose or Phase.RetryPause;
        bool pumped = _state.Phase == Phase.Dose && _state.Pump;
        bool ranOn = !_state.Pump && _state.Clocks.PumpOffMs <= _settings.RunOnMs;
        if (!pumped && !ranOn)
            return;
        dose.FirstPulseSeen |= inDose;

        // Where the position is not known, counting opens at the first pulse, which therefore is not counted.
        if (!dose.PositionKnown)
        {
            dose.PositionKnown = true;
            return;
        }

        // The next dose keeps at least one pulse to be given with the pump on.
        int most = inDose ? _settings.DosePulses : _settings.DosePulses - 1;
        if (dose.Count < most)
            dose.Count++;
    }
}
