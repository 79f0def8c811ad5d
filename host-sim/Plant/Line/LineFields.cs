using System;
using LubeController.Plant.Checking;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Line;

/// <summary>The fields of the main line and its segments.</summary>
public static class LineFields
{
    private static readonly NumberField<LineDescription> Air = new("air", "Air in the line at the start, at atmospheric pressure, up to half the line.", Measure.Volume, "cm3", 0, 0.5, l => l.AirM3, (l, v) => l with { AirM3 = v });

    private static readonly LineDescription Blank = new() { VolumeM3 = double.NaN, BulkModulusPa = double.NaN };

    private static readonly FieldSet<LineSegmentDescription> Segment = new(
        "a segment",
        new LineSegmentDescription { LengthM = double.NaN, BoreM = double.NaN },
        new NumberField<LineSegmentDescription>("length", "", Measure.Length, "m", 0.01, 1000, s => s.LengthM, (s, v) => s with { LengthM = v }) { Required = true },
        new NumberField<LineSegmentDescription>("bore", "", Measure.Length, "mm", 5e-4, 0.1, s => s.BoreM, (s, v) => s with { BoreM = v }) { Required = true },
        new NumberField<LineSegmentDescription>("wall-modulus", "Pressure that would widen it by its whole volume: a steel tube some 35 GPa, a hose some 0.2 to 1 GPa.", Measure.Pressure, "MPa", 1e6, 1e13, s => s.WallModulusPa, (s, v) => s with { WallModulusPa = v }),
        new WholeField<LineSegmentDescription>("cells", "Equal parts into which it is cut.", 1, 8, s => s.Cells, (s, v) => s with { Cells = v }));

    private static readonly FieldSet<LineDescription> Strainer = new(
        "a strainer",
        Blank,
        new NumberField<LineDescription>("loss", "Loss of the clean strainer at that flow and reference viscosity.", Measure.Pressure, "bar", 0, 1e7, l => l.StrainerLossPa, (l, v) => l with { StrainerLossPa = v }) { Required = true },
        new NumberField<LineDescription>("at-flow", "The flow at which the loss is stated.", Measure.Flow, "cm3/min", 1e-12, 1e-2, l => l.StrainerFlowM3PerS, (l, v) => l with { StrainerFlowM3PerS = v }) { Required = true });

    /// <summary>All of them.</summary>
    public static FieldSet<LineDescription> All { get; } = new(
        "a line",
        Blank,
        new NumberField<LineDescription>("volume", "At the pump's outlet; without segments, of the whole line.", Measure.Volume, "cm3", 1e-7, 1, l => l.VolumeM3, (l, v) => l with { VolumeM3 = v }) { Required = true },
        new NumberField<LineDescription>("bulk-modulus", "Of the lubricant and whatever stands around the volume; in segments the wall's is added in series.", Measure.Pressure, "MPa", 1e6, 1e10, l => l.BulkModulusPa, (l, v) => l with { BulkModulusPa = v }) { Required = true },
        Air,
        new NumberField<LineDescription>("gas-exponent", "Of the air's compression; 1 is slow.", Measure.Ratio, "1", 1, 1.67, l => l.GasExponent, (l, v) => l with { GasExponent = v }),
        new ListField<LineDescription, LineSegmentDescription>("segments", "Tubes and hoses in order from the pump; without any the whole line is one volume without loss.", Segment, l => l.Segments, (l, v) => l with { Segments = v }) { Most = 16 },
        new GroupField<LineDescription, LineDescription>("strainer", "A strainer behind the pump's outlet.", Strainer, l => l, (l, v) => l with { StrainerLossPa = v.StrainerLossPa, StrainerFlowM3PerS = v.StrainerFlowM3PerS }))
    {
        Rules = [new(Air, l => l.AirM3 <= WholeM3(l) / 2, l => $"0 to {Findings.Show(WholeM3(l) / 2)} m3 (half the line)")],
    };

    private static double WholeM3(LineDescription line)
    {
        double whole = line.VolumeM3;
        foreach (LineSegmentDescription segment in line.Segments)
            whole += Math.PI / 4 * segment.BoreM * segment.BoreM * segment.LengthM;
        return whole;
    }
}
