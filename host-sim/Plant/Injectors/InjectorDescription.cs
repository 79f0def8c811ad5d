namespace LubeController.Plant.Injectors;

/// <summary>
/// An injector of a single-line parallel system: it discharges its volume once the line's pressure is high enough, and
/// recharges after the pressure has fallen.
/// </summary>
public sealed record InjectorDescription
{
    /// <summary>Name, unique within the plant, not empty.</summary>
    public required string Name { get; init; }

    /// <summary>Name of the outlet that it feeds.</summary>
    public required string Outlet { get; init; }

    /// <summary>Volume of one discharge, m3, 1e-9 to 1e-3.</summary>
    public required double VolumeM3 { get; init; }

    /// <summary>Line pressure at which it begins to discharge against no back-pressure, Pa, 1e4 to 5e7.</summary>
    public required double DischargePa { get; init; }

    /// <summary>Line pressure at and below which its spring recharges it, Pa, 0 up to less than <see cref="DischargePa"/>.</summary>
    public required double RechargePa { get; init; }

    /// <summary>Time that a whole recharge takes at reference viscosity, s, 1e-3 to 3600. Default 1.</summary>
    public double RechargeS { get; init; } = 1;

    /// <summary>Segment of the line at whose end it is fitted, counted from 1; 0: at the pump's outlet. Default 0.</summary>
    public int Segment { get; init; }
}
