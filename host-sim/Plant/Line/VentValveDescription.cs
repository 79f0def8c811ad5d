namespace LubeController.Plant.Line;

/// <summary>The valve that opens the line to the reservoir on a single-line system.</summary>
public sealed record VentValveDescription
{
    /// <summary>Flow per pressure when open, at reference viscosity, m3/s per Pa, 1e-15 to 1e-6. Default 1e-11 (1 cm3/s at 1 bar).</summary>
    public double OpenM3PerSPa { get; init; } = 1e-11;

    /// <summary>Whether it is open while its coil has no power. Default true.</summary>
    public bool NormallyOpen { get; init; } = true;
}
