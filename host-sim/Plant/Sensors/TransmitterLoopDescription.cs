namespace LubeController.Plant.Sensors;

/// <summary>The two-wire loop of a pressure transmitter. SI units. Immutable.</summary>
public sealed record TransmitterLoopDescription
{
    /// <summary>Supply of the loop, V, above 0 and at most 60.</summary>
    public double SupplyV { get; init; } = 24;

    /// <summary>Voltage the transmitter needs at its terminals, V, above 0 and below the supply. Default 10, assumed.</summary>
    public double LeastVoltageV { get; init; } = 10;

    /// <summary>Resistance of wires and input together, ohm, 1 to 10 000. Default 250.</summary>
    public double LoopOhms { get; init; } = 250;
}
