using System;
using LubeController.Plant.Lubricant;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>Laminar pipe flow held against worked examples. The source stands beside each check.</summary>
public sealed class PipeFlowTests
{
    private const double Gravity = 9.81;

    private static readonly double HalfInPlug = (1 + Math.Sqrt(34)) / 11;

    /// <summary>Source: University of Leeds, CIVE1400, question 7.2: mu 0.05 Pa·s, d 0.1 m, u 0.6 m/s, L 120 m: 11 520 Pa.</summary>
    [Fact]
    public void Hagen_Poiseuille_gives_the_drop_of_the_Leeds_example()
    {
        double flow = 0.6 * Math.PI * 0.05 * 0.05;

        Near.Figure(11_520, 1e-6, PipeFlow.HagenPoiseuilleDropPa(flow, 120, 0.05, 0.05));
        Near.Relative(flow, PipeFlow.HagenPoiseuilleFlowM3PerS(11_520, 120, 0.05, 0.05), 1e-14);
    }

    /// <summary>
    /// Source: University of Leeds, CIVE1400, question 7.1: bore 25 mm, centre velocity 2.5 m/s: 6.14e-4 m3/s. The drop for
    /// that velocity is 4·mu·L·u/R², whatever viscosity and length.
    /// </summary>
    [Theory]
    [InlineData(0.05, 1)]
    [InlineData(0.9, 30)]
    public void Hagen_Poiseuille_gives_the_flow_of_the_Leeds_example_from_its_centre_velocity(double viscosityPaS, double lengthM)
    {
        const double radius = 0.0125;
        double drop = 4 * viscosityPaS * lengthM * 2.5 / (radius * radius);

        Near.Figure(6.14e-4, 0.005e-4, PipeFlow.HagenPoiseuilleFlowM3PerS(drop, lengthM, radius, viscosityPaS));
    }

    /// <summary>Source: Munson, Fundamentals of Fluid Mechanics, viscous pipe example: mu 0.4, d 0.02, Q 2e-5, L 10; result recomputed: 20 372 Pa.</summary>
    [Fact]
    public void Hagen_Poiseuille_gives_the_drop_of_the_Munson_example() =>
        Near.Figure(20_372, 0.5, PipeFlow.HagenPoiseuilleDropPa(2e-5, 10, 0.01, 0.4));

    /// <summary>
    /// Source: Coulson and Richardson, Chemical Engineering vol. 1, Solutions, problem 3.30: a fluid of 2000 kg/m3 that just
    /// flows down a vertical pipe of 0.3 m has a yield stress of 1472 Pa. Start-up drop: 4·L·tau_y/D.
    /// </summary>
    [Fact]
    public void A_fluid_that_just_flows_by_its_weight_has_the_yield_stress_of_the_Coulson_and_Richardson_problem()
    {
        const double weight = 2000 * Gravity;
        double yieldStress = PipeFlow.WallShearStressPa(weight, 1, 0.15);

        Near.Figure(1472, 0.5, yieldStress);
        Near.Relative(weight, PipeFlow.StartUpDropPa(1, 0.15, yieldStress), 1e-15);
        Assert.Equal(0, PipeFlow.BinghamFlowM3PerS(weight * 0.999, 1, 0.15, yieldStress, 0.5));
        Assert.True(PipeFlow.BinghamFlowM3PerS(weight * 1.001, 1, 0.15, yieldStress, 0.5) > 0);
    }

    /// <summary>
    /// Source: Coulson and Richardson vol. 1, p. 57-58, Bingham: the derivation as printed, the inputs from memory (tau_y 14.35,
    /// mu_p 0.150, d 40 mm, L 200 m, dP 600 kPa), the result derived from them: X 0.478, Q 4.771e-4 m3/s.
    /// </summary>
    [Fact]
    public void Buckingham_Reiner_gives_the_flow_of_the_Coulson_and_Richardson_example_with_inputs_from_memory()
    {
        Near.Figure(0.478, 0.0005, 14.35 / PipeFlow.WallShearStressPa(600e3, 200, 0.02));
        Near.Figure(4.771e-4, 0.0005e-4, PipeFlow.BinghamFlowM3PerS(600e3, 200, 0.02, 14.35, 0.150));
    }

    /// <summary>
    /// Source: Coulson and Richardson vol. 1, Solutions: where is half of the flow in the plug? Answer derived here: X = (1 +
    /// sqrt 34)/11 = 0.62100. The plug moves with (R·tau_w/(2·mu_p))·(1-X)².
    /// </summary>
    [Fact]
    public void Half_of_a_Bingham_flow_is_in_the_plug_where_the_Coulson_and_Richardson_problem_has_it()
    {
        const double radius = 0.02, wall = 30, viscosity = 0.15;
        Near.Figure(0.62100, 0.000005, HalfInPlug);
        double plugRadius = HalfInPlug * radius;
        double plugSpeed = radius * wall / (2 * viscosity) * (1 - HalfInPlug) * (1 - HalfInPlug);

        double whole = PipeFlow.BinghamFlowM3PerS(2 * 200 * wall / radius, 200, radius, HalfInPlug * wall, viscosity);
        Near.Relative(whole / 2, Math.PI * plugRadius * plugRadius * plugSpeed, 1e-12);
    }

