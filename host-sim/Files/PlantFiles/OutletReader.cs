using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant.Divider;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;

namespace LubeController.Files.PlantFiles;

/// <summary>Reads the outlets of a plant file.</summary>
internal sealed class OutletReader(MapReader file, ProblemList problems)
{
    private const int MostOutlets = 2 * DividerReader.MostSections;

    /// <summary>The outlets written, or where none are, one for each group of connected ports, named for its first port.</summary>
    /// <param name="main">The main divider; none where injectors feed the outlets, which then have no ports.</param>
    /// <param name="secondaries">The other dividers.</param>
    public IReadOnlyList<OutletDescription> Read(DividerDescription main, IReadOnlyList<SecondaryDividerDescription> secondaries)
    {
        bool injectors = main.Sections.Count == 0;
        if (!file.Has("outlets"))
        {
            if (injectors)
                file.Missing("outlets", "write each outlet that an injector feeds, with its name");
            return [.. secondaries.Select(secondary => secondary.Divider).Prepend(main).SelectMany(PortGroups.DefaultOutlets)];
        }

        var outlets = new List<OutletDescription>();
        foreach (MapReader group in file.Groups("outlets", PlantKeys.Outlet, MostOutlets))
            outlets.Add(Outlet(group, injectors));
        return outlets;
    }

    private OutletDescription Outlet(MapReader group, bool injectors)
    {
        MapReader? line = group.Group("line", PlantKeys.OutletLine);
        var plain = new OutletDescription { Name = "", Ports = [] };
        return plain with
        {
            Name = PlantNames.Need(group, "name", "drive-end-bearing"),
            Ports = injectors ? NoPorts(group) : Ports(group),
            BackPressurePa = group.Quantity("back-pressure", PlantRanges.Resistance)?.Si ?? plain.BackPressurePa,
            CheckValvePa = group.Quantity("check-valve", PlantRanges.Resistance)?.Si ?? plain.CheckValvePa,
            LineLengthM = line == null ? plain.LineLengthM : line.Need("length", PlantRanges.OutletLength),
            LineBoreM = line?.Quantity("bore", PlantRanges.TubeBore)?.Si ?? plain.LineBoreM,
        };
    }

    private List<PortDescription> NoPorts(MapReader outlet)
    {
        if (outlet.Map["ports"] is { } ports)
            problems.Add(ports, "an outlet that an injector feeds has no ports", "delete the field; the injector names the outlet");
        return [];
    }

    private List<PortDescription> Ports(MapReader outlet)
    {
        var ports = new List<PortDescription>();
        if (!outlet.Has("ports"))
            outlet.Missing("ports", "write a list of sections with sides, for instance [1L, 1R]");
        foreach (YamlNode item in outlet.List("ports", MostOutlets))
        {
            if (item is ScalarNode { Text.Length: > 1 } port && port.Text[^1] is 'L' or 'R' && PlantNames.IsName(port.Text))
                ports.Add(new PortDescription(port.Text[..^1], port.Text[^1] == 'L' ? Side.L : Side.R));
            else
                problems.Add(item, "a port is a section's name with L or R", "write for instance 2L");
        }

        return ports;
    }
}
