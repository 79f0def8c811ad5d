using System;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Lubricant;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>
/// The table that every tube is at run time, apart from the closed form that it is filled from: its interpolation error, by
/// 10 000 seeded cases each, knots and what lies between them alike.
/// </summary>
public sealed class FlowTableTests
{
    private const int Tables = 100;

    private const int DropsEach = 100;

    // Where a passage passes over half of its limit its flow bends within its half-limit loss, which may be far less than the
    // distance between two knots.
    private const double SaturatedBound = 5e-3;

    private const double LowestPa = 2;

    private const double HighestPa = 5e8;

    [Theory]
    [InlineData(0.5, 1.0, 2e-6)]
    [InlineData(0.2, 0.5, 3e-4)]
    public void A_tube_flows_by_its_table_as_by_its_closed_form(double leastIndex, double mostIndex, double bound)
    {
        var draws = new Draws(20_260_201);
        double worst = 0;
        for (int count = 0; count < Tables; count++)
        {
            Tube tube = Draw(draws, count == 0 ? leastIndex : draws.Between(leastIndex, mostIndex), count % 4 == 0);
            FlowTable table = Filled(tube.Law);
            for (int drop = 0; drop < DropsEach; drop++)
            {
                double dropPa = tube.StartPa + draws.LogBetween(LowestPa, HighestPa);
                worst = Math.Max(worst, Check(table, dropPa, tube.ClosedFormM3PerS(dropPa), bound));
            }
        }

        // A bound that nothing comes near says nothing.
        Assert.InRange(worst, bound / 100, bound);
    }

    // The closed form says what the tube passes at its own drop, and a passage what remains: p = half·q/(limit - q).
    [Theory]
    [InlineData(0.5, 1.0, 1e-5)]
    [InlineData(0.2, 0.5, 3e-4)]
    public void A_tube_behind_a_passage_flows_by_its_table_as_by_both_closed_forms(double leastIndex, double mostIndex, double bound)
    {
        var draws = new Draws(20_260_202);
        double worst = 0;
        double worstSaturated = 0;
        for (int count = 0; count < Tables; count++)
        {
            Tube tube = Draw(draws, count == 0 ? leastIndex : draws.Between(leastIndex, mostIndex), count % 4 == 0);
            double limit = draws.LogBetween(1e-7, 1e-4);
            double half = draws.LogBetween(1e4, 1e7);
            FlowTable table = Filled(new PassageAndTubeLaw(new PassageLaw(limit, half), tube.Law));
            for (int drop = 0; drop < DropsEach; drop++)
            {
                // From the tube's drop to the whole: the passage's limit·p/(p + half) turned round.
                double overTube = tube.StartPa + draws.LogBetween(LowestPa / 10, HighestPa);
                double flow = tube.ClosedFormM3PerS(overTube);
                double whole = overTube + (half * flow / (limit - flow));
                if (flow >= limit || whole - tube.StartPa is < LowestPa or > HighestPa)
                    continue;
                bool saturates = flow > limit / 2;
                double off = Check(table, whole, flow, saturates ? SaturatedBound : bound);
                worst = Math.Max(worst, saturates ? 0 : off);
                worstSaturated = Math.Max(worstSaturated, saturates ? off : 0);
            }
        }

        Assert.InRange(worst, bound / 100, bound);
        Assert.InRange(worstSaturated, SaturatedBound / 100, SaturatedBound);
    }

    /// <summary>Source: a gas that is compressed gives up 1 - (patm/p)^(1/kappa) of its volume, derived from p·V^kappa.</summary>
    [Fact]
    public void Gas_gives_up_by_its_table_as_by_its_law()
    {
        var draws = new Draws(20_260_203);
        double worst = 0;
        for (int count = 0; count < Tables; count++)
        {
            double kappa = draws.Between(1, 1.67);
            FlowTable table = Filled(new GasLaw(kappa));
            for (int drop = 0; drop < DropsEach; drop++)
            {
                double pressurePa = draws.LogBetween(LowestPa, HighestPa);
                // Written so that a small pressure does not cancel.
                double law = -Expm1(-Log1p(pressurePa / Compliance.AtmospherePa) / kappa);
                worst = Math.Max(worst, Check(table, pressurePa, law, 2e-6));
            }
        }

        Assert.InRange(worst, 2e-8, 2e-6);
    }

    [Fact]
    public void Below_its_lowest_pressure_a_straight_line_errs_by_less_than_the_flow_there()
    {
        var draws = new Draws(20_260_204);
        for (int count = 0; count < Tables; count++)
        {
            Tube tube = Draw(draws, draws.Between(0.2, 1), count % 4 == 0);
            FlowTable table = Filled(tube.Law);
            double atLowest = tube.ClosedFormM3PerS(tube.StartPa + LowestPa);
            for (int drop = 0; drop < DropsEach; drop++)
            {
                double dropPa = tube.StartPa + draws.Between(0, LowestPa);
                double off = Math.Abs(table.Flow(dropPa, out _) - tube.ClosedFormM3PerS(dropPa));
                Assert.InRange(off, 0, atLowest * (1 + 1e-6));
            }

            Assert.Equal(0, table.Flow(tube.StartPa, out _));
        }
    }

    private static double Check(FlowTable table, double dropPa, double closedForm, double bound)
    {
        double flow = table.Flow(dropPa, out _);
        Assert.Equal(-flow, table.Flow(-dropPa, out _));
        Near.Relative(closedForm, flow, bound);
        return Math.Abs(flow - closedForm) / closedForm;
    }

    private static FlowTable Filled<TLaw>(TLaw law)
        where TLaw : struct, IFlowLaw
    {
        var table = new FlowTable();
        table.Fill(law);
        return table;
    }

    private static Tube Draw(Draws draws, double index, bool withoutYield) => new(
        draws.LogBetween(0.1, 30), draws.LogBetween(1e-3, 0.02), withoutYield ? 0 : draws.LogBetween(1, 1000), draws.LogBetween(0.5, 200), index);

    // ln(1 + x) and e^x - 1 without cancelling (Kahan, from memory).
    private static double Log1p(double x) => 1 + x == 1 ? x : Math.Log(1 + x) * x / (1 + x - 1);

    private static double Expm1(double x) => Math.Abs(x) < 1e-5 ? x + (x * x / 2) + (x * x * x / 6) : Math.Exp(x) - 1;

    private sealed record Tube(double LengthM, double BoreM, double YieldPa, double Consistency, double Index)
    {
        internal TubeLaw Law { get; } = new(new LubricantProperties(Lubricants.SteadyGrease(YieldPa, Consistency, Index), 298.15), LengthM, BoreM);

        internal double StartPa => Law.StartPa;

        internal double ClosedFormM3PerS(double dropPa) =>
            PipeFlow.HerschelBulkleyFlowM3PerS(dropPa, LengthM, BoreM / 2, YieldPa, Consistency, Index);
    }
}