    /// <summary>Source: derived from the Herschel-Bulkley form: dP 4e5, L 10, R 5 mm, tau_y 50, K 2, n 0.5: tau_w 100 Pa, 1902.136 cm3/min.</summary>
    [Fact]
    public void Herschel_Bulkley_keeps_the_flow_once_derived()
    {
        Near.Figure(100, 1e-12, PipeFlow.WallShearStressPa(4e5, 10, 5e-3));
        Near.Figure(1902.136, 0.0005, PipeFlow.HerschelBulkleyFlowM3PerS(4e5, 10, 5e-3, 50, 2, 0.5) * 60e6);
    }

    /// <summary>
    /// Source: lithium grease at about 25 degC, from memory; drops derived: 10 cm3/min through 5 m of 6 mm bore. NLGI 00
    /// 0.485 bar; 1 8.01 bar, start-up 6.30; 2 26.99 bar, start-up 21.67.
    /// </summary>
    [Theory]
    [InlineData(0, 1.85, 1, 0.485, 0.0005, 0)]
    [InlineData(189, 4.1, 0.797, 8.01, 0.005, 6.30)]
    [InlineData(650, 20.6, 0.605, 26.99, 0.005, 21.67)]
    public void Greases_with_values_from_memory_need_the_drops_derived_for_them(double yieldStress, double consistency, double index, double bar, double halfUnit, double startBar)
    {
        const double flow = 10e-6 / 60;
        Near.Figure(startBar, 0.005, PipeFlow.StartUpDropPa(5, 3e-3, yieldStress) / 1e5);
        double drop = PipeFlow.HerschelBulkleyDropPa(flow, 5, 3e-3, yieldStress, consistency, index);
        Near.Figure(bar, halfUnit, drop / 1e5);

        var lubricant = new LubricantProperties(Lubricants.SteadyGrease(yieldStress, consistency, index), 298.15);
        Near.Relative(flow, lubricant.TubeFlowM3PerS(drop, 5, 3e-3), 1e-9);
    }

    /// <summary>Source: the forms themselves: n = 1 makes Herschel-Bulkley Bingham, tau_y = 0 makes Bingham Newtonian.</summary>
    [Theory]
    [InlineData(4e5)]
    [InlineData(2.00001e5)]
    [InlineData(9e7)]
    public void Herschel_Bulkley_falls_together_with_its_special_cases(double dropPa)
    {
        Near.Relative(PipeFlow.BinghamFlowM3PerS(dropPa, 10, 5e-3, 50, 2), PipeFlow.HerschelBulkleyFlowM3PerS(dropPa, 10, 5e-3, 50, 2, 1), 1e-14);
        Near.Relative(PipeFlow.HagenPoiseuilleFlowM3PerS(dropPa, 10, 5e-3, 2), PipeFlow.HerschelBulkleyFlowM3PerS(dropPa, 10, 5e-3, 0, 2, 1), 1e-14);
        Near.Relative(PipeFlow.HagenPoiseuilleFlowM3PerS(dropPa, 10, 5e-3, 2), PipeFlow.BinghamFlowM3PerS(dropPa, 10, 5e-3, 0, 2), 1e-14);
    }

    /// <summary>
    /// Trap: the plain bracket 1 - 4X/3 + X^4/3 loses its digits as X goes to 1, where it is nearly 2·(1-X)²; the form used
    /// keeps them.
    /// </summary>
    [Fact]
    public void Near_standstill_the_stable_bracket_keeps_the_digits_that_the_plain_one_loses()
    {
        // The excess is a power of two, so that the stresses hold it exactly: X differs from 1 by 2^-26 of the whole.
        const double yieldStress = 64, excess = 1.0 / (1 << 20);
        double wall = yieldStress + excess;
        double drop = 2 * wall;
        double free = excess / wall;
        double newtonian = PipeFlow.HagenPoiseuilleFlowM3PerS(drop, 1, 1, 1);
        double series = 2 * free * free * (1 - (2 * free / 3));
        Near.Relative(series, PipeFlow.BinghamFlowM3PerS(drop, 1, 1, yieldStress, 1) / newtonian, 1e-12);
        double x = yieldStress / wall;
        double plain = 1 - (4 * x / 3) + (x * x * x * x / 3);
        Assert.True(Math.Abs(plain - series) > 0.01 * series);
    }

    [Fact]
    public void What_cannot_flow_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PipeFlow.HagenPoiseuilleFlowM3PerS(-1, 1, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PipeFlow.HerschelBulkleyFlowM3PerS(1, 0, 1, 1, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PipeFlow.HerschelBulkleyFlowM3PerS(1, 1, 1, 1, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => PipeFlow.BinghamFlowM3PerS(1, 1, 1, -1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PipeFlow.HerschelBulkleyDropPa(-1, 1, 1, 1, 1, 1));
    }
}
