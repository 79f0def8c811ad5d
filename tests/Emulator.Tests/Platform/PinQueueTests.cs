using System;
using LubeController.Core;
using LubeController.Emulator.Platform;
using Xunit;

namespace LubeController.Emulator.Tests.Platform;

/// <summary>The queue of pin events drops the oldest: what is lost is what it could not hold.</summary>
public sealed class PinQueueTests
{
    /// <summary>100 pulses a second: the scan planned for 12.01 s comes 900 ms later, 91 pulses after the one before.</summary>
    [Theory]
    [InlineData(true, 16)]
    [InlineData(false, 16)]
    [InlineData(true, 90)]
    [InlineData(true, 91)]
    [InlineData(true, 256)]
    public void A_late_scan_loses_the_pulses_beyond_the_depth(bool skips, int depth)
    {
        BoardRig rig = BoardRig.For(20, skips).Fault(12.003, BoardFaults.PinQueueShort, depth).Fault(12.003, BoardFaults.ScanDelayed, 0.9).Run();
        int lost = Math.Max(0, 91 - depth);

        Assert.Equal(lost == 0 ? [] : [$"{lost} pulse{(lost == 1 ? "" : "s")} of the shaft lost, the queue of pin events was full"], rig.Notes("board"));
        Assert.Equal(lost > 0, rig.Bench.Platform.FaultLog.Entries[0].TookEffect);
    }

    /// <summary>A rest by the shaft of 3 000 turns, 30 s, begins at 15 s and lasts the lost pulses longer, 10 ms each.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Lost_pulses_make_a_rest_by_the_shaft_longer(bool skips)
    {
        BoardRig Shaft(int depth) => BoardRig.For(60, skips, setup => setup with { PinQueueDepth = depth }, settings =>
        {
            settings[SettingField.RestMode] = (int)RestMode.Shaft;
            settings[SettingField.RestRevolutions] = 3_000;
        }).Fault(20.003, BoardFaults.ScanDelayed, 0.9, 4).Run();

        // Scans planned for 20.01, 20.92 and so on to 23.65 s: five, each 91 pulses after the one before.
        long whole = Shaft(256).First("output.pump", 1, 16 * BoardRig.Second);
        long torn = Shaft(16).First("output.pump", 1, 16 * BoardRig.Second);
        Assert.Equal(5 * (91 - 16) * 10_000, torn - whole);
    }

    /// <summary>A shaft that overruns the queue between scans that come as planned loses pulses at each of them, skipped or not.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_shaft_faster_than_the_queue_loses_at_every_scan(bool skips)
    {
        BoardRig rig = BoardRig.For(60, skips, setup => setup with { PinQueueDepth = 16, ScanPeriodMs = 500 }, settings =>
        {
            settings[SettingField.RestMode] = (int)RestMode.Shaft;
            settings[SettingField.RestRevolutions] = 160;
        }).Run();

        // 16 of 50 pulses are kept in each scan: ten scans, five seconds, after the dose that ends at 15 s.
        Assert.Equal(20_000_000, rig.First("output.pump", 1, 16 * BoardRig.Second));
    }

    [Fact]
    public void Edges_of_switches_take_room_from_older_pulses_only()
    {
        var queue = new PinQueue { Depth = 16 };
        static long TimeOf(long pulse) => pulse * 10;
        Assert.Equal(0, queue.LostPulses(100, 116, TimeOf));
        Assert.Equal(4, queue.LostPulses(100, 120, TimeOf));

        // An edge between pulses that are kept costs one more; one older than all that is kept is itself dropped.
        queue.Add(1_175);
        Assert.Equal(5, queue.LostPulses(100, 120, TimeOf));
        queue.Clear();
        queue.Add(1_015);
        Assert.Equal(4, queue.LostPulses(100, 120, TimeOf));
        Assert.Equal(0, queue.LostPulses(100, 115, TimeOf));
    }
}
