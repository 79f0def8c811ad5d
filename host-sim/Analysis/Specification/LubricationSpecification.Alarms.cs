using System;
using Stateless;

namespace LubeController.Analysis.Specification;

/// <summary>Alarms: conditions are judged, latches set, lifecycles follow.</summary>
public sealed partial class LubricationSpecification
{
    private StateMachine<Lifecycle, LifecycleEvent> LifecycleMachine(AlarmId alarm) => TableMachine.Build(
        _tables.Lifecycle,
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
        if (_tables.Lifecycle.Touches((int)happening, (int)one.Lifecycle))
            _lifecycles[(int)alarm].Fire(happening);
        if (one.Lifecycle != Lifecycle.Shelved)
            one.ShelvedMs = 0;
    }

    private AlarmRule RuleOf(AlarmId alarm) => _tables.Alarms[(int)alarm];

    private void JudgeConditions()
    {
        // The lesser row first: where it follows upon the worse one without a break, the alarm has not ended between.
        Judge(RuleOf(AlarmId.OtherSwitchFault));
        foreach (AlarmRule rule in _tables.Alarms)
        {
            if (rule.Id is not (AlarmId.SupplyLow or AlarmId.OtherSwitchFault))
                Judge(rule);
        }
    }

    /// <summary>An alarm whose condition is not known now, or lasts until it is ended, is judged by what its condition was.</summary>
    private void Judge(AlarmRule rule)
    {
        ref AlarmState alarm = ref _state.Alarms[(int)rule.Id];
        bool was = alarm.Condition.On;
        bool present = _inputs.Sees(rule.Id) || (Condition(rule) ?? alarm.Condition.Present);
        alarm.Condition.Take(present, _delays[(int)rule.Id]);
        if (alarm.Condition.On && !was)
            Begin(rule);
        else if (!alarm.Condition.On && was && !rule.OnlyARunningPumpShows)
            End(rule.Id);
    }

    /// <summary>
    /// Whether an alarm's own rule sees its condition; false where only a witness can tell. An input whose level is not yet
    /// known after power-up leaves the condition as it stood, and so does what only a running pump can show: null.
    /// </summary>
    private bool? Condition(AlarmRule rule) => rule.Id switch
    {
        AlarmId.LineOverpressure => OverPressure ? true : LimitKnown ? false : null,
        AlarmId.ReservoirEmpty => Accepted(_state.Levels.Empty),
        AlarmId.PumpOverload => _state.Held.PumpStill ? true : Accepted(_state.Levels.Overload),
        AlarmId.LubricationOverdue => _state.Clocks.OverdueMs >= _settings.OverdueMs,
        AlarmId.ShaftSignalLost => _settings.HasShaft && MachineRuns && _state.Clocks.ShaftLostMs >= _settings.ShaftTimeoutMs,
        AlarmId.ScanOverrun => _inputs.ScanLate,
        AlarmId.LubricantCold => _state.Held.Cold,
        AlarmId.SupplyLow => _state.Held.SupplyLow,
        AlarmId.ReservoirLow => Accepted(_state.Levels.Low),
        AlarmId.PressureSignalLost => SignalLost,
        AlarmId.SensorsDisagree => _state.Held.ShaftTurnsOn,
        AlarmId.CycleSwitchFault or AlarmId.OtherSwitchFault => SwitchFault(rule.Id),
        _ => rule.OnlyARunningPumpShows ? null : false,
    };

    private static bool? Accepted(InputFilter filter) => filter.Known ? filter.Level : null;

    /// <summary>A condition begins in this scan; where it lasts already it begins once more and changes nothing else.</summary>
    private void Begin(AlarmRule rule)
    {
        _began |= 1UL << (int)rule.Id;
        ref AlarmState alarm = ref _state.Alarms[(int)rule.Id];
        alarm.Latched |= rule.Latches;
        if (alarm.Active)
            return;
        alarm.Active = true;
        bool seen = IsSwitchFault(rule.Id) && HasBeenSeen(rule.Id);

        // A cause of which only the latch is left hides nothing that begins now.
        if (alarm.Lifecycle == Lifecycle.SuppressedByDesign && !AnyCause(rule.Id, cause => cause.Active))
            Fire(rule.Id, LifecycleEvent.CauseGone);
        Fire(rule.Id, LifecycleEvent.ConditionBegins);
        if (seen)
            Fire(rule.Id, LifecycleEvent.Acknowledge);
        else
            _raised |= 1UL << (int)rule.Id;
        SuppressConsequences();
    }

