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

    /// <summary>The line loses a constant flow while there is pressure in it.</summary>
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
}
