using System;

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
        bool ran = MachineRuns;

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

        ref Clocks clocks = ref _state.Clocks;
        if (_inputs.ShaftPulses > 0)
        {
            clocks.ShaftStillMs = _inputs.ShaftPulseAgeMs;
            clocks.ShaftLostMs = ran ? _inputs.ShaftPulseAgeMs : 0;
        }

        CompareShaft();
        TakeRevolutions();
    }

    private void TakeRevolutions()
    {
        if (_settings.RevolutionMissingMs is not int limit)
            return;
        ref Clocks clocks = ref _state.Clocks;
        if (_inputs.PumpRevolutions > 0)
            clocks.PumpStillMs = Math.Min(clocks.PumpStillMs, _inputs.PumpRevolutionAgeMs);
        if (clocks.PumpStillMs >= limit)
            _state.Held.PumpStill = true;
    }

    /// <summary>A press is fresh when the button, known to have been released, is accepted as down.</summary>
    private void TakeButton(ref InputFilter filter, Buttons button)
    {
        if (filter.Take((_inputs.Pressed & button) != 0, _settings.ButtonDebounceMs) && filter.Level)
            _fresh |= button;
    }

    private void JudgeSupply()
    {
        ref Held held = ref _state.Held;
        held.SupplyLow = IsLow(held.SupplyLow, _inputs.SupplyMilliVolt, _settings.SupplyLowMilliVolt, _settings.SupplyHysteresisMilliVolt);
        held.Cold = IsLow(held.Cold, _inputs.TemperatureMilliCelsius, _settings.ColdMilliCelsius, _settings.ColdHysteresisMilliKelvin);
        Judge(RuleOf(AlarmId.SupplyLow));
        if (!_state.Alarms[(int)AlarmId.SupplyLow].Active)
            return;

        // Nothing that a switch says is believed; afterwards its first debounced level, after the ready delay, is a baseline.
        _state.Clocks.ReadyMs = _settings.ReadyDelayMs;
        foreach (ref SwitchState one in _state.Switches.AsSpan())
        {
            one.Filter = default;
            one.Chatter = default;
        }
    }

    private static bool IsLow(bool was, int value, int? limit, int hysteresis) =>
        limit is int least && value < (was ? least + hysteresis : least);

    private void TakePulses()
    {
        if (_state.Alarms[(int)AlarmId.SupplyLow].Active)
            return;
        for (int index = 0; index < _state.Switches.Length; index++)
        {
            ref SwitchState one = ref _state.Switches[index];
            SwitchSettings settings = _settings.Switches[index];
            bool raw = (_inputs.CycleSwitches >> index & 1) != 0;
            if (_settings.ChatterChanges > 0)
                one.Chatter.Take(one.Filter.Changes(raw), _settings.ChatterChanges, _settings.ChatterWindowMs);
            bool changed = one.Filter.Take(raw, settings.DebounceMs ?? _settings.SwitchDebounceMs, _state.Clocks.ReadyMs == 0);
            if (changed && (one.Filter.Level || settings.BothEdges) && !one.Faulty)
                TakePulse(index);
        }
    }

    /// <summary>A pulse too fast is ignored; one that no pump can have caused is accepted, and told.</summary>
    private void TakePulse(int index)
    {
        ref SwitchState one = ref _state.Switches[index];
        int since = one.Filter.Level ? one.SinceOnMs : one.SinceOffMs;
        bool seen = (_inputs.TooFastSwitches >> index & 1) != 0;
        if (seen || since < _settings.ShortestPulseIntervalMs)
        {
            if (!seen)
                Touch(AlarmId.PulseTooFast);
            return;
        }

        if (one.Filter.Level)
            one.SinceOnMs = 0;
        else
            one.SinceOffMs = 0;
        Renew(index, 0);
        one.Witnesses = default;
        bool idle = !_state.Pump && _state.Clocks.PumpOffMs > _settings.RunOnMs;
        if (idle)
            Touch(AlarmId.PulseWhileIdle);
        else if (one.Filter.Level)
            Witness(index);
        if (!idle && index == _settings.DoseEndingSwitch && _settings.DoseMode == DoseMode.Cycles)
            CountPulse();
    }

    private void Renew(int index, int allowanceMs)
    {
        ref SwitchState one = ref _state.Switches[index];
        one.TimerMs = 0;
        one.RetriesUsed = 0;
        one.AllowanceMs = allowanceMs;
    }

    /// <summary>The pump was started for a dose: the first pulse has to wait for pressure. The timer is not renewed.</summary>
    private void AllowFirstPulse()
    {
        if (_settings.DoseEndingSwitch < _state.Switches.Length)
            _state.Switches[_settings.DoseEndingSwitch].AllowanceMs = _settings.FirstPulseAllowanceMs;
    }

    private void CountPulse()
    {
        ref DoseProgress dose = ref _state.Dose;
        if (_state.Phase is Phase.Prime or Phase.Stopped)
            return;

        // Where the position is not known, counting opens at the first pulse, which therefore is not counted.
        if (!dose.PositionKnown)
        {
            dose.PositionKnown = true;
            return;
        }

        // The next dose keeps at least one pulse to be given with the pump on.
        bool inDose = _state.Phase is Phase.Dose or Phase.RetryPause;
        if (dose.Count < (inDose ? _settings.DosePulses : _settings.DosePulses - 1))
            dose.Count++;
        if (inDose && dose.Count >= _settings.DosePulses)
            Fire(PhaseEvent.DoseOver);
    }
}
