namespace LubeController.Plant.Description;

/// <summary>
/// A piston element driven by a cam: one delivery stroke in the first half of each revolution, filling in the second.
/// Delivered per revolution: pi/4 x bore^2 x stroke x volumetric efficiency.
/// </summary>
public sealed record CamPumpDescription : PumpDescription
{
    /// <summary>Bore of the piston, m, 1e-3 to 0.1.</summary>
    public required double PistonBoreM { get; init; }

    /// <summary>Stroke of the piston, m, 1e-4 to 0.2.</summary>
    public required double StrokeM { get; init; }

    /// <summary>Speed of the cam while the motor runs, revolutions per second, 1e-3 to 100.</summary>
    public required double SpeedRevPerS { get; init; }

    /// <summary>Volumetric efficiency, a fraction, 0.01 to 1.</summary>
    public double VolumetricEfficiency { get; init; } = 1.0;

    /// <summary>Pieces of constant flow that stand for the sine-shaped delivery half, 1 to 64. Default 8.</summary>
    public int DeliverySegments { get; init; } = 8;

    /// <summary>Where the cam stands at the start, fraction of a revolution, 0 (start of delivery) up to, not including, 1.</summary>
    public double InitialAngle { get; init; }
}
