using System;
using System.Collections.Generic;
using LubeController.Files.Reading;
using LubeController.Plant.Checking;

namespace LubeController.Files.LubricantFiles;

/// <summary>Tells the findings of the check of a lubricant by the file, line and field that each one comes from.</summary>
internal static class LubricantFindings
{
    private static readonly Dictionary<string, string> Fields = new(StringComparer.Ordinal)
    {
        ["Name"] = "lubricant",
        ["IsoViscosityGrade"] = "iso-viscosity-grade",
        ["At40M2PerS"] = "viscosity-at-40",
        ["SecondM2PerS"] = "second-viscosity",
        ["SecondTemperatureK"] = "second-viscosity",
        ["Slope"] = "viscosity-slope",
        ["NlgiGrade"] = "nlgi-grade",
        ["YieldStressPa"] = "yield-stress",
        ["ConsistencyPaSn"] = "consistency",
        ["FlowIndex"] = "flow-index",
        ["YieldCoefficientPerK"] = "yield-coefficient",
        ["ConsistencyCoefficientPerK"] = "consistency-coefficient",
        ["BaseOil"] = "base-oil",
        ["DensityKgPerM3"] = "density",
        ["ExpansionPerK"] = "expansion",
        ["BulkModulusPa"] = "bulk-modulus",
        ["Source"] = "source",
        ["Confidence"] = "confidence",
    };

    /// <summary>The problem that a finding is.</summary>
    public static Problem Tell(MapReader file, PlantFinding finding)
    {
        YamlNode node = file.Map;
        string field = "";
        foreach (string part in finding.Path.Split('.'))
        {
            // The file and its viscosity are one group in writing.
            if (!Fields.TryGetValue(part, out string? key))
                continue;
            field = field.Length == 0 ? key : $"{field}.{key}";
            node = (node as MapNode)?[key] ?? node;
        }

        if (node is MapNode sourced && sourced["value"] is { } value)
            node = value;
        return new Problem(
            node.Place,
            node is MapNode ? field : node.Path,
            node is ScalarNode scalar ? scalar.Text : finding.Value,
            "the lubricant cannot be so",
            $"accepted is {finding.Accepted}");
    }
}
