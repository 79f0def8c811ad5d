using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;
using Xunit;

namespace LubeController.Plant.Tests;

public sealed class BlockedOutletTests
{
    public static TheoryData<int, int> EachPortOfTwinDividers()
    {
        var data = new TheoryData<int, int>();
        for (int n = 3; n <= 11; n++)
        {
            for (int port = 0; port < 2 * n; port++)
                data.Add(n, port);
        }

        return data;
    }

    [Fact]
    public void There_are_126_ports_on_twin_dividers_of_3_to_11_sections() =>
        Assert.Equal(126, EachPortOfTwinDividers().Count);

    [Theory]
    [MemberData(nameof(EachPortOfTwinDividers))]
    public void A_blocked_port_stops_the_piston_that_feeds_it_and_every_later_one(int sections, int port)
    {
        PlantDescription plant = Plants.Twin(sections);
        for (int strokesBefore = 0; strokesBefore < 2 * sections; strokesBefore++)
        {
            Check(plant, port, strokesBefore, midStroke: false);
            Check(plant, port, strokesBefore, midStroke: true);
        }
    }

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(8)]
    [InlineData(12)]
    public void A_blocked_single_outlet_stops_the_first_stroke_into_it(int sections)
    {
        for (int single = 0; single < sections; single++)
        {
            PlantDescription all = Plants.Of([.. Enumerable.Range(1, sections).Select(i => Plants.Section(i, outlets: SectionOutlets.Single))]);
            PlantDescription one = Plants.Of([.. Enumerable.Range(1, sections)
                .Select(i => Plants.Section(i, outlets: i == single + 1 ? SectionOutlets.Single : SectionOutlets.Twin))]);
            for (int strokesBefore = 0; strokesBefore < 2 * sections; strokesBefore++)
            {
                Check(all, single, strokesBefore, midStroke: true);
                Check(one, single, strokesBefore, midStroke: false);
            }
        }
    }

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(8)]
    [InlineData(12)]
    public void A_blocked_joined_outlet_stops_the_first_stroke_into_it(int sections)
    {
        PlantDescription twin = Plants.Twin(sections);
        for (int first = 0; first + 1 < sections; first++)
        {
            foreach (Side side in new[] { Side.L, Side.R })
            {
                DividerDescription divider = twin.Divider with
                {
                    Joins = [new JoinDescription(twin.Divider.Sections[first].Name, twin.Divider.Sections[first + 1].Name, side)],
                };
                PlantDescription plant = twin with { Divider = divider, Outlets = PortGroups.DefaultOutlets(divider) };
                for (int strokesBefore = 0; strokesBefore < 2 * sections; strokesBefore++)
                    Check(plant, side == Side.L ? first : first + sections, strokesBefore, midStroke: strokesBefore % 2 == 0);
            }
        }
    }

    // From all at L the strokes are 1R … NR 1L … NL: stroke k discharges port (N + k) mod 2N.
    private static void Check(PlantDescription plant, int port, int strokesBefore, bool midStroke)
    {
        LubricationSystem system = plant.Running();
        int n = system.SectionCount;
        Assert.Equal(strokesBefore, system.StrokesInOrder(strokesBefore).Count);
        if (midStroke)
            system.AdvanceTo(system.NowUs + 400_000);
        int outlet = system.OutletOf(port % n, port < n ? Side.L : Side.R);
        system.ApplyFault(OutletFaults.Blocked, plant.Outlets[outlet].Name);

        List<string> following = system.StrokesInOrder(10 * n, mostEvents: 1000);

        int expected = 0;
        int stopped = (n + strokesBefore) % (2 * n);
        while (system.OutletOf(stopped % n, stopped < n ? Side.L : Side.R) != outlet)
        {
            expected++;
            stopped = (stopped + 1) % (2 * n);
        }

        Assert.Equal(expected, following.Count);
        Assert.True(following.Count <= (2 * n) - 1);
        Assert.Equal(DividerState.Blocked, system.Status.State);
        Assert.Equal(stopped % n, system.Status.Section);
        Assert.Equal(outlet, system.Status.Outlet);
        Assert.Equal((200 * Plants.Bar) + 20, system.LinePressurePa, 0.1);

        double[] stands = [.. Enumerable.Range(0, n).Select(system.PistonTravel)];
        system.AdvanceTo(system.NowUs + 3_600_000_000);
        Assert.Equal(stands, Enumerable.Range(0, n).Select(system.PistonTravel));
    }
}
