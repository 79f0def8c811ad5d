using System;
using LubeController.Plant.Lubricant;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Plant.Tests.Fluids;

/// <summary>The tables over temperature held against the laws that they tabulate, between the knots.</summary>
public sealed class TemperatureTests
{
    private const double StepK = 0.0317;

    /// <summary>Stated by <see cref="LubricantProperties"/>: 1e-6 down to 200 K, 1e-7 above 233 K.</summary>
    private static double Bound(double temperatureK) => temperatureK < 233 ? 1e-6 : 1e-7;

    [Theory]
    [InlineData(2.2, 1.0)]
    [InlineData(32, 5.4)]
    [InlineData(220, 19)]
    [InlineData(1500, 60)]
    public void The_viscosity_of_an_oil_is_that_of_its_line(double at40, double at100)
    {
        OilDescription oil = Lubricants.NewtonianOil(0.1) with
        {
            ExpansionPerK = Value(0.0007),
            Viscosity = new ViscosityDescription { At40M2PerS = Value(at40 * 1e-6), SecondM2PerS = Value(at100 * 1e-6) },
        };
        Walther line = Walther.Through(313.15, at40 * 1e-6, 373.15, at100 * 1e-6);
        var lubricant = new LubricantProperties(oil, 300);
        for (double temperature = 200; temperature <= 500; temperature += StepK)
        {
            lubricant.SetTemperature(temperature);
            double density = 900 * (1 - (0.0007 * (temperature - 288.15)));
            AssertClose(density, lubricant.DensityKgPerM3, 1e-14);
            AssertClose(line.ViscosityM2PerS(temperature) * density, lubricant.ApparentViscosityPaS, Bound(temperature));
        }
    }

    [Theory]
    [InlineData(0.02, 0.04)]
    [InlineData(0.1, 0.1)]
    [InlineData(0, 0.001)]
    public void Yield_stress_and_consistency_of_a_grease_fall_as_their_coefficients_say(double ofYield, double ofConsistency)
    {
        var lubricant = new LubricantProperties(
            Lubricants.SteadyGrease(189, 4.1, 0.797) with { YieldCoefficientPerK = Value(ofYield), ConsistencyCoefficientPerK = Value(ofConsistency) }, 300);
        for (double temperature = 200; temperature <= 500; temperature += StepK)
        {
            lubricant.SetTemperature(temperature);
            double yieldStress = 189 * Math.Exp(-ofYield * (temperature - 298.15));
            double consistency = 4.1 * Math.Exp(-ofConsistency * (temperature - 298.15));
            AssertClose(yieldStress, lubricant.YieldStressPa, 1e-7);
            AssertClose(consistency, lubricant.ConsistencyPaSn, 1e-7);
            AssertClose((yieldStress + (consistency * Math.Pow(10, 0.797))) / 10, lubricant.ApparentViscosityPaS, 1e-7);
        }
    }

    [Fact]
    public void The_consistency_of_a_grease_follows_the_viscosity_of_its_base_oil_to_the_power_of_the_flow_index()
    {
        var lubricant = new LubricantProperties(
            Lubricants.SteadyGrease(189, 4.1, 0.797) with
            {
                ConsistencyCoefficientPerK = null,
                BaseOil = new ViscosityDescription { At40M2PerS = Value(150e-6), SecondM2PerS = Value(14.8e-6) },
            },
            298.15);
        Walther line = Walther.Through(313.15, 150e-6, 373.15, 14.8e-6);
        AssertClose(4.1, lubricant.ConsistencyPaSn, 1e-9);
        for (double temperature = 200; temperature <= 500; temperature += StepK)
        {
            lubricant.SetTemperature(temperature);
            AssertClose(4.1 * Math.Pow(line.ViscosityM2PerS(temperature) / line.ViscosityM2PerS(298.15), 0.797), lubricant.ConsistencyPaSn, Bound(temperature));
        }
    }

    [Fact]
    public void Warmer_is_never_thicker_even_by_a_hair()
    {
        OilDescription oil = Lubricants.NewtonianOil(0.1) with
        {
            Viscosity = new ViscosityDescription { At40M2PerS = Value(220e-6), SecondM2PerS = Value(19e-6) },
        };
        var lubricant = new LubricantProperties(oil, 200);
        double last = lubricant.ApparentViscosityPaS;
        for (double temperature = 200.001; temperature <= 500; temperature += 0.001)
        {
            lubricant.SetTemperature(temperature);
            Assert.True(lubricant.ApparentViscosityPaS < last);
            last = lubricant.ApparentViscosityPaS;
        }
    }

    [Theory]
    [InlineData(199.99)]
    [InlineData(500.01)]
    [InlineData(double.NaN)]
    public void A_temperature_outside_the_tables_is_refused(double temperatureK)
    {
        var lubricant = new LubricantProperties(Lubricants.NewtonianOil(0.1), 200);
        lubricant.SetTemperature(500);
        Assert.Throws<ArgumentOutOfRangeException>(() => lubricant.SetTemperature(temperatureK));
        Assert.Equal(500, lubricant.TemperatureK);
    }

    /// <summary>A property read apart from its source would say nothing: every one of them reaches the lubricant.</summary>
    [Fact]
    public void What_is_described_reaches_the_lubricant()
    {
        var lubricant = new LubricantProperties(Lubricants.SteadyGrease(189, 4.1, 0.797, densityKgPerM3: 912, bulkModulusPa: 1.6e9), 298.15);
        Assert.Equal((912, 1.6e9, 0.797, 189, 4.1), (lubricant.DensityKgPerM3, lubricant.BulkModulusPa, lubricant.FlowIndex, lubricant.YieldStressPa, lubricant.ConsistencyPaSn));
        AssertClose((189 + (4.1 * Math.Pow(10, 0.797))) / 10, lubricant.ReferenceViscosityPaS, 1e-11);
        AssertClose(4 * 5 * 189 / 6e-3, lubricant.StartUpDropPa(5, 3e-3), 1e-15);

        var oil = new LubricantProperties(Lubricants.NewtonianOil(0.25), 350);
        AssertClose(0.25, oil.ApparentViscosityPaS, 1e-14);
        AssertClose(0.25, oil.ReferenceViscosityPaS, 1e-14);
        Assert.Equal(0, oil.YieldStressPa);
    }

    private static SourcedValue Value(double value) => new(value, "invented", Confidence.Assumed);

    private static void AssertClose(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Abs(expected), FormattableString.Invariant($"{actual:R} for {expected:R}"));
}
