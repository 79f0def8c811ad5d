using System;
using System.Collections.Generic;

namespace LubeController.Plant.Lubricant;

/// <summary>
/// Viscosity grades of ISO 3448: each is named for its kinematic viscosity in mm²/s at 40 degC, ±10 %. Between the grades
/// are gaps; a viscosity there belongs to none.
/// </summary>
public static class IsoViscosityGrade
{
    private const double Tolerance = 0.1;

    /// <summary>The grades, mm²/s at 40 degC, rising.</summary>
    public static IReadOnlyList<double> All { get; } =
        [2.2, 3.2, 4.6, 6.8, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500];

    /// <summary>Whether a viscosity, m2/s at 40 degC, lies within a grade's ±10 %.</summary>
    public static bool Holds(double grade, double viscosity40M2PerS) =>
        Math.Abs((viscosity40M2PerS * 1e6) - grade) <= grade * (Tolerance + 1e-12);

    /// <summary>The grade of a viscosity, m2/s at 40 degC, or null in a gap or outside the grades.</summary>
    public static double? Of(double viscosity40M2PerS)
    {
        foreach (double grade in All)
        {
            if (Holds(grade, viscosity40M2PerS))
                return grade;
        }

        return null;
    }
}
