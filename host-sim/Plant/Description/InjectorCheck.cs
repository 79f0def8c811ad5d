using System;
using System.Collections.Generic;
using LubeController.Plant.Checking;
using LubeController.Plant.Injectors;
using LubeController.Plant.Outlets;

namespace LubeController.Plant.Description;

/// <summary>That injectors have names of their own, outlets, a line and a vent valve, and no divider beside them.</summary>
internal static class InjectorCheck
{
    internal static void Add(Findings findings, PlantDescription plant)
    {
        if (plant.Injectors.Count == 0)
            return;
        if (plant.Divider.Sections.Count > 0)
            findings.Refuse(PlantFields.Injectors.Key, "beside a divider", "either a divider or injectors");
        if (plant.VentValve is null)
            findings.Refuse(PlantFields.VentValve.Key, "none", "a vent valve, or the injectors never recharge");
        var names = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < plant.Injectors.Count; i++)
            One(findings, $"{PlantFields.Injectors.Key}[{i}]", plant, plant.Injectors[i], names);
    }

    private static void One(Findings findings, string path, PlantDescription plant, InjectorDescription injector, HashSet<string> names)
    {
        findings.Unique(InjectorFields.Name.Below(path), injector.Name, names);
        if (injector.Segment > plant.Line.Segments.Count)
            findings.Refuse(InjectorFields.Segment.Below(path), Findings.Show(injector.Segment), $"0 to {plant.Line.Segments.Count} (segments of the line)");
        if (!HasOutlet(plant, injector.Outlet))
            findings.Refuse(InjectorFields.Outlet.Below(path), $"'{injector.Outlet}'", "the name of an outlet");
        if (injector.DischargePa > plant.Relief.OpeningPressurePa)
            findings.Warn(InjectorFields.Discharge.Below(path), injector.DischargePa, $"at most {Findings.Show(plant.Relief.OpeningPressurePa)} Pa, where the relief valve opens, or it never discharges");
    }

    private static bool HasOutlet(PlantDescription plant, string name)
    {
        foreach (OutletDescription outlet in plant.Outlets)
        {
            if (string.Equals(outlet.Name, name, StringComparison.Ordinal))
                return true;
        }

        return false;
    }
}
