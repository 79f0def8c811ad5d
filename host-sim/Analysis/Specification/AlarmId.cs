namespace LubeController.Analysis.Specification;

/// <summary>Every alarm. What it does is in <see cref="AlarmTable"/>: a new alarm is one line here and one row there.</summary>
public enum AlarmId
{
    /// <summary>divider-stalled</summary>
    DividerStalled,

    /// <summary>dose-too-long</summary>
    DoseTooLong,

    /// <summary>line-pressure-missing</summary>
    LinePressureMissing,

    /// <summary>line-not-vented</summary>
    LineNotVented,

    /// <summary>line-overpressure</summary>
    LineOverpressure,

    /// <summary>reservoir-empty</summary>
    ReservoirEmpty,

    /// <summary>pump-overload</summary>
    PumpOverload,

    /// <summary>settings-invalid</summary>
    SettingsInvalid,

    /// <summary>cycle-switch-fault of the dose-ending switch</summary>
    CycleSwitchFault,

    /// <summary>cycle-switch-fault of the other switch</summary>
    OtherSwitchFault,

    /// <summary>pulse-while-idle</summary>
    PulseWhileIdle,

    /// <summary>logic-fault</summary>
    LogicFault,

    /// <summary>scan-overrun</summary>
    ScanOverrun,

    /// <summary>lubrication-overdue</summary>
    LubricationOverdue,

    /// <summary>shaft-signal-lost</summary>
    ShaftSignalLost,

    /// <summary>rule-fault</summary>
    RuleFault,

    /// <summary>pulse-too-fast</summary>
    PulseTooFast,

    /// <summary>sensors-disagree</summary>
    SensorsDisagree,

    /// <summary>pressure-signal-lost</summary>
    PressureSignalLost,

    /// <summary>lubricant-cold</summary>
    LubricantCold,

    /// <summary>supply-low</summary>
    SupplyLow,

    /// <summary>reservoir-low</summary>
    ReservoirLow,

    /// <summary>storage-corrupt</summary>
    StorageCorrupt,

    /// <summary>restart-unexpected</summary>
    RestartUnexpected,
}
