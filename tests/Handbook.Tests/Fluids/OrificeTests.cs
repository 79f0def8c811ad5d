using System;
using LubeController.Plant.Lubricant;
using Xunit;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>Flow through small holes. The source stands beside each check.</summary>
public sealed class OrificeTests
{
    /// <summary>Source: Rabie, Fluid Power Engineering, eq. 2.36 to 2.39: the sharp edge has pi/(pi + 2) = 0.611, within the usual 0.60 to 0.65.</summary>
    [Fact]
    public void The_sharp_edge_has_the_coefficient_that_Rabie_gives()
    {
        Near.Figure(0.611, 0.0005, Orifice.SharpEdge);
        Assert.InRange(Orifice.SharpEdge, 0.60, 0.65);
    }

    /// <summary>Source: water, d 50 mm, head 3 m, Cd 0.62: 0.00934 m3/s (read and recomputed).</summary>
    [Fact]
    public void Water_under_a_head_flows_as_in_the_worked_example() =>
        Near.Figure(0.00934, 0.000005, Orifice.FlowM3PerS(1000 * 9.81 * 3, Math.PI * 0.025 * 0.025, 1000, 0.62));

    /// <summary>Derived: a hole of 1 mm, 100 bar, rho 870, Cd 0.611: 4.366 L/min.</summary>
    [Fact]
    public void Oil_through_a_small_hole_flows_as_derived() =>
        Near.Figure(4.366, 0.0005, Orifice.FlowM3PerS(100e5, Math.PI * 0.25e-6, 870, 0.611) * 60e3);

    /// <summary>
    /// Trap: grease and cold oil pass small holes laminar, and a constant Cd over-predicts: here a hole of 1 mm, 5 mm long, at
    /// 2 bar. Warm thin oil is the other way round, where the orifice sets the limit.
    /// </summary>
    [Theory]
    [InlineData("NLGI 2", 293.15, true)]
    [InlineData("ISO VG 460", 263.15, true)]
    [InlineData("ISO VG 68", 363.15, false)]
    public void A_constant_coefficient_over_predicts_for_grease_and_cold_oil(string name, double temperatureK, bool laminar)
    {
        var lubricant = new LubricantProperties(LubricantFiles.Named(name), temperatureK);
        double turbulent = Orifice.FlowM3PerS(2e5, Math.PI * 0.25e-6, lubricant.DensityKgPerM3);
        double viscous = lubricant.TubeFlowM3PerS(2e5, 5e-3, 0.5e-3);

        Assert.Equal(laminar, viscous < turbulent / 2);
    }

    [Fact]
    public void What_is_no_orifice_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Orifice.FlowM3PerS(-1, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Orifice.FlowM3PerS(1, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Orifice.FlowM3PerS(1, 1, 1, 1.1));
    }
}
