namespace LubeController.Plant.Faults;

/// <summary>What a fault's part name must name.</summary>
public enum FaultPart
{
    /// <summary>Nothing: the plant has one such part, and the name is empty.</summary>
    None,

    /// <summary>An outlet.</summary>
    Outlet,

    /// <summary>A cycle switch.</summary>
    CycleSwitch,

    /// <summary>A level switch: <c>low</c> or <c>empty</c>.</summary>
    LevelSwitch,

    /// <summary>The pressure switch; the name is empty, and the plant must have one.</summary>
    PressureSwitch,

    /// <summary>The shaft switch; the name is empty, and the plant must have one.</summary>
    Shaft,

    /// <summary>A section of the divider: its piston.</summary>
    Section,

    /// <summary>The pressure transmitter; the name is empty, and the plant must have one.</summary>
    Transmitter,

    /// <summary>The pressure gauge; the name is empty, and the plant must have one.</summary>
    Gauge,

    /// <summary>The vent valve of a single-line system; the name is empty, and the plant must have one.</summary>
    VentValve,

    /// <summary>An injector of a single-line system.</summary>
    Injector,

    /// <summary>A wire of the wiring.</summary>
    Wire,

    /// <summary>Two wires of the wiring, joined by a plus sign.</summary>
    WirePair,

    /// <summary>A contact of the wiring.</summary>
    WiringContact,

    /// <summary>A lamp of the wiring.</summary>
    Lamp,

    /// <summary>A fuse of the wiring.</summary>
    Fuse,

    /// <summary>A cycle switch whose loop is described.</summary>
    Sensor,

    /// <summary>The control supply; the name is empty.</summary>
    ControlSupply,

    /// <summary>A core of such a switch's cable: the switch and the core's colour, joined by a plus sign.</summary>
    SensorCore,

    /// <summary>Two cores of such a switch's cable: the switch and two colours, joined by plus signs.</summary>
    SensorCorePair,
}
