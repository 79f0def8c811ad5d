using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Sensors;

namespace LubeController.Plant.Description;

/// <summary>That cycle switches have names of their own and sense sections that there are.</summary>
internal static class CycleSwitchCheck
{
    internal static void Add(Findings findings, PlantDescription plant)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < plant.CycleSwitches.Count; i++)
        {
            string path = $"{PlantFields.CycleSwitches.Key}[{i}]";
            CycleSwitchDescription cycle = plant.CycleSwitches[i];
            findings.Unique(CycleSwitchFields.Name.Below(path), cycle.Name, names);
            if (!plant.AllSections.Any(section => string.Equals(section.Name, cycle.Section, StringComparison.Ordinal)))
                findings.Refuse(CycleSwitchFields.Section.Below(path), $"'{cycle.Section}'", "the name of a section");
        }
    }
}
