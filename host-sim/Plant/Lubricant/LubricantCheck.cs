using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Lubricant;

/// <summary>What a description of a lubricant may not hold.</summary>
public static class LubricantCheck
{
    /// <summary>All findings, with paths from <c>Lubricant</c>. Empty: nothing to say.</summary>
    public static IReadOnlyList<PlantFinding> Of(LubricantDescription lubricant)
    {
        ArgumentNullException.ThrowIfNull(lubricant);
        var findings = new Findings();
        Add(findings, lubricant);
        return findings.All;
    }

    internal static void Add(Findings findings, LubricantDescription lubricant)
    {
        const string path = "Lubricant";
        findings.Text($"{path}.Name", lubricant.Name);
        switch (lubricant)
        {
            case OilDescription oil:
                Oil(findings, path, oil);
                break;
            case GreaseDescription grease:
                Grease(findings, path, grease);
                break;
            default:
                findings.Refuse(path, lubricant.GetType().Name, "an oil or a grease");
                break;
        }

        Value(findings, $"{path}.DensityKgPerM3", lubricant.DensityKgPerM3, 500, 2000, "kg/m3");
        Value(findings, $"{path}.ExpansionPerK", lubricant.ExpansionPerK, 0, 0.002, "1/K");
        Value(findings, $"{path}.BulkModulusPa", lubricant.BulkModulusPa, 1e8, 1e10, "Pa");
    }

    private static void Oil(Findings findings, string path, OilDescription oil)
    {
        if (oil.IsoViscosityGrade is { } grade && !IsoViscosityGrade.All.Contains(grade))
            findings.Refuse($"{path}.IsoViscosityGrade", Findings.Show(grade), $"a grade of ISO 3448: {string.Join(", ", IsoViscosityGrade.All.Select(Findings.Show))}");
        else if (oil.IsoViscosityGrade is { } known && !IsoViscosityGrade.Holds(known, oil.Viscosity.At40M2PerS.Value))
            findings.Refuse($"{path}.Viscosity.At40M2PerS", Findings.Show(oil.Viscosity.At40M2PerS.Value), $"within 10 % of the grade, {Findings.Show(known)}e-6 m2/s");
        Viscosity(findings, $"{path}.Viscosity", oil.Viscosity);
    }

    private static void Grease(Findings findings, string path, GreaseDescription grease)
    {
        if (grease.NlgiGrade is { } number && NlgiGrade.Named(number) == null)
            findings.Refuse($"{path}.NlgiGrade", $"'{number}'", $"an NLGI number: {string.Join(", ", NlgiGrade.All.Select(known => known.Number))}");
        Value(findings, $"{path}.YieldStressPa", grease.YieldStressPa, 0, 1e5, "Pa");
        Value(findings, $"{path}.ConsistencyPaSn", grease.ConsistencyPaSn, 1e-4, 1e5, "Pa.s^n");
        Value(findings, $"{path}.FlowIndex", grease.FlowIndex, 0.2, 1, "(no unit)");
        Value(findings, $"{path}.YieldCoefficientPerK", grease.YieldCoefficientPerK, 0, 0.1, "1/K");
        Value(findings, $"{path}.ConsistencyCoefficientPerK", grease.ConsistencyCoefficientPerK, 0, 0.1, "1/K");
        if ((grease.ConsistencyCoefficientPerK == null) == (grease.BaseOil == null))
            findings.Refuse($"{path}.BaseOil", grease.BaseOil == null ? "none" : "both", "either the base oil or the coefficient of the consistency");
        if (grease.BaseOil is { } oil)
            Viscosity(findings, $"{path}.BaseOil", oil);
    }

    private static void Viscosity(Findings findings, string path, ViscosityDescription viscosity)
    {
        Value(findings, $"{path}.At40M2PerS", viscosity.At40M2PerS, 1e-6, 1e-2, "m2/s");
        Value(findings, $"{path}.SecondM2PerS", viscosity.SecondM2PerS, 4e-7, 1, "m2/s");
        Value(findings, $"{path}.Slope", viscosity.Slope, 0, 8, "(no unit)");
        if ((viscosity.SecondM2PerS == null) == (viscosity.Slope == null))
            findings.Refuse($"{path}.SecondM2PerS", viscosity.Slope == null ? "none" : "both", "either a second viscosity or the slope");
        if (viscosity.SecondM2PerS is not { } second)
            return;
        findings.Range($"{path}.SecondTemperatureK", viscosity.SecondTemperatureK, 200, 500, "K");
        double apart = viscosity.SecondTemperatureK - LubricantProperties.OilReferenceK;
        if (Math.Abs(apart) < 10)
            findings.Refuse($"{path}.SecondTemperatureK", Findings.Show(viscosity.SecondTemperatureK), "at least 10 K from 313.15 K");
        else if ((second.Value - viscosity.At40M2PerS.Value) * apart > 0)
            findings.Refuse($"{path}.SecondM2PerS", Findings.Show(second.Value), string.Create(CultureInfo.InvariantCulture, $"no more in the warmth than in the cold, where it is {Findings.Show(viscosity.At40M2PerS.Value)} m2/s at 313.15 K"));
    }

    private static void Value(Findings findings, string path, SourcedValue? value, double low, double high, string unit)
    {
        if (value == null)
            return;
        findings.Range(path, value.Value, low, high, unit);
        findings.Defined($"{path}.Confidence", value.Confidence);
        if (string.IsNullOrWhiteSpace(value.Source))
            findings.Refuse($"{path}.Source", "''", "a source that is not empty");
    }
}
