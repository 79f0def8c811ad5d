using LubeController.Plant.Checking;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Line;

/// <summary>The fields of the valves on the line.</summary>
public static class ValveFields
{
    private static readonly NumberField<ReliefDescription> Reseat = new("reseat-pressure", "Pressure at which it closes again.", Measure.Pressure, "bar", 1, 1e8, r => r.ReseatPressurePa, (r, v) => r with { ReseatPressurePa = v }) { Absent = "the opening pressure" };

    /// <summary>The opening pressure of the relief valve, which bounds what other parts need.</summary>
    internal static NumberField<ReliefDescription> Opening { get; } = new("opening-pressure", "Cracking pressure.", Measure.Pressure, "bar", 1e4, 1e8, r => r.OpeningPressurePa, (r, v) => r with { OpeningPressurePa = v }) { Required = true };

    /// <summary>The relief valve.</summary>
    public static FieldSet<ReliefDescription> Relief { get; } = new(
        "a relief valve",
        new ReliefDescription { OpeningPressurePa = double.NaN },
        Opening,
        new NumberField<ReliefDescription>("override", "Rise above the opening pressure at the rated flow.", Measure.Pressure, "bar", 0, 1e8, r => r.OverridePa, (r, v) => r with { OverridePa = v }),
        new NumberField<ReliefDescription>("rated-flow", "The flow at which the override is stated.", Measure.Flow, "cm3/min", 1e-9, 1e-2, r => r.RatedFlowM3PerS, (r, v) => r with { RatedFlowM3PerS = v }),
        Reseat)
    {
        Rules = [new(Reseat, r => !(r.ReseatPressurePa > r.OpeningPressurePa), r => $"1 to {Findings.Show(r.OpeningPressurePa)} Pa (the opening pressure)")],
    };

    /// <summary>The vent valve of a single-line system.</summary>
    public static FieldSet<VentValveDescription> Vent { get; } = new(
        "a vent valve",
        new VentValveDescription(),
        new NumberField<VentValveDescription>("open-flow", "What it passes when open, at reference viscosity.", Measure.Leakage, "cm3/min/bar", 1e-15, 1e-6, w => w.OpenM3PerSPa, (w, v) => w with { OpenM3PerSPa = v }),
        new ChoiceField<VentValveDescription, bool>("normally-open", "Whether it is open while its coil has no power.", [new("yes", true), new("no", false)], w => w.NormallyOpen, (w, v) => w with { NormallyOpen = v }));
}
