namespace LubeController.Core;

/// <summary>Every alarm, named for what is wrong. <see cref="AlarmTable"/> says how each one acts.</summary>
public enum AlarmId
{
    /// <summary>A cycle switch's timeout ended with no retries left: no cycle was seen, the cause is unknown.</summary>
    DividerStalled = 0,

    /// <summary>The pump-on time of one dose went beyond its limit.</summary>
    DoseTooLong = 1,

    /// <summary>The pump ran and the line pressure was not reached within its time.</summary>
    LinePressureMissing = 2,

    /// <summary>The line pressure is above its limit.</summary>
    LineOverpressure = 3,

    /// <summary>The empty switch of the reservoir is on.</summary>
    ReservoirEmpty = 4,

    /// <summary>The settings were refused.</summary>
    SettingsInvalid = 5,

    /// <summary>A second witness proves a cycle switch wrong, or it chatters.</summary>
    CycleSwitchFault = 6,

    /// <summary>Pulses came after the run-on time with the pump off.</summary>
    PulseWhileIdle = 7,

    /// <summary>No dose was completed within the limit.</summary>
    LubricationOverdue = 8,

    /// <summary>No shaft pulses came while the machine runs.</summary>
    ShaftSignalLost = 9,

    /// <summary>A user's rule threw or answered out of range; the fallback time takes over.</summary>
    RuleFault = 10,

    /// <summary>Pulses came faster than the pump can cause.</summary>
    PulseTooFast = 11,

    /// <summary>The low switch of the reservoir is on.</summary>
    ReservoirLow = 12,

    /// <summary>The line of a single-line system did not stand vented within its time, so that its injectors are not recharged.</summary>
    LineNotVented = 13,

    /// <summary>The pump's overload contact is on, or the pump is on without revolutions.</summary>
    PumpOverload = 14,

    /// <summary>An exception was caught in the main loop, and the board was restarted.</summary>
    LogicFault = 15,

    /// <summary>A scan came later than its limit.</summary>
    ScanOverrun = 16,

    /// <summary>The lubricant is colder than its limit.</summary>
    LubricantCold = 17,

    /// <summary>The supply voltage is below its limit.</summary>
    SupplyLow = 18,

    /// <summary>A block of the non-volatile memory other than the settings lost its check value, or a save was refused.</summary>
    StorageCorrupt = 19,

    /// <summary>More restarts than set, or two power cuts closer than one save interval.</summary>
    RestartUnexpected = 20,

    /// <summary>Two sensors say what cannot both be true: pulses and volume, pulses and pressure, or shaft and machine running.</summary>
    SensorsDisagree = 21,

    /// <summary>The pressure transmitter's signal is outside what a working one gives, so that the pressure is not watched.</summary>
    PressureSignalLost = 22,
}
