using System.Linq;
using Stateless;

namespace LubeController.Analysis.Specification;

/// <summary>The lifecycle of every alarm, and which alarms are suppressed by design as consequences of others.</summary>
internal sealed class AlarmLifecycles
{
    private readonly SpecSettings _settings;
    private readonly SpecState _state;
    private readonly SpecMisreadings _misread;
    private readonly StateMachine<Lifecycle, LifecycleEvent>[] _machines;

    internal AlarmLifecycles(SpecSettings settings, SpecState state, SpecMisreadings misread)
    {
        _settings = settings;
        _state = state;
        _misread = misread;
        _machines = [.. state.Alarms.Select(LifecycleMachine.Build)];
    }

    /// <summary>Lets something happen to an alarm.</summary>
    internal void Fire(AlarmId alarm, LifecycleEvent happening)
    {
        AlarmState one = _state.Alarm(alarm);
        if (_misread.Lifecycle(one.Lifecycle, happening) is LifecycleEvent heard)
            _machines[(int)alarm].Fire(heard);
        if (one.Lifecycle != Lifecycle.Shelved)
            one.ShelvedMs = 0;
    }

    /// <summary>
    /// An alarm that begins while a cause of it is active is suppressed, until no cause stands any more. A cause that a person hides
    /// suppresses nothing; one that is itself suppressed does.
    /// </summary>
    internal void SuppressConsequences()
    {
        foreach (Consequence consequence in _settings.Consequences)
        {
            AlarmState alarm = _state.Alarm(consequence.Alarm);
            bool suppressed = alarm.Lifecycle == Lifecycle.SuppressedByDesign;
            bool follows = alarm.Stands && HasCause(consequence.Alarm, orLatched: suppressed);
            if (follows && !suppressed)
                Fire(consequence.Alarm, LifecycleEvent.CauseStands);
            else if (!follows && suppressed)
                Fire(consequence.Alarm, LifecycleEvent.CauseGone);
        }
    }

    /// <summary>A cause of which only the latch is left hides nothing that begins now.</summary>
    internal void ShowWhatBegins(AlarmId alarm)
    {
        if (_state.Alarm(alarm).Lifecycle == Lifecycle.SuppressedByDesign && !HasCause(alarm, orLatched: false))
            Fire(alarm, LifecycleEvent.CauseGone);
    }

    private bool HasCause(AlarmId alarm, bool orLatched)
    {
        foreach (Consequence consequence in _settings.Consequences)
        {
            AlarmState cause = _state.Alarm(consequence.Cause);
            if (consequence.Alarm == alarm && (cause.Active || (orLatched && cause.Stands)) && !cause.IsSilenced)
                return true;
        }

        return false;
    }
}
