namespace LubeController.Plant.Divider;

/// <summary>One section of the divider: a piston, its two end chambers and its two ports.</summary>
public sealed record SectionDescription
{
    /// <summary>Name, unique within the divider, not empty; for instance <c>1</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Volume that one stroke of the piston displaces, m3, 1e-9 to 1e-3.</summary>
    public required double VolumePerStrokeM3 { get; init; }

    /// <summary>One or two outlets.</summary>
    public SectionOutlets Outlets { get; init; } = SectionOutlets.Twin;

    /// <summary>Pressure that makes the piston leave its end against no back-pressure, Pa, 0 to 5e7. Default 5e5 (5 bar).</summary>
    public double BreakawayPa { get; init; } = 5e5;

    /// <summary>Pressure that keeps the piston moving once it has left its end, Pa, 0 up to <see cref="BreakawayPa"/>; null: the same.</summary>
    public double? FrictionPa { get; init; }

    /// <summary>
    /// Bypass past the piston: flow per pressure difference at the lubricant's reference viscosity, m3/s per Pa, 0 to 1e-9.
    /// Default 0: a tight piston.
    /// </summary>
    public double BypassM3PerSPa { get; init; }

    /// <summary>Where the piston stands at the start: 0 at L, 1 at R, between them in mid-travel. Default 0.</summary>
    public double InitialTravel { get; init; }

    /// <summary>Weight of this piston where several share the flow at equal need, 1e-3 to 1e3. Default 1.</summary>
    public double FlowShare { get; init; } = 1.0;
}
