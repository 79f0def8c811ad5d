using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Description;
using LubeController.Plant.Lubricant;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Plant.Tests.Fluids;

public sealed class LubricantCheckTests
{
    private static readonly OilDescription Oil = Lubricants.NewtonianOil(0.198) with { IsoViscosityGrade = 220 };

    private static readonly GreaseDescription Grease = Lubricants.SteadyGrease(189, 4.1, 0.797) with { NlgiGrade = "1" };

    [Fact]
    public void Sound_lubricants_have_no_findings()
    {
        Assert.Empty(LubricantCheck.Of(Oil));
        Assert.Empty(LubricantCheck.Of(Grease));
    }

    [Fact]
    public void Each_value_that_cannot_be_is_refused_by_its_path_and_the_lubricant_is_not_made()
    {
        Assert.All(Wrong(), wrong =>
        {
            PlantFinding finding = Assert.Single(LubricantCheck.Of(wrong.Lubricant));
            Assert.Equal((true, wrong.Path, wrong.Value), (finding.IsRefusal, finding.Path, finding.Value));
            Assert.Contains(wrong.Path, Assert.Throws<ArgumentException>(() => new LubricantProperties(wrong.Lubricant, 300)).Message, StringComparison.Ordinal);
        });
        Assert.True(Wrong().Count() > 20);
    }

    [Fact]
    public void A_plant_is_refused_for_its_lubricant() =>
        Assert.Equal("lubricant.flow-index.value", Assert.Single(PlantCheck.Refusals(Plants.Twin(3) with { Lubricant = Grease with { FlowIndex = Value(1.5) } })).Path);

    [Fact]
    public void What_is_assumed_or_only_from_memory_is_an_assumption_and_nothing_else_is()
    {
        Assert.Equal([false, false, false, true, true], Enum.GetValues<Confidence>().Select(confidence => new SourcedValue(1, "x", confidence).IsAssumption));
        GreaseDescription known = Grease with
        {
            YieldStressPa = new(189, "x", Confidence.Measured),
            ConsistencyPaSn = new(4.1, "x", Confidence.FromMemory),
            FlowIndex = new(0.797, "x", Confidence.Published),
            DensityKgPerM3 = new(900, "x", Confidence.Standard),
        };
        Assert.Equal(
            ["consistency at 25 degC", "temperature coefficient of the yield stress", "temperature coefficient of the consistency", "thermal expansion", "bulk modulus"],
            known.Assumptions().Select(value => value.Name));
        Assert.Equal(8, known.Values().Count);
    }

    private static IEnumerable<(string Path, string Value, LubricantDescription Lubricant)> Wrong()
    {
        ViscosityDescription viscosity = Oil.Viscosity;
        ViscosityDescription points = viscosity with { Slope = null, SecondM2PerS = Value(19e-6) };
        yield return ("lubricant", "''", Oil with { Name = " " });
        yield return ("density.value", "0.9", Oil with { DensityKgPerM3 = Value(0.9) });
        yield return ("expansion.value", "0.1", Oil with { ExpansionPerK = Value(0.1) });
        yield return ("bulk-modulus.value", "NaN", Oil with { BulkModulusPa = Value(double.NaN) });
        yield return ("bulk-modulus.source", "''", Oil with { BulkModulusPa = new(1.5e9, "", Confidence.Assumed) });
        yield return ("bulk-modulus.confidence", "9", Oil with { BulkModulusPa = new(1.5e9, "x", (Confidence)9) });
        yield return ("iso-viscosity-grade", "230", Oil with { IsoViscosityGrade = 230 });
        yield return ("viscosity-at-40", "0.00022", Oil with { IsoViscosityGrade = 150 });
        yield return ("viscosity-at-40.value", "0.1", Oil with { IsoViscosityGrade = null, Viscosity = viscosity with { At40M2PerS = Value(0.1) } });
        yield return ("viscosity-slope.value", "9", Oil with { Viscosity = viscosity with { Slope = Value(9) } });
        yield return ("second-viscosity", "none", Oil with { Viscosity = viscosity with { Slope = null } });
        yield return ("second-viscosity", "both", Oil with { Viscosity = points with { Slope = Value(3) } });
        yield return ("second-viscosity", "0.00023", Oil with { Viscosity = points with { SecondM2PerS = Value(230e-6) } });
        yield return ("second-viscosity", "0.0002", Oil with { Viscosity = points with { SecondM2PerS = Value(200e-6), SecondTemperatureK = 273.15 } });
        yield return ("second-viscosity.temperature", "315", Oil with { Viscosity = points with { SecondTemperatureK = 315 } });
        yield return ("second-viscosity.temperature", "600", Oil with { Viscosity = points with { SecondTemperatureK = 600 } });
        yield return ("nlgi-grade", "7", Grease with { NlgiGrade = "7" });
        yield return ("yield-stress.value", "-1", Grease with { YieldStressPa = Value(-1) });
        yield return ("consistency.value", "0", Grease with { ConsistencyPaSn = Value(0) });
        yield return ("flow-index.value", "0.1", Grease with { FlowIndex = Value(0.1) });
        yield return ("yield-coefficient.value", "1", Grease with { YieldCoefficientPerK = Value(1) });
        yield return ("consistency-coefficient.value", "-0.1", Grease with { ConsistencyCoefficientPerK = Value(-0.1) });
        yield return ("base-oil", "none", Grease with { ConsistencyCoefficientPerK = null });
        yield return ("base-oil", "both", Grease with { BaseOil = viscosity });
        yield return ("base-oil.second-viscosity", "none", Grease with { ConsistencyCoefficientPerK = null, BaseOil = viscosity with { Slope = null } });
    }

    private static SourcedValue Value(double value) => new(value, "invented", Confidence.Assumed);
}