    /// <summary>What a running dose showed lasts until a reset, or the completion of a new try.</summary>
    private void FailDose(AlarmId alarm)
    {
        _state.Alarms[(int)alarm].Condition = DelayFilter.Lasting;
        Begin(RuleOf(alarm));
    }

    /// <summary>The condition was there for an instant: it ends with its delay off, counted from now.</summary>
    private void Touch(AlarmId alarm)
    {
        _state.Alarms[(int)alarm].Condition = DelayFilter.OfAnInstant;
        Begin(RuleOf(alarm));
    }

    private void End(AlarmId id)
    {
        ref AlarmState alarm = ref _state.Alarms[(int)id];
        if (!alarm.Active)
            return;
        alarm.Active = false;
        Fire(id, LifecycleEvent.ConditionEnds);
        SuppressConsequences();
    }

    private void EndAtOnce(AlarmId id)
    {
        _state.Alarms[(int)id].Condition = default;
        End(id);
    }

    /// <summary>A reset, or a new try that is completed, ends the conditions that only a running pump can show.</summary>
    private void EndWhatOnlyARunningPumpShows()
    {
        foreach (AlarmRule rule in _tables.Alarms)
        {
            if (!rule.OnlyARunningPumpShows)
                continue;
            _began &= ~(1UL << (int)rule.Id);
            EndAtOnce(rule.Id);
        }
    }

    /// <summary>A condition that is there again, if only in its delay on, has not ended.</summary>
    private static bool Lasts(AlarmState alarm) => alarm.Active || alarm.Condition.Present;

    private void ClearLatches()
    {
        foreach (AlarmRule rule in _tables.Alarms)
        {
            ref AlarmState alarm = ref _state.Alarms[(int)rule.Id];
            if (!alarm.Latched || Lasts(alarm) || (IsSwitchFault(rule.Id) && Lasts(_state.Alarms[(int)OtherRowOf(rule.Id)])))
                continue;
            alarm.Latched = false;
            Fire(rule.Id, LifecycleEvent.Reset);
        }
    }

    /// <summary>
    /// The first alarm keeps its mark until none stands and none waits to be acknowledged, or until another begins while none
    /// waits; of several at once, the upper row's. What is not shown is never the first.
    /// </summary>
    private void MarkFirstUp(bool waited)
    {
        MarkedFirstUp = false;
        if (_state.FirstUp is not null && waited)
            return;
        foreach (AlarmRule rule in _tables.Alarms)
        {
            if ((_raised >> (int)rule.Id & 1) == 0 || !IsShown(_state.Alarms[(int)rule.Id]))
                continue;
            _state.FirstUp = rule.Id;
            MarkedFirstUp = true;
            return;
        }
    }

    private void ForgetFirstUp()
    {
        foreach (AlarmState alarm in _state.Alarms)
        {
            if (alarm.Stands || Waits(alarm))
                return;
        }

        _state.FirstUp = null;
    }

    private static bool Waits(AlarmState alarm) => alarm.Lifecycle is Lifecycle.Unacknowledged or Lifecycle.ReturnedUnacknowledged;

    private bool Stands(AlarmAction action)
    {
        foreach (AlarmRule rule in _tables.Alarms)
        {
            if (rule.Action == action && _state.Alarms[(int)rule.Id].Stands)
                return true;
        }

        return false;
    }

    private bool StandsPumpStopping() => Stands(AlarmAction.Interlock) || Stands(AlarmAction.DoseEnding);

    private bool StandsFailure()
    {
        foreach (AlarmRule rule in _tables.Alarms)
        {
            if (rule.Category == AlarmCategory.Failure && _state.Alarms[(int)rule.Id].Stands)
                return true;
        }

        return false;
    }

    /// <summary>What began in this scan before the try did stands like what began long ago: the try is given all the same.</summary>
    private bool BeganDoseEnding()
    {
        foreach (AlarmRule rule in _tables.Alarms)
        {
            if (rule.Action == AlarmAction.DoseEnding && ((_began & ~_beganBeforeTry) >> (int)rule.Id & 1) != 0)
                return true;
        }

        return false;
    }
}
