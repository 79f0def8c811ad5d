using System.Globalization;
using LubeController.Files.Quantities;

namespace LubeController.Scripts.Expectations;

/// <summary>
/// How far an expectation was from failing (positive) or from holding (negative), always in one unit. Where words are
/// compared, or several quantities together, it is a time: by how much the end of the window could move.
/// </summary>
/// <param name="Value">The margin in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit, <c>1</c> for counts.</param>
/// <param name="IsOpen">Whether the run ended before the margin did: then it is at least so large.</param>
public readonly record struct Margin(double Value, string Unit, bool IsOpen)
{
    private const int Digits = 6;

    /// <summary>A margin in time.</summary>
    /// <param name="microseconds">The margin.</param>
    /// <param name="isOpen">Whether it is at least so large.</param>
    public static Margin OfTime(double microseconds, bool isOpen = false) => new(microseconds / 1e6, "s", isOpen);

    /// <summary>A margin of a quantity.</summary>
    /// <param name="si">The margin in the family's SI unit.</param>
    /// <param name="family">What it is a margin of.</param>
    /// <param name="unit">The unit to tell it in.</param>
    public static Margin OfSi(double si, UnitFamily family, string unit) => new(family.DifferenceFromSi(si, unit), unit, false);

    /// <summary>For instance <c>+3.2 bar</c>, or <c>+90 s or more</c> where the run ended first.</summary>
    public override string ToString()
    {
        string unit = Unit == "1" ? "" : " " + Unit;
        string number = Value.ToString($"G{Digits}", CultureInfo.InvariantCulture);
        string sign = Value >= 0.0 && !number.StartsWith('-') ? "+" : "";
        string open = !IsOpen ? "" : Value >= 0.0 && sign.Length > 0 ? " or more" : " or worse";
        return $"{sign}{number}{unit}{open}";
    }
}
