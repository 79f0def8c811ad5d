namespace LubeController.Core;

/// <summary>How an alarm acts on the pump while it stands.</summary>
public enum AlarmAction
{
    /// <summary>It only informs.</summary>
    None = 0,

    /// <summary>The running dose fails and the phase becomes failed; priming and new tries stay possible.</summary>
    DoseEnding = 1,

    /// <summary>The pump is off while it stands and the phase becomes failed.</summary>
    Interlock = 2,

    /// <summary>The pump is off while it stands; a running dose and its timers wait, nothing latches.</summary>
    Holding = 3,
}

/// <summary>Categories of NAMUR NE 107, shown as text. Function check is driven by a phase, never by an alarm.</summary>
public enum AlarmCategory
{
    /// <summary>Failure: drops the healthy relay.</summary>
    Failure = 0,

    /// <summary>Out of specification: drives the warning output.</summary>
    OutOfSpecification = 1,

    /// <summary>Maintenance required: drives the warning output.</summary>
    MaintenanceRequired = 2,
}

/// <summary>The fixed facts of every alarm, in one place.</summary>
public static class AlarmTable
{
    /// <summary>Number of alarms; identifiers run from 0 to one less.</summary>
    public const int Count = 23;

    /// <summary>The name users see, lower case with hyphens; empty for what is no alarm, never null.</summary>
    /// <remarks>No table of strings: other classes' static initialisers ask for names, and may run before this class's own.</remarks>
    public static string NameOf(AlarmId id)
    {
        switch (id)
        {
            case AlarmId.DividerStalled: return "divider-stalled";
            case AlarmId.DoseTooLong: return "dose-too-long";
            case AlarmId.LinePressureMissing: return "line-pressure-missing";
            case AlarmId.LineOverpressure: return "line-overpressure";
            case AlarmId.ReservoirEmpty: return "reservoir-empty";
            case AlarmId.SettingsInvalid: return "settings-invalid";
            case AlarmId.CycleSwitchFault: return "cycle-switch-fault";
            case AlarmId.PulseWhileIdle: return "pulse-while-idle";
            case AlarmId.LubricationOverdue: return "lubrication-overdue";
            case AlarmId.ShaftSignalLost: return "shaft-signal-lost";
            case AlarmId.RuleFault: return "rule-fault";
            case AlarmId.PulseTooFast: return "pulse-too-fast";
            case AlarmId.ReservoirLow: return "reservoir-low";
            case AlarmId.LineNotVented: return "line-not-vented";
            case AlarmId.PumpOverload: return "pump-overload";
            case AlarmId.LogicFault: return "logic-fault";
            case AlarmId.ScanOverrun: return "scan-overrun";
            case AlarmId.LubricantCold: return "lubricant-cold";
            case AlarmId.SupplyLow: return "supply-low";
            case AlarmId.StorageCorrupt: return "storage-corrupt";
            case AlarmId.RestartUnexpected: return "restart-unexpected";
            case AlarmId.SensorsDisagree: return "sensors-disagree";
            case AlarmId.PressureSignalLost: return "pressure-signal-lost";
            default: return "";
        }
    }

    /// <summary>How the alarm acts. <see cref="AlarmId.CycleSwitchFault"/> ends a dose only for the dose-ending switch; that case is told apart by <see cref="AlarmList"/>.</summary>
    public static AlarmAction ActionOf(AlarmId id)
    {
        switch (id)
        {
            case AlarmId.DividerStalled:
            case AlarmId.DoseTooLong:
            case AlarmId.LinePressureMissing:
            case AlarmId.LineNotVented:
                return AlarmAction.DoseEnding;
            case AlarmId.LineOverpressure:
            case AlarmId.ReservoirEmpty:
            case AlarmId.SettingsInvalid:
            case AlarmId.PumpOverload:
            case AlarmId.LogicFault:
                return AlarmAction.Interlock;
            case AlarmId.SupplyLow:
                return AlarmAction.Holding;
            default:
                return AlarmAction.None;
        }
    }

