using System;
using System.Linq;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Pistons;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Handbook.Tests;

/// <summary>
/// The arithmetic of a series-progressive divider, held against figures worked out by hand. Source of the formulas:
/// derived from the geometry; full-cycle volume Vc = 2 sum(Vi), cycles per minute = Q/Vc, share of a twin outlet Vi/Vc, of
/// a single outlet 2 Vi/Vc; pressure against a block climbs at Q B/V.
/// Source of the way it works (common practice of the trade): all pistons shifted one way make half a cycle.
/// </summary>
public sealed class DividerArithmeticTests
{
    private const double Cm3 = 1e-6;

    private const double Tolerance = 1e-3;

    private static readonly double[] A = [0.1, 0.2, 0.2, 0.5];

    private static readonly double[] B = [0.2, 0.2, 0.2, 0.2, 0.2, 0.2];

    private static readonly double[] C = [0.08, 0.16, 0.24, 0.24, 0.16];

    [Fact]
    public void Table_A_six_cycles_a_minute_and_three_cubic_centimetres_out_of_each_twin_outlet_of_section_4()
    {
        LubricationSystem system = Running(Plant(A, 12));
        Near(2.0, system.FullCycleVolumeM3 / Cm3);
        Near(10.0, SecondsPerCycle(system, 100));
        Near(3.0, Cm3PerMin(system, "4L", 60));
        Near(3.0, Cm3PerMin(system, "4R", 60));
        Near(0.6, Cm3PerMin(system, "1L", 60));
    }

    [Fact]
    public void Table_A_with_section_4_single_gives_six_out_of_its_outlet()
    {
        LubricationSystem system = Running(Plant(A, 12, i => i == 3));
        Near(10.0, SecondsPerCycle(system, 100));
        Near(6.0, Cm3PerMin(system, "4L", 60));
    }

    [Fact]
    public void Table_B_twelve_outlets_get_half_a_cubic_centimetre_a_minute_each()
    {
        LubricationSystem system = Running(Plant(B, 6));
        Near(2.4, system.FullCycleVolumeM3 / Cm3);
        Near(24.0, SecondsPerCycle(system, 100));
        Assert.Equal(12, system.OutletCount);
        for (int outlet = 0; outlet < 12; outlet++)
            Near(0.5, Cm3PerMin(system, system.Description.Outlets[outlet].Name, 60));
    }

    [Fact]
    public void Table_C_a_cam_pump_averages_1_15668_cycles_a_minute_over_a_thousand_cycles_of_piston_movement()
    {
        PlantDescription plant = Plant(C, 1) with
        {
            Pump = new CamPumpDescription { PistonBoreM = 6e-3, StrokeM = 4e-3, SpeedRevPerS = 20.0 / 60, VolumetricEfficiency = 0.9 },
        };
        LubricationSystem system = Running(plant);
        Near(1.76, system.FullCycleVolumeM3 / Cm3);

        const int cycles = 1200;
        AfterStrokes(system, 10);
        long from = system.NowUs;
        double pumped = system.PumpedM3;
        double twin1 = system.OutletDeliveredM3(system.FindOutlet("1R"));
        double twin3 = system.OutletDeliveredM3(system.FindOutlet("3L"));
        double twin4 = system.OutletDeliveredM3(system.FindOutlet("4R"));
        AfterStrokes(system, 10 + (10 * cycles));
        double minutes = (system.NowUs - from) / 60e6;

        Near(1.15668, cycles / minutes);
        Near(51.873, minutes * 60 / cycles);
        Near(2.03575, (system.PumpedM3 - pumped) / Cm3 / minutes);
        Near(0.09253, (system.OutletDeliveredM3(system.FindOutlet("1R")) - twin1) / Cm3 / minutes);
        Near(0.27760, (system.OutletDeliveredM3(system.FindOutlet("3L")) - twin3) / Cm3 / minutes);
        Near(0.27760, (system.OutletDeliveredM3(system.FindOutlet("4R")) - twin4) / Cm3 / minutes);
    }

    [Theory]
    [InlineData(Side.L)]
    [InlineData(Side.R)]
    public void Table_A_the_two_edges_of_a_switch_at_a_tenth_of_piston_4_split_a_cycle_into_0_6_and_1_4(Side end)
    {
        PlantDescription plant = Plant(A, 12) with
        {
            CycleSwitches = [new CycleSwitchDescription { Name = "s", Section = "4", End = end, TripTravel = 0.1, Hysteresis = 0 }],
        };
        LubricationSystem system = Running(plant);
        NextEdge(system, on: true);
        for (int cycle = 0; cycle < 20; cycle++)
        {
            double on = system.DisplacedM3;
            NextEdge(system, on: false);
            double off = system.DisplacedM3;
            NextEdge(system, on: true);
            Near(0.6, (off - on) / Cm3);
            Near(1.4, (system.DisplacedM3 - off) / Cm3);
        }

        Assert.Equal(21, system.TripCrossings(0));
    }

