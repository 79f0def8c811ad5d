using System;
using System.Linq;
using LubeController.Tests.Support.Fluids;
using MathNet.Numerics;
using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;
using Xunit;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>
/// The closed forms of pipe flow held against MathNet.Numerics: quadrature of the velocity profile and of the flow law,
/// root finding and polynomial roots for the inverses. 10 000 seeded cases each, X = tau_y/tau_w up to 0.99.
/// </summary>
public sealed class QuadratureTests
{
    private const int Cases = 10_000;

    /// <summary>What is demanded of the closed forms, relative.</summary>
    private const double Bound = 1e-9;

    /// <summary>What the quadrature is worth by itself, relative: two rules and two orders agree to this.</summary>
    private const double QuadratureBound = 1e-11;

    [Fact]
    public void Herschel_Bulkley_flow_is_that_of_its_velocity_profile()
    {
        var draws = new Draws(20_260_101);
        for (int count = 0; count < Cases; count++)
        {
            Case one = Draw(draws, count);
            double reference = ProfileFlow(one, order: 64);
            Near.Relative(reference, ProfileFlow(one, order: 96), QuadratureBound);
            Near.Relative(reference, PipeFlow.HerschelBulkleyFlowM3PerS(one.DropPa, one.LengthM, one.RadiusM, one.YieldPa, one.Consistency, one.Index), Bound);
        }
    }

    /// <summary>
    /// The same by another road: Q = pi·integral of r²·(shear rate), from the flow law alone, by a rule (double exponential)
    /// that does not mind the end where the shear rate begins.
    /// </summary>
    [Fact]
    public void Herschel_Bulkley_flow_is_that_of_its_flow_law()
    {
        var draws = new Draws(20_260_102);
        for (int count = 0; count < Cases; count++)
        {
            Case one = Draw(draws, count);
            double reference = LawFlow(one);
            Near.Relative(ProfileFlow(one, order: 64), reference, QuadratureBound);
            Near.Relative(reference, PipeFlow.HerschelBulkleyFlowM3PerS(one.DropPa, one.LengthM, one.RadiusM, one.YieldPa, one.Consistency, one.Index), Bound);
        }
    }

    [Fact]
    public void Bingham_flow_is_that_of_its_velocity_profile()
    {
        var draws = new Draws(20_260_103);
        for (int count = 0; count < Cases; count++)
        {
            Case one = Draw(draws, count) with { Index = 1 };
            Near.Relative(ProfileFlow(one, order: 64), PipeFlow.BinghamFlowM3PerS(one.DropPa, one.LengthM, one.RadiusM, one.YieldPa, one.Consistency), Bound);
        }
    }

    [Fact]
    public void Hagen_Poiseuille_flow_is_that_of_its_velocity_profile()
    {
        var draws = new Draws(20_260_104);
        for (int count = 0; count < Cases; count++)
        {
            Case one = Draw(draws, count) with { Index = 1, YieldPa = 0 };
            double flow = ProfileFlow(one, order: 64);
            Near.Relative(flow, PipeFlow.HagenPoiseuilleFlowM3PerS(one.DropPa, one.LengthM, one.RadiusM, one.Consistency), Bound);
            Near.Relative(one.DropPa, PipeFlow.HagenPoiseuilleDropPa(flow, one.LengthM, one.RadiusM, one.Consistency), Bound);
        }
    }

    /// <summary>
    /// The drop for a flow, against Brent's method on the quadrature: what exceeds the start-up drop is compared, which is
    /// the harder part.
    /// </summary>
    [Fact]
    public void The_drop_for_a_Herschel_Bulkley_flow_is_the_root_that_Brent_finds()
    {
        var draws = new Draws(20_260_105);
        for (int count = 0; count < Cases; count++)
        {
            Case one = Draw(draws, count);
            double flow = ProfileFlow(one, order: 64);
            double start = PipeFlow.StartUpDropPa(one.LengthM, one.RadiusM, one.YieldPa);
            double log = Math.Log(one.DropPa - start);
            double Off(double logExcess) => Math.Log(ProfileFlow(one with { DropPa = start + Math.Exp(logExcess) }, order: 64) / flow);
            double excess = Math.Exp(Brent.FindRoot(Off, log - 0.7, log + 0.9, 1e-13, 200));
            double found = PipeFlow.HerschelBulkleyDropPa(flow, one.LengthM, one.RadiusM, one.YieldPa, one.Consistency, one.Index);
            Near.Relative(excess, found - start, Bound);
        }
    }

