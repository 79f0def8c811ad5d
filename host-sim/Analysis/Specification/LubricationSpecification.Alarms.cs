using System;
using System.Numerics;
using Stateless;

namespace LubeController.Analysis.Specification;

/// <summary>Alarms: conditions are judged, latches set, lifecycles follow.</summary>
public sealed partial class LubricationSpecification
{
    private StateMachine<Lifecycle, LifecycleEvent> LifecycleMachine(AlarmId alarm) => TableMachine.Build(
        LifecycleTable.Rules,
        () => _state.Alarms[(int)alarm].Lifecycle,
        state => _state.Alarms[(int)alarm].Lifecycle = state,
        guard => Holds(guard, _state.Alarms[(int)alarm]),
        LifecycleWords.Of,
        _ => { });

    private static bool Holds(LifecycleGuard guard, AlarmState alarm) => guard switch
    {
        LifecycleGuard.Always => true,
        LifecycleGuard.Active => alarm.Active,
        LifecycleGuard.LatchOnly => !alarm.Active,
        LifecycleGuard.Latched => alarm.Latched,
        LifecycleGuard.NotLatched => !alarm.Latched,
        LifecycleGuard.Stands => alarm.Stands,
        LifecycleGuard.Gone => !alarm.Stands,
        _ => throw new ArgumentOutOfRangeException(nameof(guard), guard, "Not a condition."),
    };

    private void Fire(AlarmId alarm, LifecycleEvent happening)
    {
        ref AlarmState one = ref _state.Alarms[(int)alarm];
        if (LifecycleTable.Rules.Touches((int)happening, (int)one.Lifecycle))
            _lifecycles[(int)alarm].Fire(happening);
        if (one.Lifecycle != Lifecycle.Shelved)
            one.ShelvedMs = 0;
    }

    private void JudgeConditions()
    {
        foreach (AlarmRule rule in AlarmTable.All)
        {
            ref AlarmState alarm = ref _state.Alarms[(int)rule.Id];
            bool was = alarm.Condition.On;
            bool? own = Condition(rule.Id);
            alarm.Condition.Take(_inputs.Sees(rule.Id) || (own ?? was), _delays[(int)rule.Id]);
            if (alarm.Condition.On && !was)
                Begin(rule);
            else if (!alarm.Condition.On && was && !rule.OnlyARunningPumpShows)
                End(rule.Id);
        }
    }

    /// <summary>
    /// Whether an alarm's own rule sees its condition; false where only a witness can tell. An input whose level is not yet
    /// known after power-up leaves the condition as it stood: null.
    /// </summary>
    private bool? Condition(AlarmId alarm) => alarm switch
    {
        AlarmId.LineOverpressure => _inputs.PressurePa > _settings.OverpressurePa,
        AlarmId.ReservoirEmpty => Accepted(_state.Levels.Empty),
        AlarmId.PumpOverload => Accepted(_state.Levels.Overload),
        AlarmId.LubricationOverdue => _state.Clocks.OverdueMs >= _settings.OverdueMs,
        AlarmId.ShaftSignalLost => _settings.HasShaft && MachineRuns && _state.Clocks.ShaftLostMs >= _settings.ShaftTimeoutMs,
        AlarmId.LubricantCold => _inputs.TemperatureMilliCelsius < _settings.ColdMilliCelsius,
        AlarmId.SupplyLow => _inputs.SupplyMilliVolt < _settings.SupplyLowMilliVolt,
        AlarmId.ReservoirLow => Accepted(_state.Levels.Low),
        _ => false,
    };

    private static bool? Accepted(InputFilter filter) => filter.Known ? filter.Level : null;

    /// <summary>A condition begins in this scan; where it lasts already it begins once more and changes nothing else.</summary>
    private void Begin(AlarmRule rule)
    {
        _began |= 1UL << (int)rule.Id;
        ref AlarmState alarm = ref _state.Alarms[(int)rule.Id];
        if (alarm.Active)
            return;
        alarm.Active = true;
        alarm.Latched |= rule.Latches;
        Fire(rule.Id, LifecycleEvent.ConditionBegins);
    }

    private void End(AlarmId id)
    {
        ref AlarmState alarm = ref _state.Alarms[(int)id];
        if (!alarm.Active)
            return;
        alarm.Active = false;
        Fire(id, LifecycleEvent.ConditionEnds);
    }

    /// <summary>A reset or a completed dose ends the conditions that only a running pump can show.</summary>
    private void EndWhatOnlyARunningPumpShows()
    {
        foreach (AlarmRule rule in AlarmTable.All)
        {
            if (!rule.OnlyARunningPumpShows)
                continue;
            _began &= ~(1UL << (int)rule.Id);
            _state.Alarms[(int)rule.Id].Condition = default;
            End(rule.Id);
        }
    }

    private void ClearLatches()
    {
        foreach (AlarmRule rule in AlarmTable.All)
        {
            ref AlarmState alarm = ref _state.Alarms[(int)rule.Id];
            if (!alarm.Latched || alarm.Active)
                continue;
            alarm.Latched = false;
            Fire(rule.Id, LifecycleEvent.Reset);
        }
    }

    /// <summary>The first alarm of those that stand keeps its mark until none stands; of several at once, the upper row's.</summary>
    private void MarkFirstUp()
    {
        if (_state.FirstUp is null && _began != 0)
            _state.FirstUp = (AlarmId)BitOperations.TrailingZeroCount(_began);
    }

    private void ForgetFirstUp()
    {
        foreach (AlarmState alarm in _state.Alarms)
        {
            if (alarm.Stands)
                return;
        }

        _state.FirstUp = null;
    }

    private bool Stands(AlarmAction action)
    {
        foreach (AlarmRule rule in AlarmTable.All)
        {
            if (rule.Action == action && _state.Alarms[(int)rule.Id].Stands)
                return true;
        }

        return false;
    }

    private bool StandsPumpStopping() => Stands(AlarmAction.Interlock) || Stands(AlarmAction.DoseEnding);

    private bool StandsFailure()
    {
        foreach (AlarmRule rule in AlarmTable.All)
        {
            if (rule.Category == AlarmCategory.Failure && _state.Alarms[(int)rule.Id].Stands)
                return true;
        }

        return false;
    }

    private bool BeganDoseEnding()
    {
        foreach (AlarmRule rule in AlarmTable.All)
        {
            if (rule.Action == AlarmAction.DoseEnding && (_began >> (int)rule.Id & 1) != 0)
                return true;
        }

        return false;
    }
}
