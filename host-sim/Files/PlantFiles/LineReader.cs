using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant.Line;

namespace LubeController.Files.PlantFiles;

/// <summary>Reads the line of a plant file with its segments and strainer, and the valves on it.</summary>
internal sealed class LineReader(MapReader file)
{
    private const int MostSegments = 16;

    /// <summary>The line, or null where a problem was added.</summary>
    public LineDescription? Line()
    {
        if (PlantReader.NeedGroup(file, "line", PlantKeys.Line) is not { } group)
            return null;
        MapReader? strainer = group.Group("strainer", PlantKeys.Strainer);
        var plain = new LineDescription { VolumeM3 = double.NaN, BulkModulusPa = double.NaN };
        return plain with
        {
            VolumeM3 = group.Need("volume", PlantRanges.LineVolume),
            BulkModulusPa = group.Need("bulk-modulus", PlantRanges.BulkModulus),
            AirM3 = group.Quantity("air", PlantRanges.Air)?.Si ?? plain.AirM3,
            GasExponent = group.Quantity("gas-exponent", PlantRanges.GasExponent)?.Si ?? plain.GasExponent,
            Segments = Segments(group).ToList(),
            StrainerLossPa = strainer == null ? plain.StrainerLossPa : strainer.Need("loss", PlantRanges.StrainerLoss),
            StrainerFlowM3PerS = strainer == null ? plain.StrainerFlowM3PerS : strainer.Need("at-flow", PlantRanges.Flow),
        };
    }

    /// <summary>The relief valve, or null where a problem was added.</summary>
    public ReliefDescription? Relief()
    {
        if (PlantReader.NeedGroup(file, "relief-valve", PlantKeys.Relief) is not { } group)
            return null;
        var plain = new ReliefDescription { OpeningPressurePa = double.NaN };
        return plain with
        {
            OpeningPressurePa = group.Need("opening-pressure", PlantRanges.Opening),
            OverridePa = group.Quantity("override", PlantRanges.Override)?.Si ?? plain.OverridePa,
            RatedFlowM3PerS = group.Quantity("rated-flow", PlantRanges.StrokeFlow)?.Si ?? plain.RatedFlowM3PerS,
            ReseatPressurePa = group.Quantity("reseat-pressure", PlantRanges.Reseat)?.Si,
        };
    }

    /// <summary>The vent valve, or null where none is written.</summary>
    public VentValveDescription? VentValve()
    {
        if (file.Group("vent-valve", PlantKeys.VentValve) is not { } group)
            return null;
        var plain = new VentValveDescription();
        return new VentValveDescription
        {
            OpenM3PerSPa = group.Quantity("open-flow", PlantRanges.VentFlow)?.Si ?? plain.OpenM3PerSPa,
            NormallyOpen = group.Either("normally-open", "yes", "no") ?? plain.NormallyOpen,
        };
    }

    private static IEnumerable<LineSegmentDescription> Segments(MapReader line)
    {
        foreach (MapReader group in line.Groups("segments", PlantKeys.Segment, MostSegments))
        {
            var plain = new LineSegmentDescription { LengthM = double.NaN, BoreM = double.NaN };
            yield return plain with
            {
                LengthM = group.Need("length", PlantRanges.TubeLength),
                BoreM = group.Need("bore", PlantRanges.TubeBore),
                WallModulusPa = group.Quantity("wall-modulus", PlantRanges.WallModulus)?.Si ?? plain.WallModulusPa,
                Cells = (int)(group.Whole("cells", 1, 8) ?? plain.Cells),
            };
        }
    }
}
