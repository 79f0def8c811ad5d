using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Lubricant;

/// <summary>The fields of a lubricant.</summary>
public static class LubricantFields
{
    private const string Impossible = "the lubricant cannot be so";

    /// <summary>All of them, by kind.</summary>
    public static KindSet<LubricantDescription> All { get; } = new("a lubricant file", FieldKind<LubricantDescription>.Of("grease", Grease()), FieldKind<LubricantDescription>.Of("oil", Oil())) { IsFile = true };

    private static FieldSet<OilDescription> Oil()
    {
        var viscosity = new ViscosityFields<OilDescription>(o => o.Viscosity, (o, v) => o with { Viscosity = v });
        return new FieldSet<OilDescription>(
            "an oil",
            new OilDescription { Name = "", DensityKgPerM3 = null!, ExpansionPerK = null!, BulkModulusPa = null!, Viscosity = ViscosityFields.Blank },
            [
                .. Head<OilDescription>(),
                new ChoiceField<OilDescription, double?>("iso-viscosity-grade", "Grade of ISO 3448; the viscosity at 40 degC must lie within 10 % of it.", [.. IsoViscosityGrade.All.Select(grade => new Choice<double?>(grade.ToString(CultureInfo.InvariantCulture), grade))], o => o.IsoViscosityGrade, (o, v) => o with { IsoViscosityGrade = v }),
                .. viscosity.All,
                .. Common<OilDescription>(),
            ])
        {
            Verdict = Impossible,
            Rules =
            [
                new(viscosity.At40, o => o.IsoViscosityGrade is not { } grade || IsoViscosityGrade.Holds(grade, o.Viscosity.At40M2PerS.Value), o => $"within 10 % of the grade, {Findings.Show(o.IsoViscosityGrade!.Value)}e-6 m2/s") { Found = o => Findings.Show(o.Viscosity.At40M2PerS.Value) },
                .. viscosity.Rules,
            ],
        };
    }

    private static FieldSet<GreaseDescription> Grease()
    {
        var baseOil = new GroupField<GreaseDescription, ViscosityDescription>("base-oil", "The consistency follows the viscosity of this oil; or write consistency-coefficient.", ViscosityFields.BaseOil(), g => g.BaseOil, (g, v) => g with { BaseOil = v });
        return new FieldSet<GreaseDescription>(
            "a grease",
            new GreaseDescription { Name = "", DensityKgPerM3 = null!, ExpansionPerK = null!, BulkModulusPa = null!, YieldStressPa = null!, ConsistencyPaSn = null!, FlowIndex = null! },
            [
                .. Head<GreaseDescription>(),
                new ChoiceField<GreaseDescription, string?>("nlgi-grade", "Consistency number; write 00 and 000 in quotes.", [.. NlgiGrade.All.Select(grade => new Choice<string?>(grade.Number, grade.Number))], g => g.NlgiGrade, (g, v) => g with { NlgiGrade = v }),
                SourcedFields.Group<GreaseDescription>("yield-stress", "Yield stress at 25 degC.", Measure.Pressure, "Pa", 0, 1e5, g => g.YieldStressPa, (g, v) => g with { YieldStressPa = v }, required: true),
                SourcedFields.Group<GreaseDescription>("consistency", "K at 25 degC in stress = yield stress + K (shear rate)^n.", Measure.Consistency, "Pa.s^n", 1e-4, 1e5, g => g.ConsistencyPaSn, (g, v) => g with { ConsistencyPaSn = v }, required: true),
                SourcedFields.Group<GreaseDescription>("flow-index", "n, the same at every temperature.", Measure.Ratio, "1", 0.2, 1, g => g.FlowIndex, (g, v) => g with { FlowIndex = v }, required: true),
                SourcedFields.Group<GreaseDescription>("yield-coefficient", "The yield stress falls as exp(-coefficient (T - 25 degC)).", Measure.PerKelvin, "1/K", 0, 0.1, g => g.YieldCoefficientPerK, (g, v) => g with { YieldCoefficientPerK = v }, absent: "0.02 1/K, assumed,"),
                SourcedFields.Group<GreaseDescription>("consistency-coefficient", "The same for the consistency; or write base-oil.", Measure.PerKelvin, "1/K", 0, 0.1, g => g.ConsistencyCoefficientPerK, (g, v) => g with { ConsistencyCoefficientPerK = v }),
                baseOil,
                .. Common<GreaseDescription>(),
            ])
        {
            Verdict = Impossible,
            Rules = [new(baseOil, g => g.ConsistencyCoefficientPerK is null != g.BaseOil is null, g => "either the base oil or the coefficient of the consistency") { Found = g => g.BaseOil is null ? "none" : "both" }],
        };
    }

    private static IReadOnlyList<Field<T>> Head<T>()
        where T : LubricantDescription =>
    [
        new TextField<T>("lubricant", "Name for reports, for instance NLGI 1 or ISO VG 220.", TextForm.Free, "", l => l.Name, (l, v) => (T)((LubricantDescription)l with { Name = v })) { Required = true, Remedy = "write its name, for instance 'NLGI 1' or 'ISO VG 220'" },
        new KindField<T>("grease", "oil") { Required = true },
    ];

    private static IReadOnlyList<Field<T>> Common<T>()
        where T : LubricantDescription =>
    [
        SourcedFields.Group<T>("density", "Density at 15 degC.", Measure.Density, "kg/m3", 500, 2000, l => l.DensityKgPerM3, (l, v) => (T)((LubricantDescription)l with { DensityKgPerM3 = v }), required: true),
        SourcedFields.Group<T>("expansion", "Thermal expansion.", Measure.PerKelvin, "1/K", 0, 0.002, l => l.ExpansionPerK, (l, v) => (T)((LubricantDescription)l with { ExpansionPerK = v }), required: true),
        SourcedFields.Group<T>("bulk-modulus", "Bulk modulus of the liquid without gas.", Measure.Pressure, "GPa", 1e8, 1e10, l => l.BulkModulusPa, (l, v) => (T)((LubricantDescription)l with { BulkModulusPa = v }), required: true),
    ];
}