    /// <summary>
    /// The drop for a Bingham flow, against the largest root of the quartic that Buckingham-Reiner is in tau_w:
    /// tau_w^4 - (4·tau_y/3 + 4·mu·Q/(pi·R³))·tau_w³ + tau_y^4/3 = 0.
    /// </summary>
    [Fact]
    public void The_drop_for_a_Bingham_flow_is_the_root_of_its_quartic()
    {
        var draws = new Draws(20_260_106);
        for (int count = 0; count < Cases; count++)
        {
            Case one = Draw(draws, count) with { Index = 1 };
            double flow = ProfileFlow(one, order: 64);
            double wall = PipeFlow.WallShearStressPa(one.DropPa, one.LengthM, one.RadiusM);
            double x = one.YieldPa / wall;
            double rate = 4 * one.Consistency * flow / (Math.PI * one.RadiusM * one.RadiusM * one.RadiusM * wall);
            double root = FindRoots.Polynomial([x * x * x * x / 3, 0, 0, -((4 * x / 3) + rate), 1])
                .Where(candidate => Math.Abs(candidate.Imaginary) < 1e-6).Max(candidate => candidate.Real);
            double found = PipeFlow.BinghamDropPa(flow, one.LengthM, one.RadiusM, one.YieldPa, one.Consistency);
            Near.Relative(root, PipeFlow.WallShearStressPa(found, one.LengthM, one.RadiusM) / wall, Bound);
        }
    }

    /// <summary>The inverse undoes the flow from hardly moving to fast, where no quadrature is needed to judge.</summary>
    [Fact]
    public void The_drop_for_a_flow_drives_that_flow_down_to_a_millionth_beyond_standstill()
    {
        var draws = new Draws(20_260_107);
        for (int count = 0; count < Cases; count++)
        {
            Case one = Draw(draws, count);
            double flow = draws.LogBetween(1e-12, 1e-3);
            double drop = PipeFlow.HerschelBulkleyDropPa(flow, one.LengthM, one.RadiusM, one.YieldPa, one.Consistency, one.Index);
            double start = PipeFlow.StartUpDropPa(one.LengthM, one.RadiusM, one.YieldPa);

            // The drop itself is rounded: that much of what exceeds the start-up drop is lost before the flow is computed.
            double lost = 1e-15 * drop / (drop - start);
            if (lost < 1e-9)
                Near.Relative(flow, PipeFlow.HerschelBulkleyFlowM3PerS(drop, one.LengthM, one.RadiusM, one.YieldPa, one.Consistency, one.Index), 1e-13 + (10 * lost));
        }
    }

    private static Case Draw(Draws draws, int count)
    {
        double x = count % 20 == 0 ? 0 : 1 - draws.LogBetween(0.01, 0.999);
        double wall = draws.LogBetween(1, 1e5);
        double length = draws.LogBetween(0.1, 50);
        double radius = draws.LogBetween(2e-4, 2e-2);
        return new Case(2 * length * wall / radius, length, radius, x * wall, draws.LogBetween(1e-3, 1e3), draws.Between(0.2, 1));
    }

    /// <summary>
    /// pi·Rp²·u_plug + 2·pi·integral of r·u(r) from the plug to the wall. In parts of the sheared ring, s from 0 at the plug to
    /// 1 at the wall, u = u_plug·(1 - s^(1+1/n)); s = v^4 makes the integrand smooth at the plug, where Gauss-Legendre needs it.
    /// </summary>
    private static double ProfileFlow(Case one, int order)
    {
        double wall = one.DropPa * one.RadiusM / (2 * one.LengthM);
        double excess = wall - one.YieldPa;
        double power = 1 + (1 / one.Index);
        double ring = one.RadiusM * excess / wall;
        double plug = one.RadiusM * one.YieldPa / wall;
        double plugSpeed = ring * Math.Pow(excess / one.Consistency, 1 / one.Index) / power;
        double sheared = GaussLegendreRule.Integrate(
            v =>
            {
                double s = v * v * v * v;
                return (plug + (ring * s)) * (1 - Math.Pow(s, power)) * 4 * v * v * v;
            },
            0,
            1,
            order);
        return Math.PI * plugSpeed * ((plug * plug) + (2 * ring * sheared));
    }

    private static double LawFlow(Case one)
    {
        double wall = one.DropPa * one.RadiusM / (2 * one.LengthM);
        double excess = wall - one.YieldPa;
        double ring = one.RadiusM * excess / wall;
        double plug = one.RadiusM * one.YieldPa / wall;
        double integral = DoubleExponentialTransformation.Integrate(
            s => Math.Pow(s, 1 / one.Index) * (plug + (ring * s)) * (plug + (ring * s)) / (one.RadiusM * one.RadiusM),
            0,
            1,
            1e-14);
        return Math.PI * one.RadiusM * one.RadiusM * ring * Math.Pow(excess / one.Consistency, 1 / one.Index) * integral;
    }

    private sealed record Case(double DropPa, double LengthM, double RadiusM, double YieldPa, double Consistency, double Index);
}
