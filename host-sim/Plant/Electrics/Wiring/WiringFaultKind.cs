namespace LubeController.Plant.Electrics.Wiring;

/// <summary>The ways in which a part of the wiring can fail.</summary>
public enum WiringFaultKind
{
    /// <summary>A wire is broken at its first end.</summary>
    WireOpen,

    /// <summary>A wire has a resistance, as a corroded terminal does.</summary>
    WireResistive,

    /// <summary>A wire touches another.</summary>
    WireBridged,

    /// <summary>A wire touches the supply's plus.</summary>
    WireShortedToSupply,

    /// <summary>A wire touches ground.</summary>
    WireShortedToGround,

    /// <summary>A contact stays closed.</summary>
    ContactWelded,

    /// <summary>A closed contact has a resistance.</summary>
    ContactResistive,

    /// <summary>A lamp has lost its filament.</summary>
    LampBlown,

    /// <summary>A fuse has blown.</summary>
    FuseBlown,
}
