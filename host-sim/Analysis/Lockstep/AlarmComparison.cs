using LubeController.Analysis.Specification;

namespace LubeController.Analysis.Lockstep;

/// <summary>Compares every alarm of core and specification.</summary>
internal sealed class AlarmComparison(LubricationSpecification spec)
{
    /// <summary>What differs, with both values, or null.</summary>
    internal string? Compare(Observation seen)
    {
        foreach (AlarmRule rule in AlarmTable.All)
        {
            if (rule.Id == AlarmId.OtherSwitchFault)
                continue;
            AlarmView view = rule.Id == AlarmId.CycleSwitchFault ? SwitchFaultView() : spec.Alarm(rule.Id);
            AlarmObservation core = seen.Alarms[CoreNumbers.NumberOf(rule.Id)];
            AlarmRule demanded = spec.Rule(Worst(rule.Id));
            string? difference = Difference.Between(rule.Name + " active", core.Active, view.Active)
                ?? Difference.Between(rule.Name + " latched", core.Latched, view.Latched);
            if (difference is null && core.State != StateOf(view))
                difference = $"{rule.Name} state: core {StateName(core.State)}, specification {StateName(StateOf(view))}";
            if (difference is null && view.Stands)
            {
                difference = Difference.Between(rule.Name + " category", core.Category, (byte)demanded.Category)
                    ?? Difference.Between(rule.Name + " action", core.Action, (byte)demanded.Action);
            }

            if (difference is not null)
                return difference;
        }

        return null;
    }

    /// <summary>
    /// The core has one alarm for what are two rows of the specification. It is active, latched, or waits to be acknowledged if
    /// either row is or does; whoever hides it hides both. Action and category are of the worse row that stands.
    /// </summary>
    private AlarmView SwitchFaultView()
    {
        AlarmView ending = spec.Alarm(AlarmId.CycleSwitchFault);
        AlarmView other = spec.Alarm(AlarmId.OtherSwitchFault);
        if (ending.Lifecycle is Lifecycle.Shelved or Lifecycle.SuppressedByDesign or Lifecycle.OutOfService)
            return ending with { Active = ending.Active || other.Active, Latched = ending.Latched || other.Latched };
        bool active = ending.Active || other.Active;
        bool latched = ending.Latched || other.Latched;
        Lifecycle seen = active ? Lifecycle.Acknowledged : latched ? Lifecycle.Latched : Lifecycle.Normal;
        Lifecycle state = Waits(ending) || Waits(other) ? Lifecycle.Unacknowledged : seen;
        return new AlarmView(state, active, latched, 0, ending.FirstUp || other.FirstUp);
    }

    private static bool Waits(AlarmView alarm) => alarm.Lifecycle is Lifecycle.Unacknowledged or Lifecycle.ReturnedUnacknowledged;

    private AlarmId Worst(AlarmId alarm) =>
        alarm == AlarmId.CycleSwitchFault && !spec.Alarm(alarm).Stands ? AlarmId.OtherSwitchFault : alarm;

    private static string StateName(byte state) => state switch
    {
        0 => "normal",
        1 => "unacknowledged",
        2 => "acknowledged",
        3 => "returned unacknowledged",
        4 => "latched unacknowledged",
        5 => "latched acknowledged",
        6 => "shelved",
        7 => "suppressed by design",
        _ => "out of service",
    };

    private static byte StateOf(AlarmView alarm) => alarm.Lifecycle switch
    {
        Lifecycle.Normal => 0,
        Lifecycle.Acknowledged => 2,
        Lifecycle.Latched => 5,
        Lifecycle.Shelved => 6,
        Lifecycle.SuppressedByDesign => 7,
        Lifecycle.OutOfService => 8,
        _ when alarm.Active => 1,
        _ when alarm.Latched => 4,
        _ => 3,
    };
}
