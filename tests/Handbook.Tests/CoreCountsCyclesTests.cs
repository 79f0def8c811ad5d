using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Tests.Support.Fluids;
using Xunit;

namespace LubeController.Handbook.Tests;

/// <summary>
/// The whole chain, plant to core, held against the arithmetic of a series-progressive divider. Source: derived; full-cycle
/// volume Vc = 2 sum(Vi), cycle time Vc/Q. A switch at one end of one piston's travel gives one pulse for each full cycle
/// (common practice of the trade).
/// </summary>
public sealed class CoreCountsCyclesTests
{
    private const double Tolerance = 1e-3;

    [Theory]
    [InlineData("A", new[] { 0.1, 0.2, 0.2, 0.5 }, 12.0, 10.0)]
    [InlineData("B", new[] { 0.2, 0.2, 0.2, 0.2, 0.2, 0.2 }, 6.0, 24.0)]
    public void The_core_counts_one_pulse_in_each_cycle_time_of_the_table(string table, double[] strokesCm3, double flowCm3PerMin, double secondsPerCycle)
    {
        Trace trace = Run(Plant(strokesCm3, flowCm3PerMin), edgesPerCycle: 1);
        List<long> pulses = Edges(trace);

        Assert.True(pulses.Count > 40, $"table {table}: {pulses.Count} pulses");
        double measured = (pulses[^1] - pulses[0]) / 1e6 / (pulses.Count - 1);
        Assert.InRange(measured, secondsPerCycle * (1 - Tolerance), secondsPerCycle * (1 + Tolerance));
    }

    /// <summary>Table A, switch on piston 4 tripping 10 % from its end without hysteresis: 2.0 cm3 split into 0.6 and 1.4, at 12 cm3/min 3 s and 7 s.</summary>
    [Fact]
    public void Half_cycles_of_table_A_split_ten_seconds_into_three_and_seven()
    {
        PlantDescription plant = Plant([0.1, 0.2, 0.2, 0.5], 12.0);
        List<long> edges = Edges(Run(plant, edgesPerCycle: 2));
        double[] gaps = edges.Zip(edges.Skip(1)).Select(pair => (pair.Second - pair.First) / 1e6).ToArray();
        HalfCycle half = HalfCycle.Of(plant, plant.CycleSwitches[0]);

        Assert.True(gaps.Length > 80);
        Assert.All(gaps, gap => Assert.True(Math.Abs(gap - 3.0) <= 0.0101 || Math.Abs(gap - 7.0) <= 0.0101, $"{gap} s"));
        Assert.All(gaps.Zip(gaps.Skip(1)), pair => Assert.Equal(10.0, pair.First + pair.Second, 0.0101));
        Assert.Equal(0.6e-6, half.OnM3, 1e-15);
        Assert.Equal(1.4e-6, half.OffM3, 1e-15);
    }

    /// <summary>Times at which the core counted an edge.</summary>
    private static List<long> Edges(Trace trace) =>
        trace.Events.Where(entry => entry.Kind == "pulse" && entry.Text.Contains("counted", StringComparison.Ordinal)).Select(entry => entry.TimeUs).ToList();

    private static Trace Run(PlantDescription plant, int edgesPerCycle)
    {
        var settings = new Settings();
        settings[SettingField.EdgesPerCycle] = edgesPerCycle;
        settings[SettingField.DoseEdges] = 10_000;
        settings[SettingField.DoseLimitMs] = 4 * 3600 * 1000;
        return new Bench(new BenchSetup { Plant = plant, Settings = settings, DurationUs = 1_200_000_000 }, new NoDriver()).Run();
    }

    private static PlantDescription Plant(double[] strokesCm3, double flowCm3PerMin)
    {
        var divider = new DividerDescription
        {
            Sections = [.. strokesCm3.Select((stroke, index) => new SectionDescription { Name = $"{index + 1}", VolumePerStrokeM3 = stroke * 1e-6 })],
        };
        return new PlantDescription
        {
            Name = "table",
            Lubricant = Lubricants.NewtonianOil(0.1),
            Reservoir = new ReservoirDescription { CapacityM3 = 4e-3, ContentM3 = 3e-3, LowLevelM3 = 1e-3, EmptyLevelM3 = 2e-4 },
            Pump = new ConstantFlowPumpDescription { FlowM3PerS = flowCm3PerMin * 1e-6 / 60 },
            Line = new LineDescription { VolumeM3 = 2e-5, BulkModulusPa = 1.4e9 },
            Relief = new ReliefDescription { OpeningPressurePa = 2e7 },
            Divider = divider,
            Outlets = PortGroups.DefaultOutlets(divider),
            CycleSwitches = [new CycleSwitchDescription { Name = "4", Section = "4", TripTravel = 0.1, Hysteresis = 0 }],
        };
    }

    private sealed class NoDriver : IBenchDriver
    {
        public long NextActionUs => long.MaxValue;

        public void Act(Bench bench)
        {
        }

        public void AfterScan(Bench bench)
        {
        }
    }
}
