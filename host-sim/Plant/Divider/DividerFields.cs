using LubeController.Plant.Checking;
using LubeController.Plant.Fields;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Divider;

/// <summary>The fields of dividers, their sections and joins.</summary>
public static class DividerFields
{
    internal const int MostSections = 64;

    internal static TextField<SectionDescription> SectionName { get; } = new("name", "", TextForm.Name, "1", s => s.Name, (s, v) => s with { Name = v }) { Required = true };

    internal static TextField<JoinDescription> First { get; } = new("first", "", TextForm.Name, "1", j => j.FirstSection, (j, v) => j with { FirstSection = v }) { Required = true };

    internal static TextField<JoinDescription> Second { get; } = new("second", "", TextForm.Name, "2", j => j.SecondSection, (j, v) => j with { SecondSection = v }) { Required = true };

    internal static TextField<DividerDescription> Indicator { get; } = new("indicator", "The section that carries the visual stroke indicator.", TextForm.Name, "1", d => d.IndicatorSection, (d, v) => d with { IndicatorSection = v });

    internal static TextField<SecondaryDividerDescription> SecondaryName { get; } = new("name", "", TextForm.Name, "left-side", d => d.Name, (d, v) => d with { Name = v }) { Required = true };

    internal static TextField<SecondaryDividerDescription> FedBy { get; } = new("fed-by", "Name of the outlet that feeds it.", TextForm.Name, "m1L", d => d.FedBy, (d, v) => d with { FedBy = v }) { Required = true };

    private static readonly NumberField<SectionDescription> Friction = new("friction", "Pressure that keeps it moving, at most the breakaway pressure.", Measure.Pressure, "bar", 0, 5e7, s => s.FrictionPa, (s, v) => s with { FrictionPa = v }) { Absent = "the breakaway pressure" };

    private static readonly FieldSet<SectionDescription> Section = new(
        "a section",
        new SectionDescription { Name = "", VolumePerStrokeM3 = double.NaN },
        SectionName,
        new NumberField<SectionDescription>("volume-per-stroke", "What one stroke of the piston displaces.", Measure.Volume, "cm3", 1e-9, 1e-3, s => s.VolumePerStrokeM3, (s, v) => s with { VolumePerStrokeM3 = v }) { Required = true },
        new ChoiceField<SectionDescription, SectionOutlets>("outlets", "", [new("twin", SectionOutlets.Twin), new("single", SectionOutlets.Single)], s => s.Outlets, (s, v) => s with { Outlets = v }),
        new NumberField<SectionDescription>("breakaway", "Pressure that makes the piston leave its end.", Measure.Pressure, "bar", 0, 5e7, s => s.BreakawayPa, (s, v) => s with { BreakawayPa = v }),
        Friction,
        new NumberField<SectionDescription>("bypass", "Leakage past the piston at reference viscosity.", Measure.Leakage, "cm3/min/bar", 0, 1e-9, s => s.BypassM3PerSPa, (s, v) => s with { BypassM3PerSPa = v }),
        new NumberField<SectionDescription>("initial-travel", "Where the piston stands at the start, from 0 % (L) to 100 % (R).", Measure.Ratio, "%", 0, 1, s => s.InitialTravel, (s, v) => s with { InitialTravel = v }),
        new NumberField<SectionDescription>("flow-share", "Weight where several pistons share the flow.", Measure.Ratio, "1", 1e-3, 1e3, s => s.FlowShare, (s, v) => s with { FlowShare = v }))
    {
        Rules = [new(Friction, s => !(s.FrictionPa > s.BreakawayPa), s => $"0 to {Findings.Show(s.BreakawayPa)} Pa (the breakaway pressure)")],
    };

    private static readonly FieldSet<JoinDescription> Join = new(
        "a join",
        new JoinDescription("", "", Side.L),
        First,
        Second,
        new ChoiceField<JoinDescription, Side>("side", "", SideWords.Sides, j => j.Side, (j, v) => j with { Side = v }) { Required = true, Remedy = "write L or R" });

    internal static ListField<DividerDescription, SectionDescription> Sections { get; } = new("sections", "In order from the inlet.", Section, d => d.Sections, (d, v) => d with { Sections = v }) { Least = 3, Most = MostSections, Required = true, Remedy = "write at least three, each with name and volume-per-stroke" };

    internal static ListField<DividerDescription, JoinDescription> Joins { get; } = new("joins", "Ports of neighbouring sections connected to each other, same side only.", Join, d => d.Joins, (d, v) => d with { Joins = v }) { Most = 2 * MostSections };

    private static readonly NumberField<DividerDescription> Clearance = new("land-clearance", "Flow that creeps past closed lands, at most the stroke flow limit.", Measure.Flow, "cm3/min", 1e-15, 1e-2, d => d.LandClearanceFlowM3PerS, (d, v) => d with { LandClearanceFlowM3PerS = v }) { Absent = "tight" };

    /// <summary>A divider.</summary>
    public static FieldSet<DividerDescription> All { get; } = new(
        "a divider",
        DividerDescription.None,
        Sections,
        Joins,
        new NumberField<DividerDescription>("stroke-flow-limit", "Most flow one piston takes from stored pressure.", Measure.Flow, "cm3/min", 1e-9, 1e-2, d => d.StrokeFlowLimitM3PerS, (d, v) => d with { StrokeFlowLimitM3PerS = v }),
        new NumberField<DividerDescription>("half-limit-loss", "Loss in a section's passages at half that flow and reference viscosity.", Measure.Pressure, "bar", 1, 1e7, d => d.HalfLimitLossPa, (d, v) => d with { HalfLimitLossPa = v }),
        Clearance,
        Indicator)
    {
        Rules = [new(Clearance, d => !(d.LandClearanceFlowM3PerS > d.StrokeFlowLimitM3PerS), d => $"1E-15 to {Findings.Show(d.StrokeFlowLimitM3PerS)} m3/s (the stroke flow limit)")],
    };

    internal static GroupField<SecondaryDividerDescription, DividerDescription> OfSecondary { get; } = new("divider", "", All, d => d.Divider, (d, v) => d with { Divider = v }) { Required = true, Remedy = "write it with its sections" };

    /// <summary>A divider that an outlet of another one feeds.</summary>
    public static FieldSet<SecondaryDividerDescription> Secondary { get; } = new(
        "a secondary divider",
        new SecondaryDividerDescription { Name = "", FedBy = "", VolumeM3 = double.NaN, BulkModulusPa = double.NaN, Divider = DividerDescription.None },
        SecondaryName,
        FedBy,
        new NumberField<SecondaryDividerDescription>("volume", "Between that outlet and this divider.", Measure.Volume, "cm3", 1e-7, 1, d => d.VolumeM3, (d, v) => d with { VolumeM3 = v }) { Required = true },
        new NumberField<SecondaryDividerDescription>("bulk-modulus", "Of that volume with its wall.", Measure.Pressure, "MPa", 1e6, 1e10, d => d.BulkModulusPa, (d, v) => d with { BulkModulusPa = v }) { Required = true },
        OfSecondary);
}
