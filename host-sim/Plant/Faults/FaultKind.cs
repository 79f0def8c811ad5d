namespace LubeController.Plant.Faults;

/// <summary>The ways in which a part can fail. Each changes a physical part and nothing else.</summary>
public enum FaultKind
{
    /// <summary>An outlet passes nothing.</summary>
    OutletBlocked,

    /// <summary>The divider's inlet passes nothing.</summary>
    InletBlocked,

    /// <summary>The pump's suction passes nothing.</summary>
    SuctionBlocked,

    /// <summary>The motor does not turn, whatever its contact says.</summary>
    PumpOff,

    /// <summary>The pump delivers a fraction of what it did when new.</summary>
    PumpWorn,

    /// <summary>More air is in the line.</summary>
    AirInLine,

    /// <summary>A joint at the end of the line seeps in proportion to the pressure.</summary>
    LineLeak,

    /// <summary>The relief valve opens at a low pressure.</summary>
    ReliefStuckOpen,

    /// <summary>The reservoir's content is gone but for a rest; healing refills it to its content at the start.</summary>
    ReservoirEmpty,

    /// <summary>A level switch reads on for ever.</summary>
    LevelSwitchStuckOn,

    /// <summary>A level switch reads off for ever.</summary>
    LevelSwitchStuckOff,

    /// <summary>The motor's contact stays closed.</summary>
    PumpContactWelded,

    /// <summary>A cycle switch reads on for ever.</summary>
    CycleSwitchStuckOn,

    /// <summary>A cycle switch reads off for ever.</summary>
    CycleSwitchStuckOff,

    /// <summary>A cycle switch toggles at irregular, seeded intervals.</summary>
    CycleSwitchChattering,

    /// <summary>A cycle switch's wire is broken: off, whatever its contact.</summary>
    CycleSwitchWireBroken,

    /// <summary>The shaft switch gives no pulses.</summary>
    ShaftSwitchLost,

    /// <summary>The pressure switch reads on for ever.</summary>
    PressureSwitchStuckOn,

    /// <summary>The pressure switch reads off for ever.</summary>
    PressureSwitchStuckOff,

    /// <summary>A cycle switch's wire comes and goes at irregular, seeded intervals.</summary>
    CycleSwitchWireLoose,

    /// <summary>An outlet passes less than it should under the same pressure.</summary>
    OutletRestricted,

    /// <summary>Part of what an outlet gets is lost before the point.</summary>
    OutletLineLeaking,

    /// <summary>A point resists more than it should.</summary>
    OutletBackPressure,

    /// <summary>The strainer passes less than it should under the same pressure.</summary>
    StrainerClogged,

    /// <summary>A piston needs more pressure before it moves.</summary>
    PistonStiff,

    /// <summary>Lubricant passes by a piston.</summary>
    PistonWorn,

    /// <summary>A piston does not move.</summary>
    PistonStuck,

    /// <summary>The check valve at the pump's outlet lets lubricant back.</summary>
    CheckValveLeaking,

    /// <summary>The relief valve never opens.</summary>
    ReliefStuckClosed,

    /// <summary>The pump turns more slowly than it should.</summary>
    PumpSlow,

    /// <summary>The pump draws air with the lubricant.</summary>
    SuctionAerated,

    /// <summary>The pump's cylinder fills only in part.</summary>
    FillingPoor,

    /// <summary>The line has an opening: what it loses grows with the pressure.</summary>
    LineBurst,

    /// <summary>The lubricant is warmer or colder than it was set to be.</summary>
    LubricantTemperatureOff,

    /// <summary>The motor's supply is not what it should be.</summary>
    MotorSupplyLow,

    /// <summary>The pressure gauge is off by a constant.</summary>
    GaugeWrong,

    /// <summary>The pressure transmitter is off by a constant.</summary>
    TransmitterWrong,

    /// <summary>The pressure transmitter follows late.</summary>
    TransmitterLagging,

    /// <summary>The vent valve stays open.</summary>
    VentValveStuckOpen,

    /// <summary>The vent valve stays closed.</summary>
    VentValveStuckClosed,

    /// <summary>An injector does not move.</summary>
    InjectorStuck,

    /// <summary>A wire of the wiring is broken at its first end.</summary>
    WireOpen,

    /// <summary>A wire has a resistance, as a corroded terminal does.</summary>
    WireResistive,

    /// <summary>A wire touches another.</summary>
    WireBridged,

    /// <summary>A wire touches the supply's plus.</summary>
    WireShortedToSupply,

    /// <summary>A wire touches ground.</summary>
    WireShortedToGround,

    /// <summary>A contact of an output stays closed.</summary>
    ContactWelded,

    /// <summary>A closed contact of an output has a resistance.</summary>
    ContactResistive,

    /// <summary>A lamp has lost its filament.</summary>
    LampBlown,

    /// <summary>A fuse has blown.</summary>
    FuseBlown,

    /// <summary>The target of a cycle switch passes further away.</summary>
    SensorTargetFar,

    /// <summary>Metal chips cover a cycle switch.</summary>
    SensorChips,

    /// <summary>Water covers a cycle switch.</summary>
    SensorWater,

    /// <summary>The loop of a cycle switch is fed with another voltage.</summary>
    SensorSupplyLow,

    /// <summary>A core of a cycle switch's cable is broken.</summary>
    SensorCoreBroken,

    /// <summary>A core of a cycle switch's cable has a resistance.</summary>
    SensorCoreResistive,

    /// <summary>A core of a cycle switch's cable touches the supply's plus.</summary>
    SensorCoreShortedToSupply,

    /// <summary>A core of a cycle switch's cable touches ground.</summary>
    SensorCoreShortedToGround,

    /// <summary>Two cores of a cycle switch's cable touch.</summary>
    SensorCoresShorted,

    /// <summary>Two cores of a cycle switch's cable are swapped.</summary>
    SensorCoresSwapped,

    /// <summary>The control supply has another voltage.</summary>
    ControlSupplyLow,

    /// <summary>A ripple lies on the control supply.</summary>
    ControlSupplyRipple,

    /// <summary>The pressure transmitter's loop is interrupted.</summary>
    TransmitterLoopBroken,

    /// <summary>The two cores of the pressure transmitter's loop touch.</summary>
    TransmitterLoopShorted,

    /// <summary>The pressure transmitter's loop has a resistance more.</summary>
    TransmitterLoopResistive,

    /// <summary>The pressure transmitter reports its failure by a low current.</summary>
    TransmitterFailsLow,

    /// <summary>The pressure transmitter reports its failure by a high current.</summary>
    TransmitterFailsHigh,

    /// <summary>The pump is seized and its motor stands under power.</summary>
    PumpSeized,
}
