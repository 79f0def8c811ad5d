using System;
using LubeController.Plant.Lubricant;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>Viscosity and yield stress over temperature. The source stands beside each check.</summary>
public sealed class ViscosityTests
{
    private const double Zero = 273.15;

    /// <summary>
    /// Source: ASTM D341 (Walther), log log(nu + 0.7) = A - B·log T, T in K (273.15): nu40 = 32, nu100 = 5.4 give A 9.5308,
    /// B 3.7466 and nu80 = 8.53.
    /// </summary>
    [Fact]
    public void The_line_through_two_points_is_that_of_ASTM_D341()
    {
        Walther line = Walther.Through(Zero + 40, 32e-6, Zero + 100, 5.4e-6);

        Near.Figure(9.5308, 0.00005, line.A);
        Near.Figure(3.7466, 0.00005, line.B);
        Near.Figure(8.53, 0.005, line.ViscosityM2PerS(Zero + 80) * 1e6);
        Near.Relative(32e-6, line.ViscosityM2PerS(Zero + 40), 1e-12);
        Near.Relative(5.4e-6, line.ViscosityM2PerS(Zero + 100), 1e-12);
        Near.Relative(5.4e-6, Walther.WithSlope(Zero + 40, 32e-6, line.B).ViscosityM2PerS(Zero + 100), 1e-12);
    }

    /// <summary>
    /// Source: derived from ASTM D341: ISO VG 220 with nu100 = 19.0 has 5287 mm²/s at 0 degC, 1978 at 10, 852 at 20, 78.8 at
    /// 60, 35.6 at 80. Also of the lubricant that a plant holds, by its tables.
    /// </summary>
    [Theory]
    [InlineData(0, 5287, 0.5)]
    [InlineData(10, 1978, 0.5)]
    [InlineData(20, 852, 0.5)]
    [InlineData(60, 78.8, 0.05)]
    [InlineData(80, 35.6, 0.05)]
    public void ISO_VG_220_is_as_thick_as_derived_from_cold_to_warm(double degC, double printed, double halfUnit)
    {
        Near.Figure(printed, halfUnit, Walther.Through(Zero + 40, 220e-6, Zero + 100, 19e-6).ViscosityM2PerS(Zero + degC) * 1e6);

        var oil = new LubricantProperties(Vg220(), Zero + degC);
        Near.Figure(printed, halfUnit, oil.ApparentViscosityPaS / oil.DensityKgPerM3 * 1e6);
        Near.Relative(220e-6 * 895 * (1 - (0.0007 * 25)), oil.ReferenceViscosityPaS, 1e-9);
    }

    /// <summary>The slope that the tables need, against a difference of the law itself.</summary>
    [Fact]
    public void The_slope_of_the_line_is_its_derivative()
    {
        Walther line = Walther.Through(Zero + 40, 220e-6, Zero + 100, 19e-6);
        for (double temperature = 210; temperature < 490; temperature += 7)
            Near.Relative((line.ViscosityM2PerS(temperature + 1e-3) - line.ViscosityM2PerS(temperature - 1e-3)) / 2e-3, line.SlopeM2PerSK(temperature), 1e-6);
    }

    /// <summary>Trap: without 0.7, or with 273 for 273.15, the line does not give the printed figures.</summary>
    [Fact]
    public void The_printed_figures_tell_the_law_from_its_likeliest_slips()
    {
        Walther rounded = Walther.Through(273 + 40, 32e-6, 273 + 100, 5.4e-6);
        Assert.True(Math.Abs(rounded.A - 9.5308) > 0.00005);
        double a = Math.Log10(Math.Log10(32)), b = Math.Log10(Math.Log10(5.4));
        double slope = (a - b) / (Math.Log10(373.15) - Math.Log10(313.15));
        Assert.True(Math.Abs(slope - 3.7466) > 0.1);
    }

    [Fact]
    public void What_has_no_such_line_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Walther.Through(313.15, 32e-6, 313.15, 5e-6));
        Assert.Throws<ArgumentOutOfRangeException>(() => Walther.Through(313.15, 0.3e-6, 373.15, 0.2e-6));
    }

    /// <summary>
    /// Source: Cyriac, Lugt and Bosman, Tribology Transactions 58, 2015: the yield stress falls roughly exponentially with
    /// temperature. The preset coefficient, 0.02 1/K, is an assumption and says so: halved every 35 K.
    /// </summary>
    [Fact]
    public void The_yield_stress_falls_exponentially_by_a_coefficient_that_is_assumed()
    {
        var grease = new LubricantProperties(Lubricants.SteadyGrease(189, 4.1, 0.797) with { YieldCoefficientPerK = GreaseDescription.AssumedYieldCoefficientPerK }, Zero + 25);
        Near.Relative(189, grease.YieldStressPa, 1e-11);
        double[] halves = [378, 189, 94.5, 47.25];
        for (int turn = 0; turn < halves.Length; turn++)
        {
            grease.SetTemperature(Zero + 25 + ((turn - 1) * Math.Log(2) / 0.02));
            Near.Relative(halves[turn], grease.YieldStressPa, 1e-9);
        }

        Near.Figure(35, 0.5, Math.Log(2) / GreaseDescription.AssumedYieldCoefficientPerK.Value);
        Assert.True(GreaseDescription.AssumedYieldCoefficientPerK.IsAssumption);
    }

    private static OilDescription Vg220() => Lubricants.NewtonianOil(0.1) with
    {
        DensityKgPerM3 = new SourcedValue(895, "invented", Confidence.Assumed),
        ExpansionPerK = new SourcedValue(0.0007, "invented", Confidence.Assumed),
        Viscosity = new ViscosityDescription
        {
            At40M2PerS = new SourcedValue(220e-6, "ISO 3448", Confidence.Standard),
            SecondM2PerS = new SourcedValue(19e-6, "as the row has it", Confidence.Assumed),
        },
    };
}
