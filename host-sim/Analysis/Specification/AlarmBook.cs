using System.Collections.Generic;
using System.Linq;

namespace LubeController.Analysis.Specification;

/// <summary>Alarms begin, latch and end; their lifecycles follow.</summary>
internal sealed class AlarmBook
{
    private readonly SpecState _state;
    private readonly SpecScan _scan;
    private readonly AlarmConditions _conditions;
    private readonly AlarmLifecycles _lifecycles;
    private readonly IReadOnlyList<AlarmRule> _rules;
    private readonly AlarmDelays[] _delays;

    internal AlarmBook(
        SpecSettings settings, SpecState state, SpecScan scan, AlarmConditions conditions, AlarmLifecycles lifecycles, IReadOnlyList<AlarmRule> rules)
    {
        _state = state;
        _scan = scan;
        _conditions = conditions;
        _lifecycles = lifecycles;
        _rules = rules;
        _delays = [.. rules.Select(rule => settings.Delays.GetValueOrDefault(rule.Id))];
    }

    /// <summary>All conditions but that of a low supply, which is looked at before anything else.</summary>
    internal void UpdateAll()
    {
        // The lesser row first: where it follows upon the worse one without a break, the alarm has not ended between.
        Update(AlarmId.OtherSwitchFault);
        foreach (AlarmRule rule in _rules)
        {
            if (rule.Id is not (AlarmId.SupplyLow or AlarmId.OtherSwitchFault))
                Update(rule.Id);
        }
    }

    /// <summary>An alarm whose condition is not known now, or lasts until it is ended, stays by what its condition was.</summary>
    internal void Update(AlarmId id)
    {
        AlarmRule rule = _rules[(int)id];
        AlarmState alarm = _state.Alarm(id);
        bool was = alarm.Condition.On;
        bool present = _scan.Inputs.Sees(id) || (_conditions.IsPresent(rule) ?? alarm.Condition.Present);
        alarm.Condition.Follow(present, _delays[(int)id]);
        if (alarm.Condition.On && !was)
            Begin(rule);
        else if (!alarm.Condition.On && was && !rule.OnlyARunningPumpShows)
            End(id);
    }

    /// <summary>What a running dose showed lasts until a reset, or the completion of a new try.</summary>
    internal void FailDose(AlarmId alarm)
    {
        _state.Alarm(alarm).Condition = DelayFilter.Lasting;
        Begin(_rules[(int)alarm]);
    }

    /// <summary>The condition was there for an instant: it ends with its delay off, counted from now.</summary>
    internal void NoteInstant(AlarmId alarm)
    {
        _state.Alarm(alarm).Condition = DelayFilter.OfAnInstant;
        Begin(_rules[(int)alarm]);
    }

    /// <summary>The condition has ended, without its delay off.</summary>
    internal void EndAtOnce(AlarmId alarm)
    {
        _state.Alarm(alarm).Condition = default;
        End(alarm);
    }

    /// <summary>A reset, or a new try that is completed, ends the conditions that only a running pump can show.</summary>
    internal void EndWhatOnlyARunningPumpShows()
    {
        foreach (AlarmRule rule in _rules)
        {
            if (!rule.OnlyARunningPumpShows)
                continue;
            _scan.Began &= ~(1UL << (int)rule.Id);
            EndAtOnce(rule.Id);
        }
    }

    /// <summary>A reset clears the latches of conditions that have ended.</summary>
    internal void ClearLatches()
    {
        foreach (AlarmRule rule in _rules)
        {
            AlarmState alarm = _state.Alarm(rule.Id);
            if (!alarm.Latched || alarm.Lasts || (SwitchFaultRows.Contain(rule.Id) && _state.Alarm(SwitchFaultRows.OtherThan(rule.Id)).Lasts))
                continue;
            alarm.Latched = false;
            _lifecycles.Fire(rule.Id, LifecycleEvent.Reset);
        }
    }

    /// <summary>A person has seen all alarms.</summary>
    internal void AcknowledgeAll()
    {
        foreach (AlarmRule rule in _rules)
            _lifecycles.Fire(rule.Id, LifecycleEvent.Acknowledge);
    }

    /// <summary>A condition begins in this scan; where it lasts already it begins once more and changes nothing else.</summary>
    private void Begin(AlarmRule rule)
    {
        _scan.Began |= 1UL << (int)rule.Id;
        AlarmState alarm = _state.Alarm(rule.Id);
        alarm.Latched |= rule.Latches;
        if (alarm.Active)
            return;
        alarm.Active = true;
        bool seen = SwitchFaultRows.Contain(rule.Id) && SwitchFaultRows.HasBeenSeen(_state, rule.Id);
        _lifecycles.ShowWhatBegins(rule.Id);
        _lifecycles.Fire(rule.Id, LifecycleEvent.ConditionBegins);
        if (seen)
            _lifecycles.Fire(rule.Id, LifecycleEvent.Acknowledge);
        else
            _scan.Raised |= 1UL << (int)rule.Id;
        _lifecycles.SuppressConsequences();
    }

    private void End(AlarmId id)
    {
        AlarmState alarm = _state.Alarm(id);
        if (!alarm.Active)
            return;
        alarm.Active = false;
        _lifecycles.Fire(id, LifecycleEvent.ConditionEnds);
        _lifecycles.SuppressConsequences();
    }
}
