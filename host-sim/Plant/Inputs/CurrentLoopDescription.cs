namespace LubeController.Plant.Inputs;

/// <summary>A two-wire 4-20 mA transmitter, its supply and its loop. SI units. Immutable.</summary>
public sealed record CurrentLoopDescription
{
    /// <summary>Measured value at 4 mA, in the unit of the quantity.</summary>
    public required double LowValue { get; init; }

    /// <summary>Measured value at 20 mA; other than <see cref="LowValue"/>.</summary>
    public required double HighValue { get; init; }

    /// <summary>Current below which a sound transmitter does not go, A. Default 3.8 mA (NAMUR NE 43).</summary>
    public double LeastA { get; init; } = Ne43.LeastValidA;

    /// <summary>Current above which a sound transmitter does not go, A. Default 20.5 mA (NAMUR NE 43).</summary>
    public double MostA { get; init; } = Ne43.MostValidA;

    /// <summary>Current by which it reports a failure downwards, A. Default 3.5 mA, assumed within NE 43.</summary>
    public double FailureLowA { get; init; } = 3.5e-3;

    /// <summary>Current by which it reports a failure upwards, A. Default 22 mA, assumed within NE 43.</summary>
    public double FailureHighA { get; init; } = 22e-3;

    /// <summary>Voltage the transmitter needs at its terminals, V. Default 10, assumed.</summary>
    public double LeastVoltageV { get; init; } = 10;

    /// <summary>Resistance of wires and input together, ohm, above 0. Default 250.</summary>
    public double LoopOhms { get; init; } = 250;

    /// <summary>Most that the input lets through when the transmitter is shorted, A. Default 30 mA, assumed.</summary>
    public double InputLimitA { get; init; } = 30e-3;
}
