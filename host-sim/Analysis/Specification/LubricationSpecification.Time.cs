using System;

namespace LubeController.Analysis.Specification;

/// <summary>Time passes: durations only, under everything as it stood at the end of the scan before.</summary>
public sealed partial class LubricationSpecification
{
    private bool MachineRuns => !_state.Levels.MachineRunning.Known || _state.Levels.MachineRunning.Level;

    private bool BothSayStandstill => _settings.HasShaft && !MachineRuns && _state.Clocks.ShaftStillMs >= _settings.ShaftTimeoutMs;

    private bool RestRunsOn => _state.Phase is Phase.Rest or Phase.Prime or Phase.Stopped or Phase.Failed;

    private bool RestCounts => RestRunsOn && (MachineRuns || !_settings.RestOnlyWhileRunning);

    private bool RestOver
    {
        get
        {
            Clocks clocks = _state.Clocks;
            bool byTime = clocks.RestMs >= _settings.RestMs;
            bool byShaft = clocks.RestPulses >= _settings.RestShaftPulses
                || (_state.Alarms[(int)AlarmId.ShaftSignalLost].Active && clocks.RestMs >= _settings.FallbackMs);
            return clocks.NoRest || _settings.RestMode switch
            {
                RestMode.Time => byTime,
                RestMode.Shaft => byShaft,
                _ => byTime || byShaft,
            };
        }
    }

    /// <summary>A pending dose waits for the restart delay; a new one for its rest, and for the delay after a reset.</summary>
    private bool DoseDue => _state.Clocks.RestartDelayMs == 0 && (_state.Dose.Pending || RestOver);

    private static int Less(int remainingMs, int elapsedMs) => Math.Max(0, remainingMs - elapsedMs);

    private static int More(int countedMs, int elapsedMs, int limitMs) => (int)Math.Min((long)countedMs + elapsedMs, limitMs);

    private void PassTime(int elapsedMs)
    {
        PassUnderFilters(elapsedMs);
        PassInPhase(elapsedMs);
        ref Clocks clocks = ref _state.Clocks;
        if (!BothSayStandstill)
            clocks.OverdueMs += elapsedMs;
        clocks.ShaftStillMs = More(clocks.ShaftStillMs, elapsedMs, _settings.ShaftTimeoutMs);
        if (MachineRuns)
            clocks.ShaftLostMs = More(clocks.ShaftLostMs, elapsedMs, _settings.ShaftTimeoutMs);
        if (!_state.Pump)
            clocks.PumpOffMs = More(clocks.PumpOffMs, elapsedMs, JustBeyondRunOnMs);
        if (!_state.Alarms[(int)AlarmId.SupplyLow].Active)
            clocks.ReadyMs = Less(clocks.ReadyMs, elapsedMs);
    }

    private void PassInPhase(int elapsedMs)
    {
        ref Clocks clocks = ref _state.Clocks;
        if (_state.Phase == Phase.Dose && _state.Pump)
            ChargeDose(elapsedMs);
        if (_state.Phase == Phase.RetryPause && !Stands(AlarmAction.Holding))
            clocks.PauseMs = Less(clocks.PauseMs, elapsedMs);
        if (_state.Phase == Phase.Prime)
            clocks.LimitedMs = More(clocks.LimitedMs, elapsedMs, _settings.PrimeLimitMs);
        if (_state.Phase == Phase.OutputTest)
            clocks.LimitedMs = More(clocks.LimitedMs, elapsedMs, _settings.OutputTestMs);
        if (RestCounts)
            clocks.RestMs += elapsedMs;
        if (RestRunsOn)
            clocks.RestartDelayMs = Less(clocks.RestartDelayMs, elapsedMs);
    }

    private void ChargeDose(int elapsedMs)
    {
        _state.Dose.PumpOnMs += elapsedMs;
        for (int index = 0; index < _state.Switches.Length; index++)
        {
            ref SwitchState one = ref _state.Switches[index];
            int beyond = elapsedMs;
            if (index == _settings.DoseEndingSwitch && !_state.Dose.FirstPulseSeen)
            {
                beyond = Less(elapsedMs, one.AllowanceMs);
                one.AllowanceMs = Less(one.AllowanceMs, elapsedMs);
            }

            one.TimerMs += beyond;
        }
    }

    private void PassUnderFilters(int elapsedMs)
    {
        ref Levels levels = ref _state.Levels;
        levels.MachineRunning.Pass(elapsedMs);
        levels.Low.Pass(elapsedMs);
        levels.Empty.Pass(elapsedMs);
        levels.Overload.Pass(elapsedMs);
        levels.Stop.Pass(elapsedMs);
        levels.Start.Pass(elapsedMs);
        levels.Acknowledge.Pass(elapsedMs);
        levels.Reset.Pass(elapsedMs);
        levels.DoseNow.Pass(elapsedMs);
        levels.Prime.Pass(elapsedMs);
        levels.OutputTest.Pass(elapsedMs);
        foreach (ref SwitchState one in _state.Switches.AsSpan())
            one.Filter.Pass(elapsedMs);
        foreach (ref AlarmState alarm in _state.Alarms.AsSpan())
        {
            alarm.Condition.Pass(elapsedMs);
            alarm.ShelvedMs = Less(alarm.ShelvedMs, elapsedMs);
        }
    }
}