    [Theory]
    [InlineData(1.4e9, 140, 1.43)]
    [InlineData(0.3e9, 30, 6.67)]
    [InlineData(0.1e9, 10, 20)]
    public void Against_a_block_12_cm3_a_minute_into_20_cm3_climb_at_Q_B_over_V(double bulkModulusPa, double barPerS, double secondsTo200)
    {
        PlantDescription plant = Plant(A, 12) with
        {
            Line = new LineDescription { VolumeM3 = 20 * Cm3, BulkModulusPa = bulkModulusPa },
            PressureSwitch = new PressureSwitchDescription { TripPa = 2e7, ResetPa = 1e7 },
        };
        LubricationSystem system = Running(plant);
        system.ApplyFault(DividerFaults.InletBlocked);

        system.AdvanceTo(1_000_000);
        Near(barPerS, system.LinePressurePa / 1e5);
        while (!system.PressureSwitchOn)
            Step(system);

        // 1.43 and 6.67 s are rounded to a hundredth.
        Assert.Equal(secondsTo200, system.NowUs / 1e6, 0.005);
    }

    [Theory]
    [InlineData(3, "sss", 3)]
    [InlineData(3, "tst", 5)]
    [InlineData(5, "sssss", 5)]
    [InlineData(4, "ttss", 6)]
    public void Twin_and_single_sections_feed_the_points_that_the_trade_counts(int sections, string kinds, int points)
    {
        LubricationSystem system = Running(Plant([.. Enumerable.Repeat(0.2, sections)], 12, i => kinds[i] == 's'));
        Assert.Equal(points, system.OutletCount);
        AfterStrokes(system, 2 * sections);
        double sum = 0;
        for (int outlet = 0; outlet < points; outlet++)
        {
            double volume = system.OutletDeliveredM3(outlet) / Cm3;
            bool single = kinds[system.Description.Outlets[outlet].Name[0] - '1'] == 's';
            Near(single ? 0.4 : 0.2, volume);
            sum += volume;
        }

        Near(system.FullCycleVolumeM3 / Cm3, sum);
    }

    private static PlantDescription Plant(double[] strokesCm3, double flowCm3PerMin, Func<int, bool>? single = null)
    {
        var divider = new DividerDescription
        {
            Sections =
            [
                .. strokesCm3.Select((v, i) => new SectionDescription
                {
                    Name = $"{i + 1}",
                    VolumePerStrokeM3 = v * Cm3,
                    Outlets = single?.Invoke(i) == true ? SectionOutlets.Single : SectionOutlets.Twin,
                }),
            ],
        };
        return new PlantDescription
        {
            Name = "table",
            Lubricant = Lubricants.NewtonianOil(0.1),
            Reservoir = new ReservoirDescription { CapacityM3 = 1, ContentM3 = 1, LowLevelM3 = 0.1, EmptyLevelM3 = 0.01 },
            Pump = new ConstantFlowPumpDescription { FlowM3PerS = flowCm3PerMin * Cm3 / 60 },
            Line = new LineDescription { VolumeM3 = 20 * Cm3, BulkModulusPa = 1.4e9 },
            Relief = new ReliefDescription { OpeningPressurePa = 2.5e7 },
            Divider = divider,
            Outlets = PortGroups.DefaultOutlets(divider),
        };
    }

    private static LubricationSystem Running(PlantDescription plant)
    {
        var system = new LubricationSystem(plant, 1);
        system.SetPumpContact(true);
        return system;
    }

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, Math.Abs(expected) * Tolerance);

    private static void AfterStrokes(LubricationSystem system, long strokes)
    {
        while (system.TotalStrokes < strokes)
            Step(system);
    }

    private static double SecondsPerCycle(LubricationSystem system, int cycles)
    {
        int strokes = 2 * system.SectionCount;
        AfterStrokes(system, strokes);
        long from = system.NowUs;
        AfterStrokes(system, strokes * (1 + cycles));
        return (system.NowUs - from) / 1e6 / cycles;
    }

    // Over whole cycles: at the end of one, sixty minutes later, at the end of another.
    private static double Cm3PerMin(LubricationSystem system, string outlet, int minutes)
    {
        int index = system.FindOutlet(outlet);
        double before = system.OutletDeliveredM3(index);
        system.AdvanceTo(system.NowUs + (minutes * 60_000_000L));
        return (system.OutletDeliveredM3(index) - before) / Cm3 / minutes;
    }

    private static void NextEdge(LubricationSystem system, bool on)
    {
        while (system.CycleSwitchOn(0) == on)
            Step(system);
        while (system.CycleSwitchOn(0) != on)
            Step(system);
    }

    private static void Step(LubricationSystem system)
    {
        Assert.NotEqual(long.MaxValue, system.NextEventUs);
        system.AdvanceTo(system.NextEventUs);
    }
}
