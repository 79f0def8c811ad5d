namespace LubeController.Emulator;

/// <summary>Inputs of the controller that may be held by hand, whatever the plant's sensors show.</summary>
public enum HandInput
{
    /// <summary>First cycle switch.</summary>
    CycleSwitch1,

    /// <summary>Second cycle switch.</summary>
    CycleSwitch2,

    /// <summary>Third cycle switch.</summary>
    CycleSwitch3,

    /// <summary>Fourth cycle switch.</summary>
    CycleSwitch4,

    /// <summary>Low-level switch.</summary>
    LevelLow,

    /// <summary>Empty switch.</summary>
    LevelEmpty,

    /// <summary>Pressure switch.</summary>
    PressureSwitch,

    /// <summary>Overload contact of the pump's motor.</summary>
    PumpOverload,

    /// <summary>Line pressure, millibar.</summary>
    Pressure,

    /// <summary>Supply voltage, millivolts.</summary>
    Supply,

    /// <summary>Lubricant temperature, tenths of a degree Celsius.</summary>
    Temperature,

    /// <summary>Shaft pulses, given once in the next scan.</summary>
    ShaftPulses,

    /// <summary>Revolutions of the pump, given once in the next scan.</summary>
    PumpRevolutions,

    /// <summary>Whether scans come later than allowed, which the board's clock tells otherwise.</summary>
    ScanLate,
}
