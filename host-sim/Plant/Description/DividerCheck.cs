using System;
using System.Collections.Generic;
using LubeController.Plant.Checking;
using LubeController.Plant.Divider;
using LubeController.Plant.Outlets;

namespace LubeController.Plant.Description;

/// <summary>That the names of a plant's dividers, sections and joins fit together.</summary>
internal static class DividerCheck
{
    internal static void Add(Findings findings, PlantDescription plant)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        One(findings, PlantFields.Divider.Key, plant.Divider, names);
        var dividers = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < plant.Secondaries.Count; i++)
        {
            string path = $"{PlantFields.Secondaries.Key}[{i}]";
            SecondaryDividerDescription secondary = plant.Secondaries[i];
            findings.Unique(DividerFields.SecondaryName.Below(path), secondary.Name, dividers);
            One(findings, DividerFields.OfSecondary.Below(path), secondary.Divider, names);
            if (!IsFedBefore(plant, i))
                findings.Refuse(DividerFields.FedBy.Below(path), $"'{secondary.FedBy}'", "an outlet of the main divider, or of a secondary divider before it, that feeds no other");
        }

        if (names.Count > DividerFields.MostSections)
            findings.Refuse(PlantFields.Secondaries.Key, $"{names.Count} sections in all", $"at most {DividerFields.MostSections}");
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
        for (int i = 0; i < divider.Sections.Count; i++)
            findings.Unique(DividerFields.SectionName.Below($"{DividerFields.Sections.Below(path)}[{i}]"), divider.Sections[i].Name, names);
        for (int i = 0; i < divider.Joins.Count; i++)
            Join(findings, $"{DividerFields.Joins.Below(path)}[{i}]", divider, divider.Joins[i]);
        if (divider.IndicatorSection is { } indicator && PortGroups.IndexOf(divider, indicator) < 0)
            findings.Refuse(DividerFields.Indicator.Below(path), $"'{indicator}'", "the name of a section");
    }

    private static void Join(Findings findings, string path, DividerDescription divider, JoinDescription join)
    {
        int first = PortGroups.IndexOf(divider, join.FirstSection);
        int second = PortGroups.IndexOf(divider, join.SecondSection);
        if (first < 0)
            findings.Refuse(DividerFields.First.Below(path), $"'{join.FirstSection}'", "the name of a section");
        if (second < 0)
            findings.Refuse(DividerFields.Second.Below(path), $"'{join.SecondSection}'", "the name of a section");
        if (first >= 0 && second >= 0 && Math.Abs(first - second) != 1)
            findings.Refuse(path, $"'{join.FirstSection}' with '{join.SecondSection}'", "two sections next to each other in the row");
    }
}
