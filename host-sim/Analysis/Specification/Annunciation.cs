using System.Collections.Generic;

namespace LubeController.Analysis.Specification;

/// <summary>What a person hides and shows of alarms, and which came first: never an interlock, a latch or the phase.</summary>
internal sealed class Annunciation(SpecState state, SpecScan scan, AlarmLifecycles lifecycles, StandingAlarms standing, IReadOnlyList<AlarmRule> rules)
{
    internal void Shelve(AlarmId alarm, int durationMs)
    {
        AlarmState one = state.Alarm(alarm);
        lifecycles.Fire(alarm, LifecycleEvent.Shelve);
        if (one.Lifecycle == Lifecycle.Shelved)
            one.ShelvedMs = durationMs;
        lifecycles.SuppressConsequences();
    }

    internal void Announce(AlarmId alarm, LifecycleEvent happening)
    {
        lifecycles.Fire(alarm, happening);
        lifecycles.SuppressConsequences();
    }

    internal void EndShelvingInTime()
    {
        foreach (AlarmRule rule in rules)
        {
            if (state.Alarm(rule.Id) is { Lifecycle: Lifecycle.Shelved, ShelvedMs: 0 })
                lifecycles.Fire(rule.Id, LifecycleEvent.ShelvingOver);
        }
    }

    /// <summary>
    /// The first alarm keeps its mark until none stands and none waits to be acknowledged, or until another begins while none
    /// waits; of several at once, the upper row's. What is not shown is never the first.
    /// </summary>
    /// <param name="waited">Whether one waited to be acknowledged when the scan began.</param>
    internal void MarkFirstUp(bool waited)
    {
        scan.MarkedFirstUp = false;
        if (state.FirstUp is not null && waited)
            return;
        foreach (AlarmRule rule in rules)
        {
            if ((scan.Raised >> (int)rule.Id & 1) == 0 || !state.Alarm(rule.Id).IsShown)
                continue;
            state.FirstUp = rule.Id;
            scan.MarkedFirstUp = true;
            return;
        }
    }

    /// <summary>The mark goes where none stands and none waits.</summary>
    internal void ForgetFirstUp()
    {
        if (standing.AnyWaits)
            return;
        foreach (AlarmState alarm in state.Alarms)
        {
            if (alarm.Stands)
                return;
        }

        state.FirstUp = null;
    }
}
