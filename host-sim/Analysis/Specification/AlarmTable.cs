using System.Collections.Generic;
using System.Linq;
using static LubeController.Analysis.Specification.AlarmAction;
using static LubeController.Analysis.Specification.AlarmCategory;
using static LubeController.Analysis.Specification.AlarmId;

namespace LubeController.Analysis.Specification;

/// <summary>The alarm table: what each alarm does to the pump, its category, and whether it latches.</summary>
public static class AlarmTable
{
    private const bool Latching = true;
    private const bool Passing = false;

    private static readonly AlarmRule[] Rows =
    [
        new(DividerStalled, "divider-stalled", DoseEnding, Failure, Latching, OnlyARunningPumpShows: true),
        new(DoseTooLong, "dose-too-long", DoseEnding, Failure, Latching, OnlyARunningPumpShows: true),
        new(LinePressureMissing, "line-pressure-missing", DoseEnding, Failure, Latching, OnlyARunningPumpShows: true),
        new(LineNotVented, "line-not-vented", DoseEnding, Failure, Latching, OnlyARunningPumpShows: true),
        new(LineOverpressure, "line-overpressure", Interlock, Failure, Latching),
        new(ReservoirEmpty, "reservoir-empty", Interlock, Failure, Latching),
        new(PumpOverload, "pump-overload", Interlock, Failure, Latching),
        new(SettingsInvalid, "settings-invalid", Interlock, Failure, Latching),
        new(CycleSwitchFault, "cycle-switch-fault", DoseEnding, Failure, Latching),
        new(OtherSwitchFault, "cycle-switch-fault (other switch)", None, OutOfSpecification, Latching),
        new(PulseWhileIdle, "pulse-while-idle", None, Failure, Latching),
        new(LogicFault, "logic-fault", Interlock, Failure, Latching),
        new(ScanOverrun, "scan-overrun", None, Failure, Latching),
        new(LubricationOverdue, "lubrication-overdue", None, Failure, Passing),
        new(ShaftSignalLost, "shaft-signal-lost", None, OutOfSpecification, Passing),
        new(RuleFault, "rule-fault", None, OutOfSpecification, Latching),
        new(PulseTooFast, "pulse-too-fast", None, OutOfSpecification, Latching),
        new(SensorsDisagree, "sensors-disagree", None, OutOfSpecification, Latching),
        new(PressureSignalLost, "pressure-signal-lost", None, Failure, Latching),
        new(LubricantCold, "lubricant-cold", None, OutOfSpecification, Passing),
        new(SupplyLow, "supply-low", Holding, OutOfSpecification, Passing),
        new(ReservoirLow, "reservoir-low", None, MaintenanceRequired, Passing),
        new(StorageCorrupt, "storage-corrupt", None, MaintenanceRequired, Latching),
        new(RestartUnexpected, "restart-unexpected", None, MaintenanceRequired, Latching),
    ];

    /// <summary>All rows, in the order of <see cref="AlarmId"/>.</summary>
    public static IReadOnlyList<AlarmRule> All { get; } = [.. Rows.OrderBy(rule => rule.Id)];

    /// <summary>The row of one alarm.</summary>
    public static AlarmRule RuleOf(AlarmId alarm) => All[(int)alarm];
}
