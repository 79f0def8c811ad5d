using System.Linq;
using LubeController.Board;
using LubeController.Emulator.Platform;
using LubeController.Plant.Supplies;
using Xunit;

namespace LubeController.Emulator.Tests.Platform;

/// <summary>A loop that hangs, throws or comes too late: outputs freeze or drop, the board is away, and says why it came back.</summary>
public sealed class WatchdogTests
{
    private const long Second = BoardRig.Second;
    private const uint NearWrap = uint.MaxValue - 12_000;

    /// <summary>The pump runs from 10 s on; the loop hangs at 12 s. Also where the millisecond clock wraps while it hangs.</summary>
    [Theory]
    [InlineData(true, 0u)]
    [InlineData(false, 0u)]
    [InlineData(true, NearWrap)]
    [InlineData(false, NearWrap)]
    public void A_hang_freezes_the_outputs_until_the_watchdog_bites_and_the_board_comes_back_with_an_alarm(bool skips, uint clock)
    {
        BoardRig rig = BoardRig.For(40, skips, setup => setup with { ClockStartMs = clock, WatchdogMs = 700 })
            .Fault(12.003, BoardFaults.LoopHangs).Heal(12.5, BoardFaults.LoopHangs).Run();

        // The last completed scan is that of 12.000 s.
        Assert.Equal(1, rig.Value("output.pump", 12.699));
        Assert.Equal(12_700_000, rig.First("output.pump", 0, 11 * Second));
        Assert.Equal(12_700_000, rig.First("output.healthy-relay", 0, 11 * Second));
        Assert.Equal(13_700_000, rig.First("alarm.logic-fault", 1));
        Assert.Equal(-1, rig.First("output.pump", 1, 13 * Second));
        Assert.Equal(ResetCause.Watchdog, rig.Bench.ResetCause);
        Assert.Equal(1, rig.Bench.WatchdogResets);
        Assert.Equal(["reset by its watchdog", "started after a reset by its watchdog"], rig.Notes("board"));
        Assert.True(Assert.Single(rig.Bench.Platform.FaultLog.Entries).TookEffect);
    }

    [Fact]
    public void A_hang_that_stays_resets_the_board_again_and_again()
    {
        BoardRig rig = BoardRig.For(20, skips: true).Fault(12, BoardFaults.LoopHangs).Run();

        // Kicked last at 11.99 s, bitten at 12.99; a second away, on the tick, and bitten a second after each start.
        Assert.Equal(4, rig.Bench.WatchdogResets);
        Assert.Equal([12_990_000L, 14_990_000L, 16_990_000L, 18_990_000L], rig.Trace.Events.Where(entry => entry.Text == "reset by its watchdog").Select(entry => entry.TimeUs));
        Assert.Equal(0, rig.Value("output.pump", 20));
    }

    [Fact]
    public void Healed_before_its_scan_a_hang_changes_nothing_and_is_known_to()
    {
        BoardRig rig = BoardRig.For(20, skips: true).Fault(12.001, BoardFaults.LoopHangs).Heal(12.009, BoardFaults.LoopHangs).Run();

        Assert.Equal(0, rig.Bench.WatchdogResets);
        Assert.False(Assert.Single(rig.Bench.Platform.FaultLog.Entries).TookEffect);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void An_exception_drops_the_outputs_at_the_next_scan_and_the_board_comes_back_after_a_second(bool skips)
    {
        BoardRig rig = BoardRig.For(40, skips).Fault(12.003, BoardFaults.LoopThrows).Heal(12.5, BoardFaults.LoopThrows).Run();

        Assert.Equal(12_010_000, rig.First("output.pump", 0, 11 * Second));
        Assert.Equal(13_010_000, rig.First("alarm.logic-fault", 1));
        Assert.Equal(1, rig.Bench.LoopFaults);
        Assert.Equal(ResetCause.LoopFault, rig.Bench.ResetCause);
        Assert.Equal(["restarts after a fault in the main loop", "started after a fault in the main loop"], rig.Notes("board"));
        Assert.Equal(-1, rig.First("output.pump", 1, 13 * Second));
    }

    [Fact]
    public void A_scan_later_than_the_watchdog_allows_is_never_made()
    {
        BoardRig rig = BoardRig.For(20, skips: true).Fault(12.003, BoardFaults.ScanDelayed, 5).Run();

        Assert.Equal(1, rig.Bench.WatchdogResets);
        Assert.Equal(13_000_000, rig.First("output.pump", 0, 11 * Second));
        Assert.Equal(14_000_000, rig.First("alarm.logic-fault", 1));
        Assert.Equal(-1, rig.First("alarm.scan-overrun", 1));
        Assert.True(Assert.Single(rig.Bench.Platform.FaultLog.Entries).TookEffect);
    }

    /// <summary>A late scan kicks when it is made: the time to the next one counts from there, not from a tick that it missed.</summary>
    [Fact]
    public void Scans_that_are_late_again_and_again_keep_the_watchdog_quiet_as_long_as_each_comes_in_time()
    {
        BoardRig just = BoardRig.For(40, skips: true).Fault(12, BoardFaults.ScanDelayed, 0.99, 10).Run();
        BoardRig over = BoardRig.For(40, skips: true).Fault(12, BoardFaults.ScanDelayed, 0.991, 10).Run();

        Assert.Equal(0, just.Bench.WatchdogResets);
        Assert.True(over.Bench.WatchdogResets > 0);
    }

    /// <summary>Switched off, the board starts by power; a supply that dips is told from it.</summary>
    [Fact]
    public void A_dip_of_the_supply_is_a_brown_out_and_switching_off_is_not()
    {
        BoardRig dip = BoardRig.For(20, skips: true)
            .At(12, bench => bench.Plant.ApplyFault(SupplyFaults.Low, "")).At(14, bench => bench.Plant.HealFault(SupplyFaults.Low, "")).Run();
        BoardRig off = BoardRig.For(20, skips: true).At(12, bench => bench.Controls.Power = false).At(14, bench => bench.Controls.Power = true).Run();
        BoardRig both = BoardRig.For(20, skips: true)
            .At(12, bench => bench.Plant.ApplyFault(SupplyFaults.Low, "")).At(13, bench => bench.Controls.Power = false)
            .At(13.5, bench => bench.Plant.HealFault(SupplyFaults.Low, "")).At(14, bench => bench.Controls.Power = true).Run();

        Assert.Equal(ResetCause.BrownOut, dip.Bench.ResetCause);
        Assert.Equal(["started after a brown-out"], dip.Notes("board"));
        Assert.Equal(ResetCause.PowerOn, off.Bench.ResetCause);
        Assert.Equal(ResetCause.PowerOn, both.Bench.ResetCause);
        Assert.Equal(-1, dip.First("alarm.logic-fault", 1));
    }

    [Fact]
    public void Power_lost_while_the_board_is_away_hides_the_watchdog_from_it()
    {
        BoardRig rig = BoardRig.For(30, skips: true).Fault(12, BoardFaults.LoopHangs).Heal(12.5, BoardFaults.LoopHangs)
            .At(13.5, bench => bench.Controls.Power = false).At(20, bench => bench.Controls.Power = true).Run();

        Assert.Equal(ResetCause.PowerOn, rig.Bench.ResetCause);
        Assert.Equal(1, rig.Bench.WatchdogResets);
    }
}
