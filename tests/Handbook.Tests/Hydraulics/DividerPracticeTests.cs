using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Handbook.Tests.Fluids;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Handbook.Tests.Hydraulics;

/// <summary>What everybody in the trade knows of a series-progressive divider. Source of each: common practice, no work to name.</summary>
public sealed class DividerPracticeTests
{
    /// <summary>Common practice: all pistons shifted one way are half a cycle, all shifted back a full one; then it repeats.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(11)]
    public void With_all_pistons_shifted_one_way_it_has_made_half_a_cycle_and_with_all_back_a_full_one(int sections)
    {
        LubricationSystem system = HandbookPlants.Of(12, [.. Enumerable.Repeat(0.2, sections)]).Running();
        var order = new List<string>();
        for (int cycle = 0; cycle < 3; cycle++)
        {
            AllStandAt(system, 0);
            int from = order.Count;
            Follow(system, order, sections);
            AllStandAt(system, 1);
            Follow(system, order, sections);
            AllStandAt(system, 0);
            Near.Relative(system.FullCycleVolumeM3 * (cycle + 1), system.DisplacedM3, 1e-6);
            Assert.Equal(order.Take(2 * sections), order.Skip(from));
        }

        Assert.Equal([.. Enumerable.Range(1, sections).Select(i => $"{i}R"), .. Enumerable.Range(1, sections).Select(i => $"{i}L")], order.Take(2 * sections));
    }

    /// <summary>Common practice: most pistons shift on a few bar to some tens of bar; 200 psi (13.8 bar) is an upper figure for most.</summary>
    [Fact]
    public void The_plants_of_the_repository_shift_on_a_few_bar_to_some_tens_and_most_of_them_below_13_8()
    {
        double[] breakaways =
        [
            .. Directory.GetFiles(Path.Combine(Repository.Root, "hil-scripts", "plants"), "*.plant.yaml")
                .SelectMany(path => Read(path).AllSections).Select(section => section.BreakawayPa / HandbookPlants.Bar),
            new SectionDescription { Name = "preset", VolumePerStrokeM3 = 1e-7 }.BreakawayPa / HandbookPlants.Bar,
        ];
        Assert.True(breakaways.Length > 5);
        Assert.All(breakaways, bar => Assert.InRange(bar, 2, 50));
        Assert.True(breakaways.Count(bar => bar <= 13.8) > breakaways.Length / 2);
    }

    /// <summary>Common practice, the same; derived: a piston moves at the pressure that it needs and what its point holds against it.</summary>
    [Theory]
    [InlineData(3, 0)]
    [InlineData(13.8, 0)]
    [InlineData(13.8, 25)]
    [InlineData(40, 10)]
    public void A_piston_shifts_at_its_own_pressure_and_its_point_s(double breakawayBar, double backBar)
    {
        PlantDescription plant = HandbookPlants.Of(12, [0.2, 0.2, 0.2], breakawayBar: breakawayBar).BackPressure("1R", backBar);
        LubricationSystem system = plant.Running();
        double highest = 0;
        while (system.PistonTravel(0) < 0.5)
        {
            system.Step();
            highest = Math.Max(highest, system.LinePressurePa);
        }

        // In the passages some pascals are lost besides.
        Assert.Equal((breakawayBar + backBar) * HandbookPlants.Bar, highest, 100.0);
    }

    /// <summary>Common practice: a plugged or blocked outlet stops every piston. So also Neale, Tribology Handbook, C15.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(7)]
    [InlineData(11)]
    public void One_blocked_outlet_stops_every_piston(int sections)
    {
        PlantDescription plant = HandbookPlants.Of(12, [.. Enumerable.Repeat(0.2, sections)]);
        foreach (OutletDescription outlet in plant.Outlets)
        {
            LubricationSystem system = plant.Running();
            system.AfterStrokes(2 * sections);
            system.ApplyFault(OutletFaults.Blocked, outlet.Name);
            system.AdvanceTo(system.NowUs + 120_000_000);
            double[] travels = [.. Enumerable.Range(0, sections).Select(system.PistonTravel)];
            long strokes = system.TotalStrokes;
            system.AdvanceTo(system.NowUs + 3_600_000_000);

            Assert.Equal(strokes, system.TotalStrokes);
            Assert.True(strokes < 4 * sections);
            Assert.Equal(travels, Enumerable.Range(0, sections).Select(system.PistonTravel));
            Assert.Equal(DividerState.Blocked, system.Status.State);
        }
    }

