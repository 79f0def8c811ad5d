using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Lubricant;

namespace LubeController.Scripts.Reporting;

/// <summary>What the plants of a replay are only assumed to be, so that nobody takes a result for more than it is.</summary>
public static class AssumptionText
{
    private const double LargePa = 1e7;

    /// <summary>One line for each plant with assumed values, in order of first mention.</summary>
    public static IReadOnlyList<string> Of(IEnumerable<PlantDescription> plants)
    {
        ArgumentNullException.ThrowIfNull(plants);
        return plants.Select(Line).Where(line => line.Length > 0).Distinct(StringComparer.Ordinal).ToArray();
    }

    private static string Line(PlantDescription plant)
    {
        IReadOnlyList<LubricantValue> assumed = plant.Lubricant.Assumptions();
        return assumed.Count == 0 ? "" : $"assumed: {plant.Name} ({plant.Lubricant.Name}): {string.Join("; ", assumed.Select(One))}";
    }

    private static string One(LubricantValue value) => $"{value.Name} {Quantity(value)} ({value.Value.Source})";

    private static string Quantity(LubricantValue value) => value switch
    {
        { Unit: "m2/s" } => FormattableString.Invariant($"{value.Value.Value * 1e6:G6} mm2/s"),
        { Unit: "Pa", Value.Value: >= LargePa } => FormattableString.Invariant($"{value.Value.Value / 1e9:G6} GPa"),
        { Unit: "" } => FormattableString.Invariant($"{value.Value.Value:G6}"),
        _ => FormattableString.Invariant($"{value.Value.Value:G6} {value.Unit}"),
    };
}
