using System.Collections.Generic;
using System.Linq;
using LubeController.Core;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;
using Xunit;

namespace LubeController.Emulator.Tests;

/// <summary>
/// A blocked outlet stops everything, and the core says so within its bound. Source: D, derived from the ring of the
/// divider (2N strokes, each opening the way for the next); that one plugged outlet stops every piston and must raise a
/// warning is common practice, and stands in Neale, Tribology Handbook, C15.
/// </summary>
public sealed class BlockedPortTests
{
    private const int AllowanceMs = 2_000;
    private const int TimeoutMs = 30_000;
    private const int DebounceMs = 50;
    private const int ScanMs = 10;
    private const long BlockUs = 60_000_000;

    public static TheoryData<int> TwinCounts => new(Enumerable.Range(3, 9));

    public static TheoryData<int> AllCounts => new(Enumerable.Range(3, 10));

    /// <summary>All 2N ports of N twin sections: 126 cases over N = 3 to 11.</summary>
    [Theory]
    [MemberData(nameof(TwinCounts))]
    public void Each_port_of_twin_sections_blocked_in_turn_stops_all_and_is_alarmed(int sections)
    {
        PlantDescription plant = Plant(sections, _ => SectionOutlets.Twin, []);

        Assert.Equal(2 * sections, plant.Outlets.Count);
        foreach (OutletDescription outlet in plant.Outlets)
            Stops(plant, outlet);
    }

    [Theory]
    [MemberData(nameof(AllCounts))]
    public void Each_single_outlet_blocked_in_turn_stops_all_and_is_alarmed(int sections)
    {
        PlantDescription single = Plant(sections, _ => SectionOutlets.Single, []);
        PlantDescription mixed = Plant(sections, index => index % 2 == 0 ? SectionOutlets.Single : SectionOutlets.Twin, []);

        Assert.Equal(sections, single.Outlets.Count);
        foreach (PlantDescription plant in (PlantDescription[])[single, mixed])
        {
            foreach (OutletDescription outlet in plant.Outlets)
                Stops(plant, outlet);
        }
    }

    [Theory]
    [MemberData(nameof(AllCounts))]
    public void Each_joined_outlet_blocked_in_turn_stops_all_and_is_alarmed(int sections)
    {
        for (int first = 1; first < sections; first++)
        {
            foreach (Side side in (Side[])[Side.L, Side.R])
            {
                PlantDescription plant = Plant(sections, _ => SectionOutlets.Twin, [new JoinDescription($"{first}", $"{first + 1}", side)]);
                Assert.Equal((2 * sections) - 1, plant.Outlets.Count);
                Stops(plant, Assert.Single(plant.Outlets, outlet => outlet.Ports.Count == 2));
            }
        }
    }

    /// <summary>A chain of three joined neighbours, and a twin joined to a single section, which makes one outlet of three ports.</summary>
    [Theory]
    [MemberData(nameof(AllCounts))]
    public void Chains_of_joins_and_joins_with_single_sections_blocked_stop_all_and_are_alarmed(int sections)
    {
        PlantDescription chain = Plant(sections, _ => SectionOutlets.Twin, [new JoinDescription("1", "2", Side.L), new JoinDescription("2", "3", Side.L)]);
        Stops(chain, Assert.Single(chain.Outlets, outlet => outlet.Ports.Count == 3));

        PlantDescription withSingle = Plant(sections, index => index == 2 ? SectionOutlets.Single : SectionOutlets.Twin, [new JoinDescription("1", "2", Side.R)]);
        Stops(withSingle, Assert.Single(withSingle.Outlets, outlet => outlet.Ports.Count == 3));
    }

    private static void Stops(PlantDescription plant, OutletDescription outlet)
    {
        var driver = new BlockingDriver(outlet.Name);
        var bench = new Bench(Setup(plant), driver);
        Trace trace = bench.Run();

        long passed = bench.Plant.TotalStrokes - driver.StrokesBefore;
        Assert.InRange(passed, 0, (2 * plant.Divider.Sections.Count) - 1);

        // The piston that stands is one that would discharge into the blocked outlet, and the plant says so too.
        PlantStatus status = bench.Plant.Status;
        Assert.Equal(DividerState.Blocked, status.State);
        Assert.Contains(outlet.Ports, port => port.Section == plant.Divider.Sections[status.Section].Name && port.Side == status.Side);
        Assert.Equal(outlet.Name, plant.Outlets[status.Outlet].Name);

        Signal alarm = trace.Find("alarm.divider-stalled")!;
        Assert.Equal(1, alarm.Value(alarm.Count - 1));
        long raisedUs = alarm.TimeUs(alarm.Count - 1);

        Assert.InRange(raisedUs, BlockUs, LastPulseUs(trace) + BoundUs);

        // None moves after it, though the pump runs on against the block until the alarm: for ten seconds and more, since
        // no cycle of these dividers takes twenty and the timeout is thirty.
        long stoodUs = plant.Divider.Sections.Max(section => LastMoveUs(trace.Find("piston." + section.Name)!));
        Assert.True(raisedUs - stoodUs >= 10_000_000, $"the last piston moved at {stoodUs} us, the alarm came at {raisedUs} us");
        Assert.Equal(1, trace.Find("output.pump")!.ValueAt(raisedUs - 1));
    }

    /// <summary>The stall bound without retries, from the last accepted edge.</summary>
    private static long BoundUs => (AllowanceMs + TimeoutMs + DebounceMs + ScanMs) * 1000L;

    private static long LastMoveUs(Signal travel)
    {
        int last = travel.Count - 1;
        while (last > 0 && travel.Value(last) == travel.Value(last - 1))
            last--;
        return travel.TimeUs(last);
    }

    private static long LastPulseUs(Trace trace)
    {
        Signal pulses = trace.Find("counter.pulses-watch")!;
        return pulses.TimeUs(pulses.Count - 1);
    }

    private static BenchSetup Setup(PlantDescription plant)
    {
        var settings = new Settings();
        settings[SettingField.DoseEdges] = 10_000;
        settings[SettingField.FirstPulseAllowanceMs] = AllowanceMs;
        settings[SettingField.OfSwitch(0, SettingField.SwitchTimeoutMs)] = TimeoutMs;
        settings[SettingField.OfSwitch(0, SettingField.SwitchDebounceMs)] = DebounceMs;
        settings[SettingField.RestartDelayMs] = 1_000;
        return new BenchSetup { Plant = plant, Settings = settings, ScanPeriodMs = ScanMs, DurationUs = 180_000_000 };
    }

    private static PlantDescription Plant(int sections, System.Func<int, SectionOutlets> outlets, IReadOnlyList<JoinDescription> joins)
    {
        return SmallPlant.With(new DividerDescription
        {
            Sections = [.. Enumerable.Range(1, sections).Select(number => new SectionDescription { Name = $"{number}", VolumePerStrokeM3 = (0.1 + (0.01 * number)) * 1e-6, Outlets = outlets(number) })],
            Joins = joins,
        });
    }

    private sealed class BlockingDriver(string outlet) : IBenchDriver
    {
        public long NextActionUs { get; private set; } = BlockUs;

        public long StrokesBefore { get; private set; }

        public void Act(Bench bench)
        {
            StrokesBefore = bench.Plant.TotalStrokes;
            bench.Plant.ApplyFault(OutletFaults.Blocked, outlet);
            NextActionUs = long.MaxValue;
        }

        public void AfterScan(Bench bench)
        {
        }
    }
}
