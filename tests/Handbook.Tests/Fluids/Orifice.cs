using System;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>
/// Turbulent flow through a small hole: Q = Cd·A·sqrt(2·dP/rho) (Rabie, Fluid Power Engineering, eq. 2.36 to 2.39). Grease and
/// cold oil pass small holes laminar; there a constant Cd over-predicts, and <c>LubricantProperties</c> answers instead.
/// </summary>
public static class Orifice
{
    /// <summary>Discharge coefficient of a sharp edge: the contraction pi/(pi + 2), about 0.611.</summary>
    public const double SharpEdge = Math.PI / (Math.PI + 2);

    /// <summary>Flow, m3/s.</summary>
    /// <param name="dropPa">Pressure drop, Pa, 0 or more.</param>
    /// <param name="areaM2">Area of the hole, m2, above 0.</param>
    /// <param name="densityKgPerM3">Density, kg/m3, above 0.</param>
    /// <param name="coefficient">Discharge coefficient, above 0, at most 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double FlowM3PerS(double dropPa, double areaM2, double densityKgPerM3, double coefficient = SharpEdge)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(dropPa);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(areaM2);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(densityKgPerM3);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(coefficient);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(coefficient, 1);
        return coefficient * areaM2 * Math.Sqrt(2 * dropPa / densityKgPerM3);
    }
}
