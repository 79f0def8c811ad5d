using System.Collections.Generic;

namespace LubeController.Plant.Line;

/// <summary>
/// The line between pump and divider: a volume at the pump's outlet, and the segments from there to the divider or, with
/// injectors, to the end of the line. Without segments the whole line is one volume without loss.
/// </summary>
public sealed record LineDescription
{
    /// <summary>Volume at the pump's outlet, m3, 1e-7 to 1.</summary>
    public required double VolumeM3 { get; init; }

    /// <summary>
    /// Bulk modulus that the volume's compliance is taken from, Pa, 1e6 to 1e10: of lubricant and whatever stands around it.
    /// In segments the wall's modulus is added in series. Air is counted apart.
    /// </summary>
    public required double BulkModulusPa { get; init; }

    /// <summary>Air in the line at the start, m3 at atmospheric pressure, 0 to half the line's whole volume, spread evenly. Default 0.</summary>
    public double AirM3 { get; init; }

    /// <summary>Exponent of the air's compression: 1 (isothermal, the default) to 1.67.</summary>
    public double GasExponent { get; init; } = 1;

    /// <summary>The segments in order from the pump, none to 16.</summary>
    public IReadOnlyList<LineSegmentDescription> Segments { get; init; } = [];

    /// <summary>Loss of a clean strainer at <see cref="StrainerFlowM3PerS"/> and reference viscosity, Pa, 0 to 1e7. Default 0: none fitted.</summary>
    public double StrainerLossPa { get; init; }

    /// <summary>The flow at which the strainer's loss is stated, m3/s, 1e-12 to 1e-2. Default 1e-7.</summary>
    public double StrainerFlowM3PerS { get; init; } = 1e-7;
}
