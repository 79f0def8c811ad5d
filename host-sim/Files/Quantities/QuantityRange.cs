using System.Globalization;

namespace LubeController.Files.Quantities;

/// <summary>Smallest and largest value of a quantity, written in one unit; both are accepted.</summary>
/// <param name="Family">What it is a range of.</param>
/// <param name="Minimum">Smallest value, in <paramref name="Unit"/>.</param>
/// <param name="Maximum">Largest value, in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit of both.</param>
public sealed record QuantityRange(UnitFamily Family, double Minimum, double Maximum, string Unit)
{
    // A value written in another unit than the bound's may differ from it in the last digits.
    private const double Tolerance = 1e-12;

    /// <summary>Whether a quantity lies in the range.</summary>
    public bool Holds(Quantity quantity)
    {
        double low = Family.ToSi(Minimum, Unit);
        double high = Family.ToSi(Maximum, Unit);
        double slack = Tolerance * System.Math.Max(System.Math.Abs(low), System.Math.Abs(high));
        return quantity.Si >= low - slack && quantity.Si <= high + slack;
    }

    /// <summary><c>0.1 bar to 1000 bar</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Text(Minimum)} to {Text(Maximum)}");

    private string Text(double value) => new Quantity(value, Unit, Family).ToString();
}
