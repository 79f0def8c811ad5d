using LubeController.Plant.Checking;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Injectors;

/// <summary>The fields of an injector.</summary>
public static class InjectorFields
{
    internal static TextField<InjectorDescription> Name { get; } = new("name", "", TextForm.Name, "i1", i => i.Name, (i, v) => i with { Name = v }) { Required = true };

    internal static TextField<InjectorDescription> Outlet { get; } = new("outlet", "Name of the outlet that it feeds.", TextForm.Name, "drive-end-bearing", i => i.Outlet, (i, v) => i with { Outlet = v }) { Required = true };

    internal static NumberField<InjectorDescription> Discharge { get; } = new("discharge", "Line pressure at which it begins to discharge against no back-pressure.", Measure.Pressure, "bar", 1e4, 5e7, i => i.DischargePa, (i, v) => i with { DischargePa = v }) { Required = true };

    internal static WholeField<InjectorDescription> Segment { get; } = new("segment", "Segment of the line at whose end it sits, counted from 1; 0 is the pump's outlet.", 0, 16, i => i.Segment, (i, v) => i with { Segment = v });

    private static readonly NumberField<InjectorDescription> Recharge = new("recharge", "Line pressure at and below which its spring recharges it.", Measure.Pressure, "bar", 0, 1e8, i => i.RechargePa, (i, v) => i with { RechargePa = v }) { Required = true };

    /// <summary>All of them.</summary>
    public static FieldSet<InjectorDescription> All { get; } = new(
        "an injector",
        new InjectorDescription { Name = "", Outlet = "", VolumeM3 = double.NaN, DischargePa = double.NaN, RechargePa = double.NaN },
        Name,
        Outlet,
        new NumberField<InjectorDescription>("volume", "Of one discharge.", Measure.Volume, "cm3", 1e-9, 1e-3, i => i.VolumeM3, (i, v) => i with { VolumeM3 = v }) { Required = true },
        Discharge,
        Recharge,
        new NumberField<InjectorDescription>("recharge-time", "Of a whole recharge at reference viscosity.", Measure.Time, "s", 1e-3, 3600, i => i.RechargeS, (i, v) => i with { RechargeS = v }),
        Segment)
    {
        Rules = [new(Recharge, i => i.RechargePa < i.DischargePa, i => $"0 up to, not including, {Findings.Show(i.DischargePa)} Pa (the discharge pressure)")],
    };
}
