namespace LubeController.Plant.Sensors;

/// <summary>How a switch tells what it senses.</summary>
public enum SwitchOutput
{
    /// <summary>Three wires; connects the signal core to plus.</summary>
    Pnp,

    /// <summary>Three wires; connects the signal core to minus.</summary>
    Npn,

    /// <summary>Two wires between plus and signal core; lives on what it lets through.</summary>
    TwoWire,

    /// <summary>Two wires into a switching amplifier, told apart by current (IEC 60947-5-6).</summary>
    Namur,

    /// <summary>A contact between plus and signal core: a position switch or a reed.</summary>
    DryContact,
}
