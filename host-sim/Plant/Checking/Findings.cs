using System.Collections.Generic;
using System.Globalization;

namespace LubeController.Plant.Checking;

/// <summary>Collects findings; each method adds one where a value is not acceptable.</summary>
internal sealed class Findings
{
    private readonly List<PlantFinding> _all = [];

    internal IReadOnlyList<PlantFinding> All => _all;

    internal static string Show(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    internal void Add(PlantFinding finding) => _all.Add(finding);

    internal void Refuse(string path, string value, string accepted) => _all.Add(new PlantFinding(true, path, value, accepted));

    internal void Warn(string path, double value, string accepted) => _all.Add(new PlantFinding(false, path, Show(value), accepted));

    internal void Unique(string path, string value, ISet<string> taken)
    {
        if (!taken.Add(value) && !string.IsNullOrWhiteSpace(value))
            Refuse(path, $"'{value}'", "a name that no other has");
    }
}
