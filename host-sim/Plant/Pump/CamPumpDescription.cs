namespace LubeController.Plant.Pump;

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

    /// <summary>
    /// Slip: what leaks back past the piston while it delivers, per pressure at reference viscosity, m3/s per Pa, 0 to 1e-9.
    /// It falls as viscosity rises. Default 0.
    /// </summary>
    public double SlipM3PerSPa { get; init; }

    /// <summary>
    /// Filling loss a at reference viscosity and this speed: the element fills to 1/(1 + a m n), m the viscosity and n the
    /// speed relative to those; 0 to 10. Default 0: it always fills.
    /// </summary>
    public double FillingLoss { get; init; }

    /// <summary>
    /// Part of the motor's nominal speed lost for each Pa at the pump's outlet while it delivers, 1/Pa, 0 to 1e-6. Default 0.
    /// Where next to nothing would be left the motor stalls, even below <see cref="PumpDescription.StallPressurePa"/>.
    /// </summary>
    public double SpeedSagPerPa { get; init; }

    /// <summary>
    /// Volume left in the element at the end of its stroke, fraction of the stroke volume, 0 to 1. Air drawn in leaves only as
    /// far as it is compressed beyond this. Default 0.05.
    /// </summary>
    public double DeadVolume { get; init; } = 0.05;

    /// <summary>Pieces of constant flow that stand for the sine-shaped delivery half, 1 to 64. Default 8.</summary>
    public int DeliverySegments { get; init; } = 8;

    /// <summary>Where the cam stands at the start, fraction of a revolution, 0 (start of delivery) up to, not including, 1.</summary>
    public double InitialAngle { get; init; }
}
