using System.Linq;
using LubeController.Core;
using LubeController.Emulator.Platform;
using Xunit;

namespace LubeController.Emulator.Tests.Platform;

/// <summary>Scans that come late or jitter, and a clock that drifts.</summary>
public sealed class ScanTimingTests
{
    private const long Second = BoardRig.Second;

    [Theory]
    [InlineData(true, 0u)]
    [InlineData(false, 0u)]
    [InlineData(true, uint.MaxValue - 12_300)]
    [InlineData(false, uint.MaxValue - 12_300)]
    public void A_late_scan_reads_its_inputs_late_and_is_alarmed_beyond_the_limit(bool skips, uint clock)
    {
        BoardRig Delayed(double delay) => BoardRig.For(20, skips, setup => setup with { ClockStartMs = clock })
            .Fault(12.003, BoardFaults.ScanDelayed, delay).At(12.1, bench => bench.Controls.Set(ControllerInputs.Stop, 1)).Run();
        BoardRig over = Delayed(0.201);
        BoardRig within = Delayed(0.2);

        // Planned for 12.010 s; the limit is 200 ms. The stop of 12.1 s is read by that scan.
        Assert.Equal(12_211_000, over.First("alarm.scan-overrun", 1));
        Assert.Equal(12_211_000, over.First("output.pump", 0, 11 * Second));
        Assert.Equal(12_210_000, within.First("output.pump", 0, 11 * Second));
        Assert.Equal(-1, within.First("alarm.scan-overrun", 1));
    }

    [Fact]
    public void A_delay_is_for_one_scan_and_with_a_span_for_each_in_it()
    {
        BoardRig once = BoardRig.For(20, skips: false).Fault(12, BoardFaults.ScanDelayed, 0.095).Run();
        BoardRig span = BoardRig.For(20, skips: false).Fault(12, BoardFaults.ScanDelayed, 0.095, 1).Run();

        // 2001 ticks. Once: the ticks of 12.01 to 12.09 s are missed. In the span each scan but the first is planned for the
        // tick after the one before, 5 ms on: eleven planned in one second, each costs nine ticks more.
        Assert.Equal(2001 - 9, once.Bench.ScansExecuted);
        Assert.Equal(2001 - (11 * 9), span.Bench.ScansExecuted);
    }

    [Fact]
    public void Healing_makes_the_scan_that_is_waited_for_at_once()
    {
        BoardRig rig = BoardRig.For(20, skips: true).Fault(12, BoardFaults.ScanDelayed, 0.9).At(12.1, bench => bench.Controls.Set(ControllerInputs.Stop, 1)).Heal(12.3, BoardFaults.ScanDelayed).Run();

        Assert.Equal(12_300_000, rig.First("output.pump", 0, 11 * Second));
    }

    [Fact]
    public void Jitter_moves_scans_by_no_more_than_was_set_and_evenly()
    {
        BoardRig rig = BoardRig.For(60, skips: true, setup => setup with { ScanJitterUs = 400 });
        var timing = new ScanTiming(1, 10_000) { JitterUs = 400 };
        long[] offsets = [.. Enumerable.Range(1, 8_000).Select(tick => timing.TimeOf(tick, 0))];

        Assert.Equal(400, offsets.Max());
        Assert.Equal(-400, offsets.Min());
        Assert.InRange(offsets.Average(), -10, 10);
        rig.Run();
        Assert.Equal(6000, rig.Bench.ScansExecuted, 1.0);
        Assert.Equal(10.0, rig.First("output.pump", 1) / (double)Second, 0.0105);
        Assert.NotEqual(0, rig.First("output.pump", 1) % 10_000);
    }

    [Fact]
    public void Jitter_is_less_than_half_a_period_whatever_was_set()
    {
        var timing = new ScanTiming(7, 1_000) { JitterUs = 500_000 };
        Assert.All(Enumerable.Range(1, 2_000).Select(tick => timing.TimeOf(tick, 0)), offset => Assert.InRange(offset, -499, 499));
    }

    /// <summary>An hour at 100 ppm is 360 ms: arithmetic.</summary>
    [Theory]
    [InlineData(100, -360)]
    [InlineData(-100, 360)]
    [InlineData(0, 0)]
    public void A_rest_of_an_hour_shifts_in_proportion_to_the_clock_error(double ppm, double expectedMs)
    {
        BoardRig rig = BoardRig.For(2 * 3600, skips: true, set: settings => settings[SettingField.RestMs] = 3_600_000).Fault(20, BoardFaults.ClockDrifts, ppm).Run();
        long rested = rig.First("output.pump", 0, 11 * Second);
        long dose = rig.First("output.pump", 1, 16 * Second);

        // The first dose ends at 15 s, five seconds before the clock begins to drift.
        Assert.Equal(15_000_000, rested);
        Assert.Equal((3_600_000.0 - 5_000) * (1 - 1 / (1 + (ppm * 1e-6))) * -1, ((dose - rested) / 1000.0) - 3_600_000.0, 10.0);
        Assert.Equal(expectedMs, ((dose - rested) / 1000.0) - 3_600_000.0, 11.0);
        Assert.Equal(ppm != 0, Assert.Single(rig.Bench.Platform.FaultLog.Entries).TookEffect);
    }

    /// <summary>Both ways of the clock are each other's inverse, also over changes of rate.</summary>
    [Fact]
    public void A_tick_is_the_first_microsecond_at_which_the_clock_shows_it()
    {
        var clock = new BoardClock(10_000);
        clock.SetError(123_457, 50_000);
        clock.SetError(777_777, -50_000);
        clock.SetError(1_500_001, 33.3);
        for (long tick = 0; tick < 400; tick++)
        {
            long time = clock.TimeOf(tick);
            Assert.True(clock.BoardUs(time) >= tick * 10_000, $"tick {tick}");
            Assert.True(time == 0 || clock.BoardUs(time - 1) < tick * 10_000, $"tick {tick} could be earlier");
            Assert.Equal(tick, clock.TickAtOrAfter(time));
            Assert.Equal(tick + 1, clock.TickAtOrAfter(time + 1));
            Assert.Equal(tick, clock.TickShowing(tick * 10_000));
        }
    }
}
