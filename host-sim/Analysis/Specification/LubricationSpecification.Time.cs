using System;

namespace LubeController.Analysis.Specification;

/// <summary>Time passes: durations only, under everything as it stood at the end of the scan before.</summary>
public sealed partial class LubricationSpecification
{
    private bool MachineRuns => !_state.Levels.MachineRunning.Known || _state.Levels.MachineRunning.Level;

    private bool BothSayStandstill => _settings.HasShaft && !MachineRuns && _state.Clocks.ShaftStillMs >= _settings.ShaftStandstillMs;

    private bool RestRunsOn => _state.Phase is Phase.Rest or Phase.Prime or Phase.Stopped or Phase.Failed or Phase.OutputTest;

    private bool RestCounts => RestRunsOn && (MachineTurns || !_settings.RestOnlyWhileRunning);

    private bool RestOver
    {
        get
        {
            Clocks clocks = _state.Clocks;
            bool byTime = clocks.RestMs >= _settings.RestMs;
            bool byShaft = clocks.RestPulses >= _settings.RestShaftPulses;
            bool byFallback = _state.Alarms[(int)AlarmId.ShaftSignalLost].Active && clocks.RestMs >= _settings.FallbackMs;
            return _settings.RestMode switch
            {
                RestMode.Time => byTime,
                RestMode.Shaft => byShaft || byFallback,
                _ => byTime || byShaft,
            };
        }
    }

    /// <summary>A pending dose waits for the restart delay, in failed for that of a new try; a new one for its rest, and for the delay after a reset.</summary>
    private bool DoseDue
    {
        get
        {
            bool waits = _state.Dose.Pending || _state.Clocks.AfterFailure;
            int delayMs = _state.Phase == Phase.Failed ? _settings.NewTryDelayMs : _settings.RestartDelayMs;
            return (!waits || _state.Clocks.PhaseMs >= delayMs) && (_state.Dose.Pending || RestOver);
        }
    }

    /// <summary>Time in a phase beyond which nothing changes.</summary>
    private int LongestInPhaseMs => _state.Phase switch
    {
        Phase.Rest => _settings.RestartDelayMs,
        Phase.Failed => _settings.NewTryDelayMs,
        Phase.RetryPause => _settings.RetryPauseMs,
        Phase.Prime => _settings.PrimeLimitMs,
        Phase.OutputTest => _settings.OutputTestMs,
        _ => 0,
    };

    private static int Less(int remainingMs, int elapsedMs) => Math.Max(0, remainingMs - elapsedMs);

    private static int More(int countedMs, int elapsedMs, int limitMs) => (int)Math.Min((long)countedMs + elapsedMs, limitMs);

    private void PassTime(int elapsedMs)
    {
        PassUnderFilters(elapsedMs);
        PassInPhase(elapsedMs);
        ref Clocks clocks = ref _state.Clocks;
        if (!BothSayStandstill)
            clocks.OverdueMs += elapsedMs;
        _shaftStood = clocks.ShaftStillMs >= _settings.ShaftStandstillMs;
        if (!MachineRuns && !_shaftStood)
            clocks.RunDownMs += elapsedMs;
        clocks.ShaftStillMs = More(clocks.ShaftStillMs, elapsedMs, _settings.ShaftStandstillMs);
        if (MachineRuns)
            clocks.ShaftLostMs = More(clocks.ShaftLostMs, elapsedMs, _settings.ShaftTimeoutMs);
        if (!_state.Pump)
            clocks.PumpOffMs = More(clocks.PumpOffMs, elapsedMs, JustBeyondRunOnMs);
        if (!_state.Alarms[(int)AlarmId.SupplyLow].Active)
            clocks.ReadyMs = Less(clocks.ReadyMs, elapsedMs);
        if (_state.Pump && _settings.RevolutionMissingMs is int limit)
            clocks.PumpStillMs = More(clocks.PumpStillMs, elapsedMs, limit);
        if (AnyWaits)
            clocks.LampMs = (int)(((long)clocks.LampMs + elapsedMs) % (2 * LampHalfPeriodMs));
        PassPressure(elapsedMs);
        PassRestarts(elapsedMs);
    }

    private void PassInPhase(int elapsedMs)
    {
        ref Clocks clocks = ref _state.Clocks;
        if (_state.Phase == Phase.Dose && _state.Pump)
            ChargeDose(elapsedMs);
        if (_readings.PauseRunsOnWhileHeld || _state.Phase != Phase.RetryPause || !Stands(AlarmAction.Holding))
            clocks.PhaseMs = More(clocks.PhaseMs, elapsedMs, LongestInPhaseMs);
        if (RestCounts)
            clocks.RestMs += elapsedMs;
    }

    private void ChargeDose(int elapsedMs)
    {
        _state.Dose.PumpOnMs += elapsedMs;
        foreach (ref SwitchState one in _state.Switches.AsSpan())
            one.TimerMs += elapsedMs;
    }

    private void PassUnderFilters(int elapsedMs)
    {
        ref Levels levels = ref _state.Levels;
        levels.MachineRunning.Pass(elapsedMs);
        levels.Pressure.Pass(elapsedMs);
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
        {
            one.Filter.Pass(elapsedMs);
            one.Chatter.Pass(elapsedMs);
            one.SinceOnMs = More(one.SinceOnMs, elapsedMs, _settings.ShortestPulseIntervalMs);
            one.SinceOffMs = More(one.SinceOffMs, elapsedMs, _settings.ShortestPulseIntervalMs);
        }

        foreach (ref AlarmState alarm in _state.Alarms.AsSpan())
        {
            alarm.Condition.Pass(elapsedMs);
            alarm.ShelvedMs = Less(alarm.ShelvedMs, elapsedMs);
        }
    }
}
