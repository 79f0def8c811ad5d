namespace LubeController.Plant.Line;

/// <summary>
/// The relief valve at the pump's outlet. It opens at its opening (cracking) pressure; open, it passes flow in proportion to
/// the pressure above its reseat pressure, and closes there.
/// </summary>
public sealed record ReliefDescription
{
    /// <summary>Opening (cracking) pressure, Pa gauge, 1e4 to 1e8.</summary>
    public required double OpeningPressurePa { get; init; }

    /// <summary>Rise above the opening pressure at the rated flow, Pa, 0 to 1e8. Default 0: hardly any.</summary>
    public double OverridePa { get; init; }

    /// <summary>The rated flow, m3/s, 1e-9 to 1e-2. Default 1e-6.</summary>
    public double RatedFlowM3PerS { get; init; } = 1e-6;

    /// <summary>Pressure at which it closes again, Pa gauge, above 0 up to the opening pressure; null: the opening pressure.</summary>
    public double? ReseatPressurePa { get; init; }
}
