namespace LubeController.Core;

/// <summary>The fixed facts of every alarm: one row each. Who adds an alarm adds its row here.</summary>
public static class AlarmTable
{
    /// <summary>Number of alarms; identifiers run from 0 to one less.</summary>
    public const int Count = 23;

    private const AlarmAction None = AlarmAction.None;
    private const AlarmAction DoseEnding = AlarmAction.DoseEnding;
    private const AlarmAction Interlock = AlarmAction.Interlock;
    private const AlarmCategory Failure = AlarmCategory.Failure;
    private const AlarmCategory OutOfSpecification = AlarmCategory.OutOfSpecification;
    private const AlarmCategory MaintenanceRequired = AlarmCategory.MaintenanceRequired;
    private const AlarmTraits Latches = AlarmTraits.Latches;
    private const AlarmTraits TakesDelayOn = AlarmTraits.TakesDelayOn;
    private const AlarmTraits Momentary = AlarmTraits.Momentary;

    // The alarms that others follow from, as bits.
    private const int DividerStalled = 1 << (int)AlarmId.DividerStalled;
    private const int LineOverpressure = 1 << (int)AlarmId.LineOverpressure;
    private const int LinePressureMissing = 1 << (int)AlarmId.LinePressureMissing;
    private const int LogicFault = 1 << (int)AlarmId.LogicFault;
    private const int PressureSignalLost = 1 << (int)AlarmId.PressureSignalLost;
    private const int PumpOverload = 1 << (int)AlarmId.PumpOverload;
    private const int ReservoirEmpty = 1 << (int)AlarmId.ReservoirEmpty;
    private const int SupplyLow = 1 << (int)AlarmId.SupplyLow;

    private static readonly AlarmSpec[] Rows = MakeRows();

    /// <summary>The row of an alarm; never null.</summary>
    public static AlarmSpec Spec(AlarmId id) => Rows[(int)id];

    /// <summary>Makes the rows, index by alarm. Another class's static initialiser must call this, since the table may not exist yet then.</summary>
    internal static AlarmSpec[] MakeRows()
    {
        var rows = new AlarmSpec[Count];
        MakePumpStopping(rows);
        MakeFailures(rows);
        MakeWarnings(rows);
        return rows;
    }

    private static void MakePumpStopping(AlarmSpec[] rows)
    {
        Add(rows, AlarmId.DividerStalled, "divider-stalled", DoseEnding, Failure, Latches, ReservoirEmpty | PumpOverload | LinePressureMissing | LineOverpressure);
        Add(rows, AlarmId.DoseTooLong, "dose-too-long", DoseEnding, Failure, Latches, DividerStalled);
        Add(rows, AlarmId.LinePressureMissing, "line-pressure-missing", DoseEnding, Failure, Latches, ReservoirEmpty | PumpOverload | PressureSignalLost);
        Add(rows, AlarmId.LineNotVented, "line-not-vented", DoseEnding, Failure, Latches, 0);
        Add(rows, AlarmId.LineOverpressure, "line-overpressure", Interlock, Failure, Latches | TakesDelayOn, 0);
        Add(rows, AlarmId.ReservoirEmpty, "reservoir-empty", Interlock, Failure, Latches | TakesDelayOn, 0);
        Add(rows, AlarmId.SettingsInvalid, "settings-invalid", Interlock, Failure, Latches, 0);
        Add(rows, AlarmId.PumpOverload, "pump-overload", Interlock, Failure, Latches | TakesDelayOn, 0);
        Add(rows, AlarmId.LogicFault, "logic-fault", Interlock, Failure, Latches | Momentary, 0);
    }

    private static void MakeFailures(AlarmSpec[] rows)
    {
        Add(rows, AlarmId.PulseWhileIdle, "pulse-while-idle", None, Failure, Latches | Momentary, 0);
        Add(rows, AlarmId.LubricationOverdue, "lubrication-overdue", None, Failure, TakesDelayOn, 0);
        Add(rows, AlarmId.ScanOverrun, "scan-overrun", None, Failure, Latches | Momentary, LogicFault);
        Add(rows, AlarmId.PressureSignalLost, "pressure-signal-lost", None, Failure, Latches | TakesDelayOn, 0);
    }

    private static void MakeWarnings(AlarmSpec[] rows)
    {
        Add(rows, AlarmId.CycleSwitchFault, "cycle-switch-fault", None, OutOfSpecification, Latches | AlarmTraits.BecomesFailure | AlarmTraits.BecomesDoseEnding, 0);
        Add(rows, AlarmId.ShaftSignalLost, "shaft-signal-lost", None, OutOfSpecification, TakesDelayOn, SupplyLow);
        Add(rows, AlarmId.RuleFault, "rule-fault", None, OutOfSpecification, Latches, 0);
        Add(rows, AlarmId.PulseTooFast, "pulse-too-fast", None, OutOfSpecification, Latches | Momentary, 0);
        Add(rows, AlarmId.LubricantCold, "lubricant-cold", None, OutOfSpecification, TakesDelayOn, 0);
        Add(rows, AlarmId.SupplyLow, "supply-low", AlarmAction.Holding, OutOfSpecification, TakesDelayOn, 0);
        Add(rows, AlarmId.SensorsDisagree, "sensors-disagree", None, OutOfSpecification, Latches | AlarmTraits.BecomesFailure, PressureSignalLost);
        Add(rows, AlarmId.ReservoirLow, "reservoir-low", None, MaintenanceRequired, TakesDelayOn, ReservoirEmpty);
        Add(rows, AlarmId.StorageCorrupt, "storage-corrupt", None, MaintenanceRequired, Latches | Momentary, 0);
        Add(rows, AlarmId.RestartUnexpected, "restart-unexpected", None, MaintenanceRequired, Latches | Momentary, LogicFault);
    }

    private static void Add(AlarmSpec[] rows, AlarmId id, string name, AlarmAction action, AlarmCategory category, AlarmTraits traits, int causes) =>
        rows[(int)id] = new AlarmSpec(name, action, category, traits, causes);
}