    /// <summary>The category, with the same exception as <see cref="ActionOf"/>; <see cref="AlarmId.SensorsDisagree"/> is a failure where protection is lost, which <see cref="AlarmList"/> tells.</summary>
    public static AlarmCategory CategoryOf(AlarmId id)
    {
        switch (id)
        {
            case AlarmId.CycleSwitchFault:
            case AlarmId.ShaftSignalLost:
            case AlarmId.RuleFault:
            case AlarmId.PulseTooFast:
            case AlarmId.LubricantCold:
            case AlarmId.SupplyLow:
            case AlarmId.SensorsDisagree:
                return AlarmCategory.OutOfSpecification;
            case AlarmId.ReservoirLow:
            case AlarmId.StorageCorrupt:
            case AlarmId.RestartUnexpected:
                return AlarmCategory.MaintenanceRequired;
            default:
                return AlarmCategory.Failure;
        }
    }

    /// <summary>
    /// The alarms from which this one follows, one bit each: raised while one of them is active and shown, this one is suppressed
    /// by design until none of them stands. Nothing suppresses <see cref="AlarmId.LubricationOverdue"/>.
    /// </summary>
    public static int CausesOf(AlarmId id)
    {
        switch (id)
        {
            case AlarmId.DividerStalled:
                return Bit(AlarmId.ReservoirEmpty) | Bit(AlarmId.PumpOverload) | Bit(AlarmId.LinePressureMissing) | Bit(AlarmId.LineOverpressure);
            case AlarmId.LinePressureMissing:
                return Bit(AlarmId.ReservoirEmpty) | Bit(AlarmId.PumpOverload) | Bit(AlarmId.PressureSignalLost);
            case AlarmId.SensorsDisagree:
                return Bit(AlarmId.PressureSignalLost);
            case AlarmId.DoseTooLong:
                return Bit(AlarmId.DividerStalled);
            case AlarmId.ReservoirLow:
                return Bit(AlarmId.ReservoirEmpty);
            case AlarmId.ShaftSignalLost:
                return Bit(AlarmId.SupplyLow);
            case AlarmId.ScanOverrun:
            case AlarmId.RestartUnexpected:
                return Bit(AlarmId.LogicFault);
            default:
                return 0;
        }
    }

    /// <summary>Whether the condition is over as soon as it has come, so that the delay off is how long the alarm is active.</summary>
    public static bool IsOfAnInstant(AlarmId id) =>
        id == AlarmId.PulseWhileIdle || id == AlarmId.PulseTooFast || id == AlarmId.LogicFault || id == AlarmId.ScanOverrun
        || id == AlarmId.StorageCorrupt || id == AlarmId.RestartUnexpected;

    /// <summary>Whether the alarm latches, so that it stands until reset after its condition has ended.</summary>
    public static bool Latches(AlarmId id) =>
        id != AlarmId.LubricationOverdue && id != AlarmId.ShaftSignalLost && id != AlarmId.ReservoirLow
        && id != AlarmId.LubricantCold && id != AlarmId.SupplyLow;

    /// <summary>
    /// Whether the condition is one that only a running dose, or a rule at work, can show: then reset itself ends it, and
    /// the alarm rises again within its bound if the cause remains.
    /// </summary>
    public static bool EndedByReset(AlarmId id) =>
        ActionOf(id) == AlarmAction.DoseEnding || id == AlarmId.RuleFault;

    /// <summary>
    /// Whether a delay before raising may be set. The other alarms already stand for something that has happened, often
    /// at the end of a time of their own, and are raised at once.
    /// </summary>
    public static bool TakesDelayOn(AlarmId id) =>
        id == AlarmId.LineOverpressure || id == AlarmId.ReservoirEmpty || id == AlarmId.LubricationOverdue
        || id == AlarmId.ShaftSignalLost || id == AlarmId.ReservoirLow || id == AlarmId.PumpOverload
        || id == AlarmId.LubricantCold || id == AlarmId.SupplyLow || id == AlarmId.PressureSignalLost;

    private static int Bit(AlarmId id) => 1 << (int)id;
}
