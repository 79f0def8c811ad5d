using System;

namespace LubeController.Analysis.Specification;

/// <summary>What changes annunciation only: shelving, suppression by design, out of service.</summary>
public sealed partial class LubricationSpecification
{
    /// <summary>Silences an alarm for a limited time. Nothing happens if it is shelved already or out of service.</summary>
    /// <param name="alarm">Which.</param>
    /// <param name="durationMs">How long, ms of powered time, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The duration is below 1.</exception>
    public void Shelve(AlarmId alarm, int durationMs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(durationMs, 1);
        ref AlarmState one = ref _state.Alarms[(int)alarm];
        if (!LifecycleTable.Rules.Touches((int)LifecycleEvent.Shelve, (int)one.Lifecycle))
            return;
        one.ShelvedMs = durationMs;
        Fire(alarm, LifecycleEvent.Shelve);
        Outputs = Show();
    }

    /// <summary>Ends shelving before its time.</summary>
    public void EndShelving(AlarmId alarm) => Annunciate(alarm, LifecycleEvent.ShelvingOver);

    /// <summary>Takes an alarm out of service.</summary>
    public void TakeOutOfService(AlarmId alarm) => Annunciate(alarm, LifecycleEvent.TakeOutOfService);

    /// <summary>Returns an alarm to service.</summary>
    public void ReturnToService(AlarmId alarm) => Annunciate(alarm, LifecycleEvent.ReturnToService);

    private void Annunciate(AlarmId alarm, LifecycleEvent happening)
    {
        Fire(alarm, happening);
        Outputs = Show();
    }

    private void EndShelvingInTime()
    {
        foreach (AlarmRule rule in AlarmTable.All)
        {
            AlarmState alarm = _state.Alarms[(int)rule.Id];
            if (alarm.Lifecycle == Lifecycle.Shelved && alarm.ShelvedMs == 0)
                Fire(rule.Id, LifecycleEvent.ShelvingOver);
        }
    }

    private void SuppressConsequences()
    {
        foreach (Consequence consequence in _settings.Consequences)
            Fire(consequence.Alarm, AnyCauseStands(consequence.Alarm) ? LifecycleEvent.CauseStands : LifecycleEvent.CauseGone);
    }

    private bool AnyCauseStands(AlarmId alarm)
    {
        foreach (Consequence consequence in _settings.Consequences)
        {
            if (consequence.Alarm == alarm && _state.Alarms[(int)consequence.Cause].Stands)
                return true;
        }

        return false;
    }

    /// <summary>Whether an alarm below failure drives the warning output: it stands, and nothing keeps it from telling.</summary>
    private bool WarningAnnounced()
    {
        foreach (AlarmRule rule in AlarmTable.All)
        {
            AlarmState alarm = _state.Alarms[(int)rule.Id];
            bool silent = alarm.Lifecycle is Lifecycle.Shelved or Lifecycle.SuppressedByDesign or Lifecycle.OutOfService;
            if (rule.Category != AlarmCategory.Failure && alarm.Stands && !silent)
                return true;
        }

        return false;
    }
}
