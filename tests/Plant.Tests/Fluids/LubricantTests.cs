using System;
using CsCheck;
using LubeController.Plant.Lubricant;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Plant.Tests.Fluids;

/// <summary>The tables of a lubricant held against the closed forms that they stand for.</summary>
public sealed class LubricantTests
{
    private const int Cases = 10_000;

    /// <summary>Stated by <see cref="LubricantProperties"/>: against the closed form with the same yield stress and consistency.</summary>
    private const double FlowBound = 1e-9;

    private static readonly Gen<double> LogShear = Gen.Double[-9, 9];

    private static readonly Gen<(double Yield, double Consistency, double Index)> Greases =
        Gen.Select(Gen.Double[0, 4], Gen.Double[-2, 3], Gen.Double[0.2, 1]).Select((yield, consistency, n) => (Math.Pow(10, yield), Math.Pow(10, consistency), n));

    [Fact]
    public void A_tabulated_power_is_within_its_bound_of_the_power_over_eighteen_decades()
    {
        Gen.Select(Gen.Double[1, 5], LogShear.Array[50]).Sample(
            (power, logs) =>
            {
                Func<double, double> table = Power(power);
                foreach (double log in logs)
                {
                    double x = Math.Pow(10, log);
                    AssertClose(Math.Pow(x, power), table(x), FlowBound);
                }
            },
            iter: 200);
    }

    [Fact]
    public void A_tabulated_power_rises_from_one_octave_to_the_next()
    {
        Gen.Double[1, 5].Sample(
            power =>
            {
                Func<double, double> table = Power(power);
                for (int exponent = -100; exponent < 100; exponent++)
                {
                    double edge = Math.ScaleB(1, exponent);
                    Assert.True(table(edge * (1 - 1e-12)) < table(edge));
                    Assert.True(table(edge) < table(edge * (1 + 1e-12)));
                }
            },
            iter: 50);
    }

    [Fact]
    public void Flow_by_table_is_within_its_bound_of_the_closed_form()
    {
        Gen.Select(Greases, Gen.Double[-8, 3], Gen.Double[1, 10], Gen.Double[1e-3, 1e-2]).Sample(
            (grease, logExcess, length, radius) =>
            {
                var lubricant = new LubricantProperties(Lubricants.SteadyGrease(grease.Yield, grease.Consistency, grease.Index), 298.15);
                double drop = lubricant.StartUpDropPa(length, radius) * (1 + Math.Pow(10, logExcess));
                double closed = PipeFlow.HerschelBulkleyFlowM3PerS(drop, length, radius, grease.Yield, grease.Consistency, grease.Index);
                AssertClose(closed, lubricant.TubeFlowM3PerS(drop, length, radius), FlowBound);
            },
            iter: Cases);
    }

    [Fact]
    public void A_power_law_fluid_a_Bingham_fluid_and_an_oil_flow_as_their_closed_forms_say()
    {
        Gen.Select(Greases, Gen.Double[0, 7]).Sample(
            (grease, logDrop) =>
            {
                double drop = Math.Pow(10, logDrop);
                AssertClose(
                    PipeFlow.HerschelBulkleyFlowM3PerS(drop, 5, 3e-3, 0, grease.Consistency, grease.Index),
                    new LubricantProperties(Lubricants.SteadyGrease(0, grease.Consistency, grease.Index), 298.15).TubeFlowM3PerS(drop, 5, 3e-3),
                    FlowBound);
                AssertClose(
                    PipeFlow.BinghamFlowM3PerS(drop, 5, 3e-3, grease.Yield, grease.Consistency),
                    new LubricantProperties(Lubricants.SteadyGrease(grease.Yield, grease.Consistency, 1), 298.15).TubeFlowM3PerS(drop, 5, 3e-3),
                    1e-14);
                double viscosity = Math.Clamp(grease.Consistency, 1e-3, 8);
                AssertClose(
                    PipeFlow.HagenPoiseuilleFlowM3PerS(drop, 5, 3e-3, viscosity),
                    new LubricantProperties(Lubricants.NewtonianOil(viscosity), 298.15).TubeFlowM3PerS(drop, 5, 3e-3),
                    1e-14);
            },
            iter: 1000);
    }

    [Fact]
    public void Nothing_flows_up_to_the_start_up_drop_and_more_drop_never_gives_less_flow()
    {
        Gen.Select(Greases, Gen.Double[-6, 2], Gen.Double[-11, 1]).Sample(
            (grease, logExcess, logStep) =>
            {
                var lubricant = new LubricantProperties(Lubricants.SteadyGrease(grease.Yield, grease.Consistency, grease.Index), 298.15);
                double start = lubricant.StartUpDropPa(5, 3e-3);
                Assert.Equal(0, lubricant.TubeFlowM3PerS(start * (1 - 1e-15), 5, 3e-3));
                Assert.Equal(0, lubricant.TubeFlowM3PerS(0, 5, 3e-3));
                double low = start * (1 + Math.Pow(10, logExcess));
                double high = low * (1 + Math.Pow(10, logStep));
                Assert.True(lubricant.TubeFlowM3PerS(low, 5, 3e-3) < lubricant.TubeFlowM3PerS(high, 5, 3e-3));
            },
            iter: Cases);
    }

    [Fact]
    public void The_slope_is_the_derivative_of_the_flow()
    {
        Gen.Select(Greases, Gen.Double[-2, 2]).Sample(
            (grease, logExcess) =>
            {
                var lubricant = new LubricantProperties(Lubricants.SteadyGrease(grease.Yield, grease.Consistency, grease.Index), 298.15);
                double start = lubricant.StartUpDropPa(5, 3e-3);
                double drop = start * (1 + Math.Pow(10, logExcess));
                double step = (drop - start) * 1e-4;
                lubricant.TubeFlowM3PerS(drop, 5, 3e-3, out double slope);
                double difference = lubricant.TubeFlowM3PerS(drop + step, 5, 3e-3) - lubricant.TubeFlowM3PerS(drop - step, 5, 3e-3);
                AssertClose(difference / (2 * step), slope, 1e-6);
            },
            iter: 1000);
    }

    [Fact]
    public void Asking_and_warming_allocate_nothing()
    {
        var lubricant = new LubricantProperties(Lubricants.SteadyGrease(189, 4.1, 0.797) with { YieldCoefficientPerK = GreaseDescription.AssumedYieldCoefficientPerK }, 298.15);
        double sum = Warmed(lubricant, 10);
        long before = GC.GetAllocatedBytesForCurrentThread();
        sum += Warmed(lubricant, 1000);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.True(sum > 0);
    }

    /// <summary>A power-law fluid in a tube so wide and short that its flow is the power of the drop, times a constant.</summary>
    private static Func<double, double> Power(double power)
    {
        double n = 1 / power;
        var lubricant = new LubricantProperties(Lubricants.SteadyGrease(0, 1, n), 298.15);
        double scale = ((3 * n) + 1) / (Math.PI * n);
        return x => lubricant.TubeFlowM3PerS(x, 0.5, 1) * scale;
    }

    private static double Warmed(LubricantProperties lubricant, int times)
    {
        double sum = 0;
        for (int turn = 0; turn < times; turn++)
        {
            lubricant.SetTemperature(280 + (0.05 * turn));
            sum += lubricant.TubeFlowM3PerS(1e6 + turn, 5, 3e-3);
        }

        return sum;
    }

    private static void AssertClose(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Abs(expected), FormattableString.Invariant($"{actual:R} for {expected:R}"));
}
