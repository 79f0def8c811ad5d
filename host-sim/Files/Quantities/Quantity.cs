using System.Globalization;

namespace LubeController.Files.Quantities;

/// <summary>A number with the unit its writer chose.</summary>
/// <param name="Number">The number as written.</param>
/// <param name="Unit">The unit as written, <c>1</c> where none is needed.</param>
/// <param name="Family">What it is a quantity of.</param>
public readonly record struct Quantity(double Number, string Unit, UnitFamily Family)
{
    /// <summary>The value in the family's SI unit.</summary>
    public double Si => Family.ToSi(Number, Unit);

    /// <summary>Number and unit.</summary>
    public override string ToString() => Unit == "1"
        ? Number.ToString("R", CultureInfo.InvariantCulture)
        : $"{Number.ToString("R", CultureInfo.InvariantCulture)} {Unit}";
}
