namespace LubeController.Plant.Sensors;

/// <summary>A pressure transmitter or gauge: what it reads follows the pressure with a lag and ends at its range.</summary>
public sealed record PressureTransmitterDescription
{
    /// <summary>The greatest pressure that it reads, Pa gauge, 1e5 to 1e8. Default 4e7 (400 bar).</summary>
    public double RangePa { get; init; } = 4e7;

    /// <summary>Time constant of its lag, s, 0 to 60. Default 0: none.</summary>
    public double LagS { get; init; }

    /// <summary>Where it is fitted.</summary>
    public LinePlace Place { get; init; } = LinePlace.Pump;

    /// <summary>A transmitter's 4-20 mA loop: 4 mA is no pressure, 20 mA its range. A gauge has none.</summary>
    public TransmitterLoopDescription Loop { get; init; } = new();
}
