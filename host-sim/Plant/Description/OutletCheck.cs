using System;
using System.Collections.Generic;
using LubeController.Plant.Checking;
using LubeController.Plant.Divider;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Description;

/// <summary>That each group of connected ports feeds exactly one outlet, and that the relief valve leaves pressure enough.</summary>
internal static class OutletCheck
{
    internal static void Add(Findings findings, PlantDescription plant)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < plant.Outlets.Count; i++)
            One(findings, $"Outlets[{i}]", plant, plant.Outlets[i], names);
        if (plant.Divider.Sections.Count > 0)
            Ports(findings, plant, plant.Divider);
        foreach (SecondaryDividerDescription secondary in plant.Secondaries)
            Ports(findings, plant, secondary.Divider);
    }

    private static void One(Findings findings, string path, PlantDescription plant, OutletDescription outlet, HashSet<string> names)
    {
        findings.Unique(path + ".Name", outlet.Name, names);
        findings.Range(path + ".BackPressurePa", outlet.BackPressurePa, 0, 5e7, "Pa");
        findings.Range(path + ".CheckValvePa", outlet.CheckValvePa, 0, 5e7, "Pa");
        findings.Range(path + ".LineLengthM", outlet.LineLengthM, 0, 1000, "m");
        findings.Range(path + ".LineBoreM", outlet.LineBoreM, 5e-4, 0.1, "m");
        if (plant.Injectors.Count > 0)
            return;
        if (outlet.Ports.Count == 0)
            findings.Refuse(path + ".Ports", "none", "at least one port, for instance 1L");
        for (int i = 0; i < outlet.Ports.Count; i++)
        {
            PortDescription port = outlet.Ports[i];
            DividerDescription? divider = DividerOf(plant, port.Section);
            if (divider is null || !Enum.IsDefined(port.Side))
            {
                findings.Refuse($"{path}.Ports[{i}]", $"'{port}'", "the name of a section with L or R");
                return;
            }

            if (i > 0 && (DividerOf(plant, outlet.Ports[0].Section) != divider || Root(divider, port) != Root(divider, outlet.Ports[0])))
            {
                findings.Refuse($"{path}.Ports[{i}]", $"'{port}'", $"a port connected to {outlet.Ports[0]}");
                return;
            }
        }
    }

    private static void Ports(Findings findings, PlantDescription plant, DividerDescription divider)
    {
        int[] root = PortGroups.Roots(divider);
        var fedBy = new Dictionary<int, int>();
        for (int i = 0; i < plant.Outlets.Count; i++)
        {
            OutletDescription outlet = plant.Outlets[i];
            if (outlet.Ports.Count == 0 || PortGroups.IndexOf(divider, outlet.Ports[0].Section) < 0 || !Enum.IsDefined(outlet.Ports[0].Side))
                continue;
            if (!fedBy.TryAdd(Root(divider, outlet.Ports[0]), i))
                findings.Refuse($"Outlets[{i}].Ports", $"'{outlet.Name}'", $"ports that do not feed outlet '{plant.Outlets[fedBy[Root(divider, outlet.Ports[0])]].Name}' already");
        }

        for (int port = 0; port < root.Length; port++)
        {
            if (root[port] == port && !fedBy.ContainsKey(port))
                findings.Refuse("Outlets", $"no outlet at port {Port(divider, port)}", "one outlet for each group of connected ports");
            else if (fedBy.TryGetValue(root[port], out int outlet))
                Need(findings, plant, divider, port, plant.Outlets[outlet]);
        }
    }

    private static int Root(DividerDescription divider, PortDescription port)
    {
        int section = PortGroups.IndexOf(divider, port.Section);
        return PortGroups.Roots(divider)[port.Side == Side.L ? section : section + divider.Sections.Count];
    }

    private static DividerDescription? DividerOf(PlantDescription plant, string section)
    {
        if (PortGroups.IndexOf(plant.Divider, section) >= 0)
            return plant.Divider;
        foreach (SecondaryDividerDescription secondary in plant.Secondaries)
        {
            if (PortGroups.IndexOf(secondary.Divider, section) >= 0)
                return secondary.Divider;
        }

        return null;
    }

    private static PortDescription Port(DividerDescription divider, int port)
    {
        int n = divider.Sections.Count;
        return new PortDescription(divider.Sections[port % n].Name, port < n ? Side.L : Side.R);
    }

    private static void Need(Findings findings, PlantDescription plant, DividerDescription divider, int port, OutletDescription outlet)
    {
        int section = port % divider.Sections.Count;
        double need = divider.Sections[section].BreakawayPa + outlet.BackPressurePa + outlet.CheckValvePa;
        if (need > plant.Relief.OpeningPressurePa)
        {
            findings.Warn(
                "Relief.OpeningPressurePa",
                plant.Relief.OpeningPressurePa,
                $"at least {Findings.Show(need)} Pa, what port {Port(divider, port)} needs, or the divider stops there");
        }
    }
}
