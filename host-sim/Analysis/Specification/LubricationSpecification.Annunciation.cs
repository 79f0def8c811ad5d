using System;

namespace LubeController.Analysis.Specification;

/// <summary>What changes annunciation only: shelving, suppression by design, out of service; and what is seen of all of it.</summary>
public sealed partial class LubricationSpecification
{
    private const int LampHalfPeriodMs = 250;

    private bool AnyWaits
    {
        get
        {
            foreach (AlarmState alarm in _state.Alarms)
            {
                if (Waits(alarm))
                    return true;
            }

            return false;
        }
    }

    /// <summary>Silences an alarm for a limited time; one that is shelved already is so for the new time. Nothing happens if it is out of service.</summary>
    /// <param name="alarm">Which.</param>
    /// <param name="durationMs">How long, ms of powered time, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The duration is below 1.</exception>
    public void Shelve(AlarmId alarm, int durationMs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(durationMs, 1);
        ref AlarmState one = ref _state.Alarms[(int)alarm];
        Fire(alarm, LifecycleEvent.Shelve);
        if (one.Lifecycle == Lifecycle.Shelved)
            one.ShelvedMs = durationMs;
        SuppressConsequences();
        Outputs = Show();
    }

    /// <summary>Ends shelving before its time.</summary>
    public void EndShelving(AlarmId alarm) => Annunciate(alarm, LifecycleEvent.ShelvingOver);

    /// <summary>Takes an alarm out of service.</summary>
    public void TakeOutOfService(AlarmId alarm) => Annunciate(alarm, LifecycleEvent.TakeOutOfService);

    /// <summary>Returns an alarm to service.</summary>
    public void ReturnToService(AlarmId alarm) => Annunciate(alarm, LifecycleEvent.ReturnToService);

    private static bool IsSilenced(AlarmState alarm) => alarm.Lifecycle is Lifecycle.Shelved or Lifecycle.OutOfService;

    private static bool IsShown(AlarmState alarm) => !IsSilenced(alarm) && alarm.Lifecycle != Lifecycle.SuppressedByDesign;

    private void Annunciate(AlarmId alarm, LifecycleEvent happening)
    {
        Fire(alarm, happening);
        SuppressConsequences();
        Outputs = Show();
    }

    private void EndShelvingInTime()
    {
        foreach (AlarmRule rule in _tables.Alarms)
        {
            AlarmState alarm = _state.Alarms[(int)rule.Id];
            if (alarm.Lifecycle == Lifecycle.Shelved && alarm.ShelvedMs == 0)
                Fire(rule.Id, LifecycleEvent.ShelvingOver);
        }
    }

    /// <summary>
    /// An alarm that begins while a cause of it is active is suppressed, until no cause stands any more. A cause that a person hides
    /// suppresses nothing; one that is itself suppressed does.
    /// </summary>
    private void SuppressConsequences()
    {
        foreach (Consequence consequence in _settings.Consequences)
        {
            AlarmState alarm = _state.Alarms[(int)consequence.Alarm];
            bool suppressed = alarm.Lifecycle == Lifecycle.SuppressedByDesign;
            bool follows = alarm.Stands && AnyCause(consequence.Alarm, cause => cause.Active || (suppressed && cause.Stands));
            Fire(consequence.Alarm, follows ? LifecycleEvent.CauseStands : LifecycleEvent.CauseGone);
        }
    }

    private bool AnyCause(AlarmId alarm, Func<AlarmState, bool> hides)
    {
        foreach (Consequence consequence in _settings.Consequences)
        {
            AlarmState cause = _state.Alarms[(int)consequence.Cause];
            if (consequence.Alarm == alarm && hides(cause) && !IsSilenced(cause))
                return true;
        }

        return false;
    }

    /// <summary>Whether an alarm below failure drives the warning output: it stands, and nothing keeps it from telling.</summary>
    private bool WarningAnnounced()
    {
        foreach (AlarmRule rule in _tables.Alarms)
        {
            AlarmState alarm = _state.Alarms[(int)rule.Id];
            if (rule.Category != AlarmCategory.Failure && alarm.Stands && IsShown(alarm) && !HasBecomeWorse(rule.Id))
                return true;
        }

        return false;
    }

    private bool AnyShown()
    {
        foreach (AlarmState alarm in _state.Alarms)
        {
            if (alarm.Stands && IsShown(alarm))
                return true;
        }

        return false;
    }

    /// <summary>Flashing, on first, while an alarm waits to be acknowledged; steady while one stands; else dark.</summary>
    private bool Lamp() => AnyWaits ? _state.Clocks.LampMs < LampHalfPeriodMs : AnyShown();

    private SpecOutputs Show()
    {
        bool test = _state.Phase == Phase.OutputTest;
        int part = test ? _state.Clocks.PhaseMs / Math.Max(1, _settings.OutputTestMs / 4) : 0;
        bool valve = _settings.DoseMode == DoseMode.Pressure && _state.Pump == _settings.VentValveNormallyOpen;
        bool warning = _state.Phase is Phase.Stopped or Phase.Prime || WarningAnnounced();
        return new SpecOutputs(
            _state.Phase,
            _state.Pump,
            VentValve: valve,
            HealthyRelay: test ? part != 0 : !StandsFailure(),
            WarningOutput: test ? part is 1 or 3 : warning,
            Lamp: test ? part is 2 or 3 : Lamp(),
            FunctionCheck: test,
            DoseCompleted: _completed,
            _refused,
            _state.FirstUp);
    }
}
