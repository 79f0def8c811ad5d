namespace LubeController.Plant.Line;

/// <summary>One tube or hose of the main line: laminar loss by the lubricant's own law, compliance of lubricant and wall.</summary>
public sealed record LineSegmentDescription
{
    /// <summary>Length, m, 0.01 to 1000.</summary>
    public required double LengthM { get; init; }

    /// <summary>Bore, m, 5e-4 to 0.1.</summary>
    public required double BoreM { get; init; }

    /// <summary>
    /// Bulk modulus of the wall: the pressure that would widen the tube by its whole volume, Pa, 1e6 to 1e13. Default 1e13, a
    /// rigid tube. A steel tube has some 35e9, a hose some 0.2e9 to 1e9.
    /// </summary>
    public double WallModulusPa { get; init; } = 1e13;

    /// <summary>Equal cells into which the segment is cut, 1 to 8. Default 1: half its volume at each end.</summary>
    public int Cells { get; init; } = 1;
}
