using System;
using System.Collections.Generic;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Divider;

/// <summary>Which ports of a divider are connected, through single-outlet sections and through joins.</summary>
public static class PortGroups
{
    /// <summary>
    /// The groups of connected ports, in ring order of their first port (1L 2L … NL 1R 2R … NR), each group in that order
    /// too. Joins that name an unknown section are ignored here; the check of a plant refuses them.
    /// </summary>
    public static IReadOnlyList<IReadOnlyList<PortDescription>> Of(DividerDescription divider)
    {
        ArgumentNullException.ThrowIfNull(divider);
        int[] root = Roots(divider);
        int n = divider.Sections.Count;
        var byRoot = new Dictionary<int, List<PortDescription>>();
        var groups = new List<IReadOnlyList<PortDescription>>();
        for (int port = 0; port < 2 * n; port++)
        {
            if (!byRoot.TryGetValue(root[port], out List<PortDescription>? group))
            {
                group = [];
                byRoot.Add(root[port], group);
                groups.Add(group);
            }

            group.Add(new PortDescription(divider.Sections[port % n].Name, port < n ? Side.L : Side.R));
        }

        return groups;
    }

    /// <summary>One outlet without back-pressure for each group, named for the group's first port, for instance <c>2L</c>.</summary>
    public static IReadOnlyList<OutletDescription> DefaultOutlets(DividerDescription divider)
    {
        var outlets = new List<OutletDescription>();
        foreach (IReadOnlyList<PortDescription> group in Of(divider))
            outlets.Add(new OutletDescription { Name = group[0].ToString(), Ports = group });
        return outlets;
    }

    /// <summary>For each port (section index, plus N on the right side) the lowest port index it is connected to.</summary>
    internal static int[] Roots(DividerDescription divider)
    {
        int n = divider.Sections.Count;
        var root = new int[2 * n];
        for (int port = 0; port < root.Length; port++)
            root[port] = port;
        for (int section = 0; section < n; section++)
        {
            if (divider.Sections[section].Outlets == SectionOutlets.Single)
                Connect(root, section, section + n);
        }

        foreach (JoinDescription join in divider.Joins)
        {
            int first = IndexOf(divider, join.FirstSection);
            int second = IndexOf(divider, join.SecondSection);
            int shift = join.Side == Side.L ? 0 : n;
            if (first >= 0 && second >= 0)
                Connect(root, first + shift, second + shift);
        }

        return root;
    }

    /// <summary>Index of a section by name, or -1.</summary>
    internal static int IndexOf(DividerDescription divider, string section)
    {
        for (int i = 0; i < divider.Sections.Count; i++)
        {
            if (string.Equals(divider.Sections[i].Name, section, StringComparison.Ordinal))
                return i;
        }

        return -1;
    }

    private static void Connect(int[] root, int a, int b)
    {
        int low = Math.Min(root[a], root[b]);
        int high = Math.Max(root[a], root[b]);
        for (int port = 0; port < root.Length; port++)
        {
            if (root[port] == high)
                root[port] = low;
        }
    }
}
