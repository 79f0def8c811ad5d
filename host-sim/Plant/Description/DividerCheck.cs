using System;
using System.Collections.Generic;
using System.Globalization;

namespace LubeController.Plant.Description;

/// <summary>What a divider may not be.</summary>
internal static class DividerCheck
{
    internal const int MinimumSections = 3;

    internal const int MaximumSections = 64;

    internal static void Add(Findings findings, DividerDescription divider)
    {
        int n = divider.Sections.Count;
        if (n is < MinimumSections or > MaximumSections)
            findings.Refuse("Divider.Sections", n.ToString(CultureInfo.InvariantCulture), $"{MinimumSections} to {MaximumSections} sections");

        var names = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < n; i++)
            Section(findings, $"Divider.Sections[{i}]", divider.Sections[i], names);
        for (int i = 0; i < divider.Joins.Count; i++)
            Join(findings, $"Divider.Joins[{i}]", divider, divider.Joins[i]);

        findings.Range("Divider.StrokeFlowLimitM3PerS", divider.StrokeFlowLimitM3PerS, 1e-9, 1e-2, "m3/s");
        if (divider.LandClearanceFlowM3PerS is { } clearance)
            findings.Range("Divider.LandClearanceFlowM3PerS", clearance, 1e-15, divider.StrokeFlowLimitM3PerS, "m3/s (the stroke flow limit)");
    }

    private static void Section(Findings findings, string path, SectionDescription section, HashSet<string> names)
    {
        findings.Unique(path + ".Name", section.Name, names);
        findings.Range(path + ".VolumePerStrokeM3", section.VolumePerStrokeM3, 1e-9, 1e-3, "m3");
        findings.Defined(path + ".Outlets", section.Outlets);
        findings.Range(path + ".BreakawayPa", section.BreakawayPa, 0, 5e7, "Pa");
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
