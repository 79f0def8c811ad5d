using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Pistons;
using Xunit;

namespace LubeController.Plant.Tests;

/// <summary>The counts were derived outside this project, by two simulations of the same ring with exact fractions.</summary>
public sealed class WaveTests
{
    [Theory]
    [InlineData(3, 6, 0, 2)]
    [InlineData(7, 112, 14, 2)]
    [InlineData(11, 1210, 836, 2)]
    [InlineData(12, 2136, 1960, 0)]
    public void All_end_positions_settle_to_one_wave_or_keep_several_or_lock(int sections, int one, int several, int locked)
    {
        int[] found = new int[3];
        for (int start = 0; start < 1 << sections; start++)
        {
            LubricationSystem system = Started(sections, start);
            Settle(system);
            if (system.Status.State == DividerState.HydraulicallyLocked)
                found[2]++;
            else if (system.Waves == 1)
                found[0]++;
            else
                found[1]++;
        }

        Assert.Equal([one, several, locked], found);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(9)]
    public void With_all_pistons_at_ends_the_number_of_waves_is_odd(int sections)
    {
        for (int start = 0; start < 1 << sections; start++)
        {
            var system = new LubricationSystem(Plants.Twin(sections).Starting(Ends(sections, start)), 1);
            Assert.Equal(1, system.Waves % 2);
        }
    }

    [Fact]
    public void Only_all_mismatched_pistons_leaving_in_an_exact_tie_lock()
    {
        // L R L sends each piston of three away from where it stands.
        LubricationSystem tie = Plants.Twin(3).Starting(0, 1, 0).Running();
        tie.Exhaust(60_000_000);
        Assert.Equal(DividerState.HydraulicallyLocked, tie.Status.State);
        Assert.Equal(0, tie.TotalStrokes);

        PlantDescription uneven = Plants.Of(Plants.Section(1) with { BreakawayPa = 4e5 }, Plants.Section(2), Plants.Section(3));
        LubricationSystem first = uneven.Starting(0, 1, 0).Running();
        Assert.Equal(3, first.Waves);
        first.AdvanceTo(60_000_000);
        Assert.Equal(1, first.Waves);
        Assert.True(first.TotalStrokes > 20);
    }

    // Strokes in the first 60 s and waves left, from a simulation of the same ring with exact fractions. Each of these
    // starts has pistons that arrive in an exact tie although their positions are sums of tenths.
    [Theory]
    [InlineData("0.9 0 0.1 0.4 0", 59, 1)]
    [InlineData("1 0.8 0.4 0 0.8 0.1 0.7 0", 60, 1)]
    [InlineData("0 0.1 0.7 0.1 0.1 1 0 0.3 0.4", 60, 1)]
    [InlineData("1 0.4 0 0.5 1 1 1 0.9 0.5", 59, 3)]
    public void Ties_stay_ties_although_positions_are_rounded(string travels, long strokes, int waves)
    {
        double[] start = [.. travels.Split(' ').Select(t => double.Parse(t, System.Globalization.CultureInfo.InvariantCulture))];
        LubricationSystem system = Plants.Twin(start.Length).Starting(start).Running();
        system.AdvanceTo(60_000_000);

        Assert.Equal(strokes, system.TotalStrokes);
        Assert.Equal(waves, system.Waves);
    }

    [Fact]
    public void Pistons_of_equal_need_share_the_flow_by_weight()
    {
        // From this start 6 sends 1 left, 2 sends 3 right and 4 sends 5 left, all at once.
        LubricationSystem system = Six(i => i with { FlowShare = i.Name == "3" ? 3 : 1 }).Running();
        system.AdvanceTo(100_000);

        Assert.Equal(3, system.Waves);
        Assert.Equal(2.4 * Plants.Cm3PerMin, Flow(system, "1L"), 1e-13);
        Assert.Equal(7.2 * Plants.Cm3PerMin, Flow(system, "3R"), 1e-13);
        Assert.Equal(2.4 * Plants.Cm3PerMin, Flow(system, "5L"), 1e-13);
    }

    [Fact]
    public void The_piston_that_needs_least_goes_first()
    {
        LubricationSystem system = Six(i => i with { BreakawayPa = i.Name == "5" ? 4e5 : 5e5 }).Running();
        system.AdvanceTo(100_000);

        Assert.Equal(12 * Plants.Cm3PerMin, Flow(system, "5L"), 1e-12);
        Assert.Equal(0, Flow(system, "1L"));
        Assert.Equal(0, Flow(system, "3R"));
        Assert.Equal(4e5, system.LinePressurePa, 10.0);
    }

    private static PlantDescription Six(Func<SectionDescription, SectionDescription> change) =>
        Plants.Of([.. Enumerable.Range(1, 6).Select(i => change(Plants.Section(i)))]).Starting(1, 1, 0, 0, 1, 1);

    private static double Flow(LubricationSystem system, string outlet) => system.OutletFlowM3PerS(system.FindOutlet(outlet));

    internal static double[] Ends(int sections, int bits) =>
        [.. Enumerable.Range(0, sections).Select(i => (double)((bits >> i) & 1))];

    private static LubricationSystem Started(int sections, int bits) => Plants.Twin(sections).Starting(Ends(sections, bits)).Running();

    /// <summary>Runs until the state repeats: then the number of waves no longer changes.</summary>
    private static void Settle(LubricationSystem system)
    {
        var seen = new HashSet<string>();
        while (system.NextEventUs != long.MaxValue && system.Waves > 1 && seen.Add(State(system)))
        {
            // A step of the network need not be one of the divider: on to the next stroke, or to where nothing moves.
            long strokes = system.TotalStrokes;
            for (int steps = 0; steps < 100 && system.TotalStrokes == strokes && system.NextEventUs != long.MaxValue; steps++)
                system.AdvanceTo(system.NextEventUs);
        }

        if (system.Waves > 1)
            Assert.NotEqual(DividerState.Idle, system.Status.State);
    }

    private static string State(LubricationSystem system)
    {
        var text = new StringBuilder();
        for (int i = 0; i < system.SectionCount; i++)
        {
            text.Append(Math.Round(system.PistonTravel(i), 5)).Append(system.Strokes(i, Side.L) - system.Strokes(i, Side.R)).Append('/');
            text.Append(system.OutletFlowM3PerS(system.OutletOf(i, Side.L)) > 0).Append(system.OutletFlowM3PerS(system.OutletOf(i, Side.R)) > 0);
        }

        return text.ToString();
    }
}
