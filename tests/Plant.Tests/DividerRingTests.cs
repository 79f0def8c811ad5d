using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;
using Xunit;

namespace LubeController.Plant.Tests;

public sealed class DividerRingTests
{
    // Events are looked at on whole microseconds: in one, 12 cm3/min move this much, and raise 20 cm3 at 1.4 GPa by 14 Pa.
    private const double OneUsM3 = 2e-13;

    private const double OneUsPa = 14.1;

    // What is stored drives a piston at the stroke limit of 10 cm3/s: in one microsecond 20 cm3 at 1.4 GPa fall by 700 Pa.
    private const double OneUsAtTheLimitPa = 710;

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(12)]
    public void Pistons_stroke_one_after_another_all_one_way_then_all_back(int sections)
    {
        LubricationSystem system = Plants.Twin(sections).Running();

        string[] expected =
        [
            .. Enumerable.Range(1, sections).Select(i => i + "R"),
            .. Enumerable.Range(1, sections).Select(i => i + "L"),
            .. Enumerable.Range(1, sections).Select(i => i + "R"),
        ];
        Assert.Equal(expected, system.StrokesInOrder(3 * sections));
        Assert.Equal(1, system.Waves);
    }

    [Fact]
    public void With_all_at_R_the_last_sends_the_first_left()
    {
        LubricationSystem system = Plants.Twin(3).Starting(1, 1, 1).Running();

        Assert.Equal(["1L", "2L", "3L", "1R"], system.StrokesInOrder(4));
    }

    [Fact]
    public void A_stroke_delivers_its_volume_at_the_port_that_it_moves_to()
    {
        LubricationSystem system = Plants.Of(Plants.Section(1, 1e-7), Plants.Section(2, 2e-7), Plants.Section(3, 3e-7)).Running();

        system.StrokesInOrder(6);

        Assert.Equal(1e-7, system.OutletDeliveredM3(system.FindOutlet("1R")), OneUsM3);
        Assert.Equal(1e-7, system.OutletDeliveredM3(system.FindOutlet("1L")), OneUsM3);
        Assert.Equal(3e-7, system.OutletDeliveredM3(system.FindOutlet("3L")), OneUsM3);
        Assert.Equal(12e-7, system.FullCycleVolumeM3, OneUsM3);
        Assert.Equal(12e-7, system.DisplacedM3, OneUsM3);
    }

    [Fact]
    public void Four_sections_two_twin_and_two_single_feed_six_points()
    {
        LubricationSystem system = Plants.Of(
            Plants.Section(1),
            Plants.Section(2, outlets: SectionOutlets.Single),
            Plants.Section(3),
            Plants.Section(4, outlets: SectionOutlets.Single)).Running();

        system.StrokesInOrder(8);

        Assert.Equal(6, system.OutletCount);
        double[] delivered = [.. Enumerable.Range(0, 6).Select(i => system.OutletDeliveredM3(i) / Plants.Cm3)];
        Assert.Equal([0.2, 0.4, 0.2, 0.4, 0.2, 0.2], delivered.Select(v => System.Math.Round(v, 6)));
    }

    [Fact]
    public void A_join_connects_one_side_of_two_neighbours_and_leaves_the_other()
    {
        PlantDescription plant = Plants.Twin(3);
        DividerDescription divider = plant.Divider with { Joins = [new JoinDescription("1", "2", Side.R)] };
        LubricationSystem system = (plant with { Divider = divider, Outlets = PortGroups.DefaultOutlets(divider) }).Running();

        system.StrokesInOrder(6);

        Assert.Equal(["1L", "2L", "3L", "1R", "3R"], system.Description.Outlets.Select(o => o.Name));
        Assert.Equal(0.4, system.OutletDeliveredM3(system.FindOutlet("1R")) / Plants.Cm3, 6);
        Assert.Equal(0.2, system.OutletDeliveredM3(system.FindOutlet("2L")) / Plants.Cm3, 6);
        Assert.Equal(system.OutletOf(0, Side.R), system.OutletOf(1, Side.R));
    }

    [Fact]
    public void Back_pressure_raises_the_pressure_at_which_that_piston_strokes()
    {
        PlantDescription plant = Plants.Twin(3);
        OutletDescription[] outlets = [.. plant.Outlets.Select(o => o.Name == "2R" ? o with { BackPressurePa = 30 * Plants.Bar } : o)];
        LubricationSystem system = (plant with { Outlets = outlets }).Running();

        system.StrokesInOrder(1);
        double while1 = system.LinePressurePa;
        system.StrokesInOrder(1);

        Assert.Equal(5 * Plants.Bar, while1, OneUsPa);
        Assert.Equal(35 * Plants.Bar, system.LinePressurePa, OneUsAtTheLimitPa);
    }

    [Fact]
    public void A_piston_that_needs_less_than_the_line_holds_strokes_from_what_is_stored()
    {
        // 20 cm3 at 0.1 GPa hold 0.2 cm3 per 10 bar: piston 3 needs 30 bar less than piston 2 and finds its stroke stored.
        PlantDescription plant = Plants.Twin(3) with { Line = new LineDescription { VolumeM3 = 20 * Plants.Cm3, BulkModulusPa = 1e8 } };
        OutletDescription[] outlets = [.. plant.Outlets.Select(o => o.Name == "2R" ? o with { BackPressurePa = 30 * Plants.Bar } : o)];
        LubricationSystem system = (plant with { Outlets = outlets }).Running();
        system.StrokesInOrder(2);

        long from = system.NowUs;
        system.SetPumpContact(false);
        system.StrokesInOrder(1);

        // 0.2 cm3 at the stroke limit of 10 cm3/s.
        Assert.InRange(system.NowUs - from, 20_000, 20_010);
        Assert.Equal(25 * Plants.Bar, system.LinePressurePa, 300.0);
    }

    [Fact]
    public void With_the_pump_off_pistons_run_on_until_the_stored_volume_is_used()
    {
        PlantDescription plant = Plants.Twin(3) with { Line = new LineDescription { VolumeM3 = 20 * Plants.Cm3, BulkModulusPa = 1e8 } };
        OutletDescription[] outlets = [.. plant.Outlets.Select(o => o.Name == "2R" ? o with { BackPressurePa = 30 * Plants.Bar } : o)];
        LubricationSystem system = (plant with { Outlets = outlets }).Running();
        system.StrokesInOrder(2);
        system.SetPumpContact(false);

        double storedAbove5Bar = 30 * Plants.Bar * 20 * Plants.Cm3 / 1e8;
        double before = system.DisplacedM3;
        system.Exhaust(long.MaxValue - 1);

        Assert.Equal(storedAbove5Bar, system.DisplacedM3 - before, storedAbove5Bar * 1e-4);
        Assert.Equal(5 * Plants.Bar, system.LinePressurePa, 300.0);
        Assert.Equal(DividerState.Idle, system.Status.State);
    }
}