    /// <summary>Common practice: three sections or more, eleven is not unusual.</summary>
    [Fact]
    public void Two_sections_make_no_divider_and_eleven_do()
    {
        Assert.NotEmpty(PlantCheck.Refusals(HandbookPlants.Of(12, [0.2, 0.2])));
        Assert.Empty(PlantCheck.Refusals(HandbookPlants.Of(12, [0.2, 0.2, 0.2])));
        Assert.Empty(PlantCheck.Refusals(HandbookPlants.Of(12, [.. Enumerable.Repeat(0.2, 11)])));
    }

    /// <summary>
    /// Common practice: unused outlets are plugged only where their volume is joined to another outlet. Plugged without, they
    /// stop the divider.
    /// </summary>
    [Fact]
    public void An_outlet_may_be_plugged_only_where_its_volume_is_joined_to_another()
    {
        PlantDescription twin = HandbookPlants.Of(12, [0.2, 0.3, 0.4]);
        LubricationSystem plugged = twin.Running();
        plugged.ApplyFault(OutletFaults.Blocked, "2R");
        plugged.AdvanceTo(120_000_000);
        Assert.True(plugged.TotalStrokes < 6);

        // Within the section, to its other side.
        LubricationSystem single = HandbookPlants.Of(12, [0.2, 0.3, 0.4], "tst").Running();
        single.AfterStrokes(6);
        Near.Relative(0.6 * HandbookPlants.Cm3, single.OutletDeliveredM3(single.FindOutlet("2L")), 1e-4);
        Assert.Equal(-1, single.FindOutlet("2R"));

        // To the neighbour on the same side.
        DividerDescription divider = twin.Divider with { Joins = [new JoinDescription("2", "3", Side.R)] };
        LubricationSystem joined = (twin with { Divider = divider, Outlets = PortGroups.DefaultOutlets(divider) }).Running();
        joined.AfterStrokes(6);
        Near.Relative(0.7 * HandbookPlants.Cm3, joined.OutletDeliveredM3(joined.FindOutlet("2R")), 1e-4);
        Near.Relative(0.3 * HandbookPlants.Cm3, joined.OutletDeliveredM3(joined.FindOutlet("2L")), 1e-4);
    }

    // The next piston leaves its end in the same microsecond in which the last one arrives.
    private static void AllStandAt(LubricationSystem system, double travel) =>
        Assert.All(Enumerable.Range(0, system.SectionCount), section => Assert.Equal(travel, system.PistonTravel(section), 1e-6));

    private static void Follow(LubricationSystem system, List<string> order, int strokes)
    {
        for (int stroke = 0; stroke < strokes; stroke++)
        {
            long[] before = Counts(system);
            system.AfterStrokes(system.TotalStrokes + 1);
            int moved = Counts(system).Zip(before).Select((pair, port) => (pair, port)).Single(both => both.pair.First > both.pair.Second).port;
            order.Add($"{(moved / 2) + 1}{(moved % 2 == 0 ? "L" : "R")}");
        }
    }

    private static long[] Counts(LubricationSystem system) =>
        [.. Enumerable.Range(0, system.SectionCount).SelectMany(section => new[] { system.Strokes(section, Side.L), system.Strokes(section, Side.R) })];

    private static PlantDescription Read(string path)
    {
        var problems = new ProblemList();
        LoadedPlant? plant = PlantReader.Read(path, problems);
        Assert.Empty(problems.All.Select(problem => problem.ToString()));
        return plant!.Plant;
    }
}
