using System;
using System.Collections.Generic;
using System.Globalization;

namespace LubeController.Plant.Checking;

/// <summary>Collects findings; each method adds one where a value is not acceptable.</summary>
internal sealed class Findings
{
    private readonly List<PlantFinding> _all = [];

    internal IReadOnlyList<PlantFinding> All => _all;

    internal static string Show(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    internal void Refuse(string path, string value, string accepted) => _all.Add(new PlantFinding(true, path, value, accepted));

    internal void Warn(string path, double value, string accepted) => _all.Add(new PlantFinding(false, path, Show(value), accepted));

    internal void Range(string path, double value, double low, double high, string unit)
    {
        // Written so that not-a-number is refused too.
        if (!(value >= low && value <= high))
            Refuse(path, Show(value), $"{Show(low)} to {Show(high)} {unit}");
    }

    internal void Between(string path, double value, double low, double high, string unit)
    {
        if (!(value > low && value < high))
            Refuse(path, Show(value), $"above {Show(low)} and below {Show(high)} {unit}");
    }

    internal void BelowOne(string path, double value, double low, string unit)
    {
        if (!(value >= low && value < 1))
            Refuse(path, Show(value), $"{Show(low)} up to, not including, 1 {unit}");
    }

    internal void Text(string path, string value)
    {
        if (string.IsNullOrWhiteSpace(value))
            Refuse(path, "''", "a name that is not empty");
    }

    internal void Unique(string path, string value, ISet<string> taken)
    {
        Text(path, value);
        if (!taken.Add(value))
            Refuse(path, $"'{value}'", "a name that no other has");
    }

    internal void Defined<T>(string path, T value)
        where T : struct, Enum
    {
        if (!Enum.IsDefined(value))
            Refuse(path, value.ToString(), string.Join(" or ", Enum.GetNames<T>()));
    }
}
