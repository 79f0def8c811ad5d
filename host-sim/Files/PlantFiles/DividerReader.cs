using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant.Divider;
using LubeController.Plant.Pistons;

namespace LubeController.Files.PlantFiles;

/// <summary>Reads the dividers of a plant file, with sections and joins.</summary>
internal sealed class DividerReader(MapReader file, ProblemList problems)
{
    internal const int MostSections = 64;
    private const int MostSecondaries = 16;
    private static readonly string[] OutletWords = ["twin", "single"];

    /// <summary>The two sides, by value.</summary>
    public static string[] Sides { get; } = ["L", "R"];

    /// <summary>The main divider; none where injectors stand in its place; null where a problem was added.</summary>
    public DividerDescription? Read()
    {
        if (!file.Has("divider") && file.Has("injectors"))
            return DividerDescription.None;
        return One(file, "write it with its sections, or injectors with outlets");
    }

    /// <summary>The dividers that outlets of others feed; those with a problem are left out.</summary>
    public IReadOnlyList<SecondaryDividerDescription> Secondaries()
    {
        var secondaries = new List<SecondaryDividerDescription>();
        foreach (MapReader group in file.Groups("secondary-dividers", PlantKeys.Secondary, MostSecondaries))
        {
            string name = PlantNames.Need(group, "name", "left-side");
            string feeder = PlantNames.Need(group, "fed-by", "m1L");
            double volume = group.Need("volume", PlantRanges.LineVolume);
            double modulus = group.Need("bulk-modulus", PlantRanges.BulkModulus);
            if (One(group, "write it with its sections") is { } divider)
                secondaries.Add(new SecondaryDividerDescription { Name = name, FedBy = feeder, VolumeM3 = volume, BulkModulusPa = modulus, Divider = divider });
        }

        return secondaries;
    }

    private DividerDescription? One(MapReader owner, string remedy)
    {
        int before = problems.Count;
        if (!owner.Has("divider"))
            owner.Missing("divider", remedy);
        if (owner.Group("divider", PlantKeys.Divider) is not { } group)
            return null;
        if (!group.Has("sections"))
            group.Missing("sections", "write at least three, each with name and volume-per-stroke");
        var plain = new DividerDescription { Sections = [] };
        DividerDescription divider = plain with
        {
            Sections = Sections(group).ToList(),
            Joins = Joins(group).ToList(),
            StrokeFlowLimitM3PerS = group.Quantity("stroke-flow-limit", PlantRanges.StrokeFlow)?.Si ?? plain.StrokeFlowLimitM3PerS,
            HalfLimitLossPa = group.Quantity("half-limit-loss", PlantRanges.HalfLimitLoss)?.Si ?? plain.HalfLimitLossPa,
            LandClearanceFlowM3PerS = group.Quantity("land-clearance", PlantRanges.Clearance)?.Si,
            IndicatorSection = group.Has("indicator") ? PlantNames.Need(group, "indicator", "1") : null,
        };
        return problems.Count == before ? divider : null;
    }

    private static IEnumerable<SectionDescription> Sections(MapReader divider)
    {
        foreach (MapReader group in divider.Groups("sections", PlantKeys.Section, MostSections))
        {
            var plain = new SectionDescription { Name = "", VolumePerStrokeM3 = 1.0 };
            yield return plain with
            {
                Name = PlantNames.Need(group, "name", "1"),
                VolumePerStrokeM3 = group.Need("volume-per-stroke", PlantRanges.Stroked),
                Outlets = (SectionOutlets)(group.Choice("outlets", OutletWords) ?? (int)plain.Outlets),
                BreakawayPa = group.Quantity("breakaway", PlantRanges.Resistance)?.Si ?? plain.BreakawayPa,
                FrictionPa = group.Quantity("friction", PlantRanges.Resistance)?.Si,
                BypassM3PerSPa = group.Quantity("bypass", PlantRanges.Leakage)?.Si ?? plain.BypassM3PerSPa,
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
}
