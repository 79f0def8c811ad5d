using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Description;
using LubeController.Scripts.Reading;

namespace LubeController.Scripts.PlantFiles;

/// <summary>Reads the divider of a plant file, its joins and its outlets.</summary>
internal sealed class DividerReader(MapReader file, ProblemList problems)
{
    private const int MostSections = 64;
    private static readonly string[] OutletWords = ["twin", "single"];

    /// <summary>The two sides, by value.</summary>
    public static string[] Sides { get; } = ["L", "R"];

    /// <summary>The divider, or null where a problem was added.</summary>
    public DividerDescription? Read()
    {
        int before = problems.Count;
        if (!file.Has("divider"))
            file.Missing("divider", "write it with its sections");
        if (file.Group("divider", PlantKeys.Divider) is not { } group)
            return null;
        if (!group.Has("sections"))
            group.Missing("sections", "write at least three, each with name and volume-per-stroke");
        var plain = new DividerDescription { Sections = [] };
        DividerDescription divider = plain with
        {
            Sections = Sections(group).ToList(),
            Joins = Joins(group).ToList(),
            StrokeFlowLimitM3PerS = group.Quantity("stroke-flow-limit", PlantRanges.StrokeFlow)?.Si ?? plain.StrokeFlowLimitM3PerS,
            LandClearanceFlowM3PerS = group.Quantity("land-clearance", PlantRanges.Clearance)?.Si,
        };
        return problems.Count == before ? divider : null;
    }

    /// <summary>The outlets written, or where none are, one for each group of connected ports, named for its first port.</summary>
    public IReadOnlyList<OutletDescription> Outlets(DividerDescription divider)
    {
        if (!file.Has("outlets"))
            return PortGroups.DefaultOutlets(divider);
        var outlets = new List<OutletDescription>();
        foreach (MapReader group in file.Groups("outlets", PlantKeys.Outlet, 2 * MostSections))
        {
            outlets.Add(new OutletDescription
            {
                Name = PlantNames.Need(group, "name", "drive-end-bearing"),
                Ports = Ports(group),
                BackPressurePa = group.Quantity("back-pressure", PlantRanges.Resistance)?.Si ?? 0.0,
            });
        }

        return outlets;
    }

    private static IEnumerable<SectionDescription> Sections(MapReader divider)
    {
        foreach (MapReader group in divider.Groups("sections", PlantKeys.Section, MostSections))
        {
            var plain = new SectionDescription { Name = "", VolumePerStrokeM3 = 1.0 };
            yield return plain with
            {
                Name = PlantNames.Need(group, "name", "1"),
                VolumePerStrokeM3 = PlantReader.Need(group, "volume-per-stroke", PlantRanges.Stroked),
                Outlets = (SectionOutlets)(group.Choice("outlets", OutletWords) ?? (int)plain.Outlets),
                BreakawayPa = group.Quantity("breakaway", PlantRanges.Resistance)?.Si ?? plain.BreakawayPa,
                InitialTravel = group.Quantity("initial-travel", PlantRanges.Part)?.Si ?? plain.InitialTravel,
                FlowShare = group.Quantity("flow-share", PlantRanges.Weight)?.Si ?? plain.FlowShare,
            };
        }
    }

    private static IEnumerable<JoinDescription> Joins(MapReader divider)
    {
        foreach (MapReader group in divider.Groups("joins", PlantKeys.Join, 2 * MostSections))
        {
            if (!group.Has("side"))
                group.Missing("side", "write L or R");
            string first = PlantNames.Need(group, "first", "1");
            string second = PlantNames.Need(group, "second", "2");
            yield return new JoinDescription(first, second, (Side)(group.Choice("side", Sides) ?? 0));
        }
    }

    private List<PortDescription> Ports(MapReader outlet)
    {
        var ports = new List<PortDescription>();
        if (!outlet.Has("ports"))
            outlet.Missing("ports", "write a list of sections with sides, for instance [1L, 1R]");
        foreach (YamlNode item in outlet.List("ports", 2 * MostSections))
        {
            if (item is ScalarNode { Text.Length: > 1 } port && port.Text[^1] is 'L' or 'R' && PlantNames.IsName(port.Text))
                ports.Add(new PortDescription(port.Text[..^1], port.Text[^1] == 'L' ? Side.L : Side.R));
            else
                problems.Add(item, "a port is a section's name with L or R", "write for instance 2L");
        }

        return ports;
    }
}
