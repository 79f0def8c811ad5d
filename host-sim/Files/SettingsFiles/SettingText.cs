using System;
using System.Globalization;
using LubeController.Core;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;

namespace LubeController.Files.SettingsFiles;

/// <summary>Turns the texts of settings into the core's integers and back.</summary>
public static class SettingText
{
    // A unit conversion may leave the last digits off a whole number.
    private const double Whole = 1e-9;

    /// <summary>Reads a setting; adds a problem and returns null where the text does not fit.</summary>
    public static int? Read(MapReader fields, string key, SettingSpec spec)
    {
        switch (spec.Unit)
        {
            case SettingUnit.Flag:
                return fields.Either(key, "yes", "no") switch { null => null, true => 1, false => 0 };
            case SettingUnit.Choice:
                return fields.Choice(key, spec.Choices);
            case SettingUnit.Count:
                return (int?)fields.Whole(key, spec.Minimum, spec.Maximum);
            default:
                return ReadQuantity(fields, key, spec);
        }
    }

    /// <summary>The value as a user would write it.</summary>
    public static string Write(SettingSpec spec, int value) => spec.Unit switch
    {
        SettingUnit.Flag => value == 0 ? "no" : "yes",
        SettingUnit.Choice => value >= 0 && value < spec.Choices.Length ? spec.Choices[value] : Number(value),
        SettingUnit.Count => Number(value),
        SettingUnit.DeciCelsius => (value / 10.0).ToString("R", CultureInfo.InvariantCulture) + " degC",
        SettingUnit.DeciKelvin => (value / 10.0).ToString("R", CultureInfo.InvariantCulture) + " K",
        SettingUnit.Milliseconds => Milliseconds(value),
        SettingUnit.Microseconds => Number(value) + " us",
        SettingUnit.Millibar => (value / 1000.0).ToString("R", CultureInfo.InvariantCulture) + " bar",
        SettingUnit.PerMinute => Number(value) + " rpm",
        SettingUnit.Millivolt => (value / 1000.0).ToString("R", CultureInfo.InvariantCulture) + " V",
        SettingUnit.CubicMillimetre => (value / 1000.0).ToString("R", CultureInfo.InvariantCulture) + " cm3",
        SettingUnit.CubicMillimetrePerMinute => (value / 1000.0).ToString("R", CultureInfo.InvariantCulture) + " cm3/min",
        _ => Number(value) + " %",
    };

    /// <summary>Unit family and unit of the core's integers; counts, flags and choices have none.</summary>
    public static (UnitFamily Family, string Unit, double Scale) UnitOf(SettingUnit unit) => unit switch
    {
        SettingUnit.Milliseconds => (UnitFamily.Time, "ms", 1.0),
        SettingUnit.Microseconds => (UnitFamily.Time, "us", 1.0),
        SettingUnit.Millibar => (UnitFamily.Pressure, "mbar", 1.0),
        SettingUnit.DeciCelsius => (UnitFamily.Temperature, "degC", 10.0),
        SettingUnit.DeciKelvin => (UnitFamily.TemperatureDifference, "K", 10.0),
        SettingUnit.PerMinute => (UnitFamily.Speed, "rpm", 1.0),
        SettingUnit.Millivolt => (UnitFamily.Voltage, "mV", 1.0),
        SettingUnit.CubicMillimetre => (UnitFamily.Volume, "mm3", 1.0),
        SettingUnit.CubicMillimetrePerMinute => (UnitFamily.Flow, "mm3/min", 1.0),
        SettingUnit.Percent => (UnitFamily.Ratio, "%", 1.0),
        _ => (UnitFamily.Count, "1", 1.0),
    };

    private static int? ReadQuantity(MapReader fields, string key, SettingSpec spec)
    {
        if (fields.Single(key) is not { } node)
            return null;
        (UnitFamily family, string unit, double scale) = UnitOf(spec.Unit);
        if (!QuantityReader.TryRead(node.Text, family, out Quantity quantity, out string message, out string remedy))
        {
            fields.Problems.Add(node, message, remedy);
            return null;
        }

        double exact = family.FromSi(quantity.Si, unit) * scale;
        double rounded = Math.Round(exact, MidpointRounding.AwayFromZero);
        if (rounded < spec.Minimum || rounded > spec.Maximum)
            fields.Problems.Add(node, $"{family.Name} outside the range of this setting", $"write a value from {Write(spec, spec.Minimum)} to {Write(spec, spec.Maximum)}");
        else if (Math.Abs(exact - rounded) > Whole * Math.Max(1.0, Math.Abs(exact)))
            fields.Problems.Add(node, $"finer than the controller keeps it, in steps of {Write(spec, 1)}", $"write a multiple of {Write(spec, 1)}");
        else
            return (int)rounded;
        return null;
    }

    private static string Milliseconds(int value)
    {
        (int step, string unit)[] units = [(86_400_000, "d"), (3_600_000, "h"), (60_000, "min"), (1000, "s")];
        foreach ((int step, string unit) in units)
        {
            if (value != 0 && value % step == 0)
                return $"{Number(value / step)} {unit}";
        }

        return $"{Number(value)} ms";
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
