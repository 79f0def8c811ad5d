using System;
using System.Collections.Generic;
using System.Globalization;
using LubeController.Plant.Checking;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Lubricant;

/// <summary>The fields of a viscosity over temperature, which an oil has beside its others and a base oil has alone.</summary>
/// <param name="get">The viscosity of a description.</param>
/// <param name="with">The description with another viscosity.</param>
internal sealed class ViscosityFields<T>(Func<T, ViscosityDescription> get, Func<T, ViscosityDescription, T> with)
{
    private static readonly FieldSet<ViscosityDescription> SecondPoint = new(
        "a second viscosity",
        ViscosityFields.Blank with { SecondM2PerS = SourcedFields.Blank },
        [
            new NumberField<ViscosityDescription>("temperature", "", Measure.Temperature, "degC", 200, 500, v => v.SecondTemperatureK, (v, k) => v with { SecondTemperatureK = k }),
            .. SourcedFields.Of<ViscosityDescription>(Measure.KinematicViscosity, "mm2/s", 4e-7, 1, v => v.SecondM2PerS!, (v, value) => v with { SecondM2PerS = value }),
        ]);

    private readonly GroupField<T, ViscosityDescription> _second = new(
        "second-viscosity",
        "A second point of the line of ASTM D341; or write viscosity-slope.",
        SecondPoint,
        item => get(item).SecondM2PerS is null ? null : get(item),
        (item, point) => with(item, get(item) with { SecondM2PerS = point.SecondM2PerS, SecondTemperatureK = point.SecondTemperatureK }));

    /// <summary>The viscosity at 40 degC.</summary>
    internal GroupField<T, SourcedValue> At40 { get; } = SourcedFields.Group<T>(
        "viscosity-at-40", "Kinematic viscosity at 40 degC.", Measure.KinematicViscosity, "mm2/s", 1e-6, 1e-2, item => get(item).At40M2PerS, (item, value) => with(item, get(item) with { At40M2PerS = value }), required: true);

    /// <summary>All of them.</summary>
    internal IReadOnlyList<Field<T>> All =>
    [
        At40,
        _second,
        SourcedFields.Group<T>("viscosity-slope", "B in log log(nu + 0.7) = A - B log T; or write second-viscosity.", Measure.Ratio, "1", 0, 8, item => get(item).Slope, (item, value) => with(item, get(item) with { Slope = value })),
    ];

    /// <summary>What must hold between them.</summary>
    internal IReadOnlyList<Rule<T>> Rules =>
    [
        new(_second, item => get(item).SecondM2PerS is null != get(item).Slope is null, item => "either a second viscosity or the slope") { Found = item => get(item).Slope is null ? "none" : "both" },
        new(_second, item => get(item).SecondM2PerS is null || Math.Abs(Apart(item)) >= 10, item => "at least 10 K from 313.15 K") { Found = item => Findings.Show(get(item).SecondTemperatureK), Below = "temperature" },
        new(_second, item => get(item).SecondM2PerS is not { } second || Math.Abs(Apart(item)) < 10 || (second.Value - get(item).At40M2PerS.Value) * Apart(item) <= 0, Thinner) { Found = item => Findings.Show(get(item).SecondM2PerS!.Value) },
    ];

    private double Apart(T item) => get(item).SecondTemperatureK - LubricantProperties.OilReferenceK;

    private string Thinner(T item) => string.Create(CultureInfo.InvariantCulture, $"no more in the warmth than in the cold, where it is {Findings.Show(get(item).At40M2PerS.Value)} m2/s at 313.15 K");
}

/// <summary>A viscosity of which nothing was written, and a base oil's fields.</summary>
internal static class ViscosityFields
{
    internal static ViscosityDescription Blank { get; } = new() { At40M2PerS = null! };

    /// <summary>A base oil.</summary>
    internal static FieldSet<ViscosityDescription> BaseOil()
    {
        var fields = new ViscosityFields<ViscosityDescription>(v => v, (_, v) => v);
        return new FieldSet<ViscosityDescription>("a base oil", Blank, fields.All) { Rules = fields.Rules };
    }
}
