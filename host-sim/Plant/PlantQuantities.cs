using System;

namespace LubeController.Plant;

/// <summary>Single quantities of the plant, as a set.</summary>
[Flags]
public enum PlantQuantities
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Line pressure.</summary>
    LinePressure = 1,

    /// <summary>Reservoir content.</summary>
    ReservoirContent = 2,

    /// <summary>Volume pumped.</summary>
    Pumped = 4,

    /// <summary>Volume relieved.</summary>
    Relieved = 8,

    /// <summary>Volume leaked.</summary>
    Leaked = 16,

    /// <summary>The level of at least one cycle switch.</summary>
    CycleSwitches = 32,

    /// <summary>The level of the pressure switch.</summary>
    PressureSwitch = 64,

    /// <summary>The level of a level switch.</summary>
    LevelSwitches = 128,

    /// <summary>Pressure at the end of the line.</summary>
    EndPressure = 256,

    /// <summary>Voltage of the control supply.</summary>
    ControlSupply = 512,

    /// <summary>A contact of the wiring.</summary>
    Wiring = 1024,

    /// <summary>All of them.</summary>
    All = 2047,
}
