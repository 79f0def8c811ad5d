using System;
using System.Collections.Generic;
using System.Globalization;
using LubeController.Plant.Checking;
using LubeController.Plant.Divider;
using LubeController.Plant.Outlets;

namespace LubeController.Plant.Description;

/// <summary>What a divider may not be.</summary>
internal static class DividerCheck
{
    internal const int MinimumSections = 3;

    internal const int MaximumSections = 64;

    private const int MaximumSecondaries = 16;

    internal static void Add(Findings findings, PlantDescription plant)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        if (plant.Divider.Sections.Count > 0 || plant.Injectors.Count == 0)
            One(findings, "Divider", plant.Divider, names);
        if (plant.Secondaries.Count > MaximumSecondaries)
            findings.Refuse("Secondaries", $"{plant.Secondaries.Count}", $"0 to {MaximumSecondaries} secondary dividers");
        var dividers = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < plant.Secondaries.Count; i++)
            Secondary(findings, $"Secondaries[{i}]", plant, i, names, dividers);
        if (names.Count > MaximumSections)
            findings.Refuse("Secondaries", $"{names.Count} sections in all", $"at most {MaximumSections}");
    }

    private static void Secondary(Findings findings, string path, PlantDescription plant, int index, HashSet<string> names, HashSet<string> dividers)
    {
        SecondaryDividerDescription secondary = plant.Secondaries[index];
        findings.Unique(path + ".Name", secondary.Name, dividers);
        findings.Range(path + ".VolumeM3", secondary.VolumeM3, 1e-7, 1, "m3");
        findings.Range(path + ".BulkModulusPa", secondary.BulkModulusPa, 1e6, 1e10, "Pa");
        One(findings, path + ".Divider", secondary.Divider, names);
        if (!IsFedBefore(plant, index))
            findings.Refuse(path + ".FedBy", $"'{secondary.FedBy}'", "an outlet of the main divider, or of a secondary divider before it, that feeds no other");
    }

    // Fed by a later one or by itself, a divider would never get anything.
    private static bool IsFedBefore(PlantDescription plant, int index)
    {
        SecondaryDividerDescription secondary = plant.Secondaries[index];
        for (int i = 0; i < plant.Secondaries.Count; i++)
        {
            if (i != index && string.Equals(plant.Secondaries[i].FedBy, secondary.FedBy, StringComparison.Ordinal))
                return false;
        }

        foreach (OutletDescription outlet in plant.Outlets)
        {
            if (!string.Equals(outlet.Name, secondary.FedBy, StringComparison.Ordinal) || outlet.Ports.Count == 0)
                continue;
            if (PortGroups.IndexOf(plant.Divider, outlet.Ports[0].Section) >= 0)
                return true;
            for (int before = 0; before < index; before++)
            {
                if (PortGroups.IndexOf(plant.Secondaries[before].Divider, outlet.Ports[0].Section) >= 0)
                    return true;
            }
        }

        return false;
    }

    private static void One(Findings findings, string path, DividerDescription divider, HashSet<string> names)
    {
        int n = divider.Sections.Count;
        if (n is < MinimumSections or > MaximumSections)
            findings.Refuse(path + ".Sections", n.ToString(CultureInfo.InvariantCulture), $"{MinimumSections} to {MaximumSections} sections");

        for (int i = 0; i < n; i++)
            Section(findings, $"{path}.Sections[{i}]", divider.Sections[i], names);
        for (int i = 0; i < divider.Joins.Count; i++)
            Join(findings, $"{path}.Joins[{i}]", divider, divider.Joins[i]);

        findings.Range(path + ".StrokeFlowLimitM3PerS", divider.StrokeFlowLimitM3PerS, 1e-9, 1e-2, "m3/s");
        findings.Range(path + ".HalfLimitLossPa", divider.HalfLimitLossPa, 1, 1e7, "Pa");
        if (divider.LandClearanceFlowM3PerS is { } clearance)
            findings.Range(path + ".LandClearanceFlowM3PerS", clearance, 1e-15, divider.StrokeFlowLimitM3PerS, "m3/s (the stroke flow limit)");
        if (divider.IndicatorSection is { } indicator && PortGroups.IndexOf(divider, indicator) < 0)
            findings.Refuse(path + ".IndicatorSection", $"'{indicator}'", "the name of a section");
    }

    private static void Section(Findings findings, string path, SectionDescription section, HashSet<string> names)
    {
        findings.Unique(path + ".Name", section.Name, names);
        findings.Range(path + ".VolumePerStrokeM3", section.VolumePerStrokeM3, 1e-9, 1e-3, "m3");
        findings.Defined(path + ".Outlets", section.Outlets);
        findings.Range(path + ".BreakawayPa", section.BreakawayPa, 0, 5e7, "Pa");
        if (section.FrictionPa is { } friction)
            findings.Range(path + ".FrictionPa", friction, 0, section.BreakawayPa, "Pa (the breakaway pressure)");
        findings.Range(path + ".BypassM3PerSPa", section.BypassM3PerSPa, 0, 1e-9, "m3/s per Pa");
        findings.Range(path + ".InitialTravel", section.InitialTravel, 0, 1, "(0 at L, 1 at R)");
        findings.Range(path + ".FlowShare", section.FlowShare, 1e-3, 1e3, "(a weight)");
    }

    private static void Join(Findings findings, string path, DividerDescription divider, JoinDescription join)
    {
        int first = PortGroups.IndexOf(divider, join.FirstSection);
        int second = PortGroups.IndexOf(divider, join.SecondSection);
        if (first < 0)
            findings.Refuse(path + ".FirstSection", $"'{join.FirstSection}'", "the name of a section");
        if (second < 0)
            findings.Refuse(path + ".SecondSection", $"'{join.SecondSection}'", "the name of a section");
        if (first >= 0 && second >= 0 && Math.Abs(first - second) != 1)
            findings.Refuse(path, $"'{join.FirstSection}' with '{join.SecondSection}'", "two sections next to each other in the row");
        findings.Defined(path + ".Side", join.Side);
    }
}
