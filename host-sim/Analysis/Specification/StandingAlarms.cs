using System.Collections.Generic;

namespace LubeController.Analysis.Specification;

/// <summary>Which alarms stand, by what they do.</summary>
internal sealed class StandingAlarms(SpecState state, SpecScan scan, IReadOnlyList<AlarmRule> rules)
{
    /// <summary>Whether an alarm of the category failure stands.</summary>
    internal bool AnyFailure
    {
        get
        {
            foreach (AlarmRule rule in rules)
            {
                if (rule.Category == AlarmCategory.Failure && state.Alarm(rule.Id).Stands)
                    return true;
            }

            return false;
        }
    }

    /// <summary>Whether an alarm waits to be acknowledged.</summary>
    internal bool AnyWaits
    {
        get
        {
            foreach (AlarmState alarm in state.Alarms)
            {
                if (alarm.Waits)
                    return true;
            }

            return false;
        }
    }

    /// <summary>Whether one stands and nothing hides it.</summary>
    internal bool AnyShown
    {
        get
        {
            foreach (AlarmState alarm in state.Alarms)
            {
                if (alarm.Stands && alarm.IsShown)
                    return true;
            }

            return false;
        }
    }

    /// <summary>Whether an alarm below failure drives the warning output: it stands, and nothing hides it.</summary>
    internal bool AnyWarning
    {
        get
        {
            foreach (AlarmRule rule in rules)
            {
                AlarmState alarm = state.Alarm(rule.Id);
                if (rule.Category != AlarmCategory.Failure && alarm.Stands && alarm.IsShown && !SwitchFaultRows.HasBecomeWorse(state, rule.Id))
                    return true;
            }

            return false;
        }
    }

    /// <summary>
    /// Whether a dose-ending alarm began in this scan. What began before the new try did stands like what began long ago: the try
    /// is given all the same.
    /// </summary>
    internal bool DoseEndingBegan
    {
        get
        {
            foreach (AlarmRule rule in rules)
            {
                if (rule.Action == AlarmAction.DoseEnding && ((scan.Began & ~scan.BeganBeforeTry) >> (int)rule.Id & 1) != 0)
                    return true;
            }

            return false;
        }
    }

    /// <summary>Whether an alarm that acts so stands.</summary>
    internal bool Any(AlarmAction action)
    {
        foreach (AlarmRule rule in rules)
        {
            if (rule.Action == action && state.Alarm(rule.Id).Stands)
                return true;
        }

        return false;
    }
}
