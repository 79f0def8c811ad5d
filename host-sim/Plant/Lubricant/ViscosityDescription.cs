using System.Collections.Generic;

namespace LubeController.Plant.Lubricant;

/// <summary>
/// Kinematic viscosity of an oil over temperature, as ASTM D341 has it: the value at 40 degC, and a second point or the
/// slope of the line.
/// </summary>
public sealed record ViscosityDescription
{
    /// <summary>Kinematic viscosity at 40 degC, m2/s, 1e-6 to 1e-2.</summary>
    public required SourcedValue At40M2PerS { get; init; }

    /// <summary>Kinematic viscosity at <see cref="SecondTemperatureK"/>, m2/s, or null where <see cref="Slope"/> is given.</summary>
    public SourcedValue? SecondM2PerS { get; init; }

    /// <summary>Temperature of the second point, K, 200 to 500 and at least 10 K from 40 degC. Default 373.15, which is 100 degC.</summary>
    public double SecondTemperatureK { get; init; } = 373.15;

    /// <summary>Slope B of the line in log log(nu + 0.7) = A - B·log T, 0 to 8, or null where the second point is given.</summary>
    public SourcedValue? Slope { get; init; }

    /// <summary>Every value with its name and unit.</summary>
    /// <param name="of">What it is the viscosity of, with a space after it, or nothing.</param>
    public IReadOnlyList<LubricantValue> Values(string of)
    {
        var values = new List<LubricantValue> { new($"{of}viscosity at 40 degC", "m2/s", At40M2PerS) };
        if (SecondM2PerS != null)
            values.Add(new(System.FormattableString.Invariant($"{of}viscosity at {SecondTemperatureK - 273.15:0.##} degC"), "m2/s", SecondM2PerS));
        if (Slope != null)
            values.Add(new($"{of}viscosity slope", "", Slope));
        return values;
    }
}
