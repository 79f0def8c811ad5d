namespace LubeController.Plant.Sensors;

/// <summary>The machine's shaft and the switch that senses its cams or teeth.</summary>
public sealed record ShaftDescription
{
    /// <summary>Pulses in one revolution, 1 to 10 000.</summary>
    public int PulsesPerRevolution { get; init; } = 1;

    /// <summary>Speed at the start, revolutions per second, 0 to 1000.</summary>
    public double InitialSpeedRevPerS { get; init; }

    /// <summary>A pulse shorter than this is not seen, us, 0 to 1e6. Default 0: every pulse is seen.</summary>
    public long MinimumPulseWidthUs { get; init; }

    /// <summary>Part of each pulse period for which the switch is on, above 0 and below 1. Default 0.5.</summary>
    public double Duty { get; init; } = 0.5;
}
