namespace LubeController.Plant.Description;

/// <summary>The line between pump and divider. Its compliance is volume over bulk modulus, plus that of entrained air.</summary>
public sealed record LineDescription
{
    /// <summary>Volume, m3, 1e-7 to 1.</summary>
    public required double VolumeM3 { get; init; }

    /// <summary>Effective bulk modulus of lubricant and hose together, Pa, 1e6 to 1e10.</summary>
    public required double BulkModulusPa { get; init; }

    /// <summary>Air in the line at the start, m3 at atmospheric pressure, 0 to half the line's volume. Default 0.</summary>
    public double AirM3 { get; init; }
}
