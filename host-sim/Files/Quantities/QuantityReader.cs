using System;
using System.Globalization;
using System.Linq;
using LubeController.Files.Reading;

namespace LubeController.Files.Quantities;

/// <summary>Reads <c>40 bar</c> and its like; a text that is refused comes with what is wrong and what would do.</summary>
public static class QuantityReader
{
    /// <summary>Reads a quantity of one family.</summary>
    /// <param name="text">Number, space, unit; the space may be left out.</param>
    /// <param name="family">What is expected.</param>
    /// <param name="quantity">The quantity, where true is returned.</param>
    /// <param name="message">What is wrong, where false is returned.</param>
    /// <param name="remedy">What would do, where false is returned.</param>
    public static bool TryRead(string text, UnitFamily family, out Quantity quantity, out string message, out string remedy)
    {
        quantity = default;
        message = "";
        remedy = $"write for instance '{family.Example}'";
        if (!TrySplit(text, out double number, out string unit))
        {
            message = text.Any(char.IsAsciiDigit) && text.Contains(',')
                ? $"{family.Name} is expected, and no comma may stand in a number"
                : $"{family.Name} is expected, a number and its unit";
            return false;
        }

        if (!double.IsFinite(number))
        {
            message = $"{family.Name} is expected, and this number is too large to keep";
            return false;
        }

        if (unit.Length == 0 && family.Has("1"))
            unit = "1";
        if (family.Has(unit))
        {
            quantity = new Quantity(number, unit, family);
            return true;
        }

        message = WrongUnit(unit, family);
        remedy = $"write {family.Name} in {string.Join(", ", family.Units.Where(known => known != "1").DefaultIfEmpty("whole numbers without unit").Take(8))}, for instance '{family.Example}'";
        return false;
    }

    private static string WrongUnit(string unit, UnitFamily family)
    {
        if (unit.Length == 0)
            return $"the unit is missing: {family.Name} is expected";
        UnitFamily? other = UnitFamily.All.FirstOrDefault(candidate => candidate.Has(unit));
        if (other != null)
            return $"'{unit}' makes it {other.Name}, but {family.Name} is expected";
        string? nearest = family.Units.FirstOrDefault(known => string.Equals(known, unit, StringComparison.OrdinalIgnoreCase))
            ?? NearestName.Of(unit, family.Units);
        return $"the unit '{ShortText.Of(unit)}' is unknown" + (nearest != null ? $" (did you mean '{nearest}'?)" : "");
    }

    /// <summary>Splits a number from what follows it. False where the text begins with no number.</summary>
    public static bool TrySplit(string text, out double number, out string unit)
    {
        string trimmed = text.Trim();
        int end = NumberLength(trimmed);
        number = 0.0;
        unit = trimmed[end..].Trim();
        if (unit.StartsWith(',') || unit.StartsWith('.') || unit.Any(char.IsWhiteSpace))
            return false;
        return end > 0 && double.TryParse(trimmed.AsSpan(0, end), NumberStyles.Float, CultureInfo.InvariantCulture, out number);
    }

    private static int NumberLength(string text)
    {
        int at = text.Length > 0 && text[0] is '+' or '-' ? 1 : 0;
        int digits = SkipDigits(text, ref at);
        if (at < text.Length && text[at] == '.')
        {
            at++;
            digits += SkipDigits(text, ref at);
        }

        if (digits == 0)
            return 0;
        int exponent = at;
        if (exponent < text.Length && text[exponent] is 'e' or 'E')
        {
            exponent++;
            if (exponent < text.Length && text[exponent] is '+' or '-')
                exponent++;
            if (SkipDigits(text, ref exponent) > 0)
                return exponent;
        }

        return at;
    }

    private static int SkipDigits(string text, ref int at)
    {
        int from = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
            at++;
        return at - from;
    }
}
