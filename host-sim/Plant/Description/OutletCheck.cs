using System;
using System.Collections.Generic;

namespace LubeController.Plant.Description;

/// <summary>That each group of connected ports feeds exactly one outlet, and that the relief valve leaves pressure enough.</summary>
internal static class OutletCheck
{
    internal static void Add(Findings findings, PlantDescription plant)
    {
        DividerDescription divider = plant.Divider;
        int n = divider.Sections.Count;
        int[] root = PortGroups.Roots(divider);
        var names = new HashSet<string>(StringComparer.Ordinal);
        var fedBy = new Dictionary<int, int>();
        for (int i = 0; i < plant.Outlets.Count; i++)
        {
            string path = $"Outlets[{i}]";
            OutletDescription outlet = plant.Outlets[i];
            findings.Unique(path + ".Name", outlet.Name, names);
            findings.Range(path + ".BackPressurePa", outlet.BackPressurePa, 0, 5e7, "Pa");
            int group = Group(findings, path, outlet, divider, root);
            if (group >= 0 && !fedBy.TryAdd(group, i))
                findings.Refuse(path + ".Ports", $"'{outlet.Name}'", $"ports that do not feed outlet '{plant.Outlets[fedBy[group]].Name}' already");
        }

        for (int port = 0; port < 2 * n; port++)
        {
            if (root[port] == port && !fedBy.ContainsKey(port))
                findings.Refuse("Outlets", $"no outlet at port {Port(divider, port)}", "one outlet for each group of connected ports");
            else if (fedBy.TryGetValue(root[port], out int outlet))
                Need(findings, plant, port, plant.Outlets[outlet]);
        }
    }

    private static PortDescription Port(DividerDescription divider, int port)
    {
        int n = divider.Sections.Count;
        return new PortDescription(divider.Sections[port % n].Name, port < n ? Side.L : Side.R);
    }

    private static int Group(Findings findings, string path, OutletDescription outlet, DividerDescription divider, int[] root)
    {
        if (outlet.Ports.Count == 0)
        {
            findings.Refuse(path + ".Ports", "none", "at least one port, for instance 1L");
            return -1;
        }

        int group = -1;
        for (int i = 0; i < outlet.Ports.Count; i++)
        {
            PortDescription port = outlet.Ports[i];
            int section = PortGroups.IndexOf(divider, port.Section);
            if (section < 0 || !Enum.IsDefined(port.Side))
            {
                findings.Refuse($"{path}.Ports[{i}]", $"'{port}'", "the name of a section with L or R");
                return -1;
            }

            int found = root[port.Side == Side.L ? section : section + divider.Sections.Count];
            if (group >= 0 && found != group)
            {
                findings.Refuse($"{path}.Ports[{i}]", $"'{port}'", $"a port connected to {outlet.Ports[0]}");
                return -1;
            }

            group = found;
        }

        return group;
    }

    private static void Need(Findings findings, PlantDescription plant, int port, OutletDescription outlet)
    {
        int section = port % plant.Divider.Sections.Count;
        double need = plant.Divider.Sections[section].BreakawayPa + outlet.BackPressurePa;
        if (need > plant.Relief.OpeningPressurePa)
        {
            findings.Warn(
                "Relief.OpeningPressurePa",
                plant.Relief.OpeningPressurePa,
                $"at least {Findings.Show(need)} Pa, what port {Port(plant.Divider, port)} needs, or the divider stops there");
        }
    }
}
