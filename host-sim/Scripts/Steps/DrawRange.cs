using System;
using System.Globalization;
using LubeController.Files.Quantities;

namespace LubeController.Scripts.Steps;

/// <summary>How the values of a range are spread.</summary>
public enum DrawSpread
{
    /// <summary>Equal differences are equally likely.</summary>
    Even,

    /// <summary>Equal ratios are equally likely; the range lies above zero.</summary>
    Log,
}

/// <summary>A range from which each run draws one value.</summary>
/// <param name="From">Least value, in <paramref name="Unit"/>.</param>
/// <param name="To">Greatest value, in <paramref name="Unit"/>.</param>
/// <param name="Spread">How values are spread.</param>
/// <param name="Unit">Unit of both ends.</param>
/// <param name="Family">What it is a range of.</param>
public sealed record DrawRange(double From, double To, DrawSpread Spread, string Unit, UnitFamily Family)
{
    /// <summary>
    /// The value at a fraction of the range, 0 to 1, in <see cref="Unit"/>. It has six significant digits, so that what is
    /// printed is what was used, on every machine.
    /// </summary>
    public double At(double fraction)
    {
        double value = Spread == DrawSpread.Log ? From * Math.Exp(fraction * Math.Log(To / From)) : From + ((To - From) * fraction);
        double rounded = double.Parse(value.ToString("E5", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return Math.Clamp(rounded, From, To);
    }

    /// <summary><c>10 % to 60 %</c>.</summary>
    public override string ToString() => $"{new Quantity(From, Unit, Family)} to {new Quantity(To, Unit, Family)}";
}
