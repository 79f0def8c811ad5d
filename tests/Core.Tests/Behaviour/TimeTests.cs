using System;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>Clock wrap, long times, deadlines, arithmetic that saturates.</summary>
public sealed class TimeTests
{
    [Theory]
    [InlineData(5_000u)]
    [InlineData(uint.MaxValue - 30_000)]
    [InlineData(uint.MaxValue - 71_000)]
    [InlineData(int.MaxValue - 30_000u)]
    public void A_clock_that_wraps_does_not_matter(uint startMs)
    {
        var bench = new CoreBench(startMs: startMs);
        bench.Scan();
        Assert.Equal(TestSettings.RestartMs, bench.RunUntil(Phase.Dose, 60_000));
        bench.Pulses(3).Switch(true).RunUntil(Phase.Rest, 200);
        Assert.Equal(TestSettings.RestMs, bench.RunUntil(Phase.Dose, 100_000));
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void A_rest_of_24_days_passes_in_one_scan()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.RestMs] = SettingTable.LongestMs;
            settings[SettingField.OverdueMs] = SettingTable.LongestMs;
            settings[SettingField.DelayOn(AlarmId.LubricationOverdue)] = 3_600_000;
        }).ToRest();
        bench.Run(6_000);
        Assert.InRange(bench.Core.NextDeadlineMs, SettingTable.LongestMs - 7_000, SettingTable.LongestMs - 6_000);
        uint now = bench.NowMs;
        uint due = now + (uint)bench.Core.NextDeadlineMs;
        bench.Core.Scan(due - 1);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.Core.Scan(due);
        Assert.Equal(Phase.Dose, bench.Phase);
    }

    [Fact]
    public void Scans_may_be_as_far_apart_as_the_counters_reach()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Inputs.Stop = true;
        bench.Run(20);
        uint now = bench.NowMs;
        for (int time = 0; time < 3; time++)
        {
            now = unchecked(now + int.MaxValue);
            bench.Core.Scan(now);
        }

        Assert.Equal(Phase.Stopped, bench.Phase);
        Assert.True(bench.Stands(AlarmId.LubricationOverdue));
    }

    [Fact]
    public void A_clock_that_steps_back_counts_as_the_longest_time()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Core.Scan(bench.NowMs - 1);
        Assert.Equal(Phase.Dose, bench.Phase);
    }

    [Fact]
    public void The_deadline_is_the_next_thing_that_happens_by_itself()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.PrimeLimitMs] = 20_000);
        bench.Scan();
        Assert.Equal(1, Math.Min(1, bench.Core.NextDeadlineMs));
        bench.Run(1_000);
        Assert.Equal(TestSettings.RestartMs - 1_000, bench.Core.NextDeadlineMs);
        bench.RunUntil(Phase.Dose, 12_000);
        Assert.Equal(TestSettings.AllowanceMs + TestSettings.TimeoutMs, bench.Core.NextDeadlineMs);
        bench.Pulses(4).Run(1_000);
        Assert.InRange(bench.Core.NextDeadlineMs, TestSettings.RestMs - 1_500, TestSettings.RestMs - 1_000);
        bench.Set(Button.Prime, true).RunUntil(Phase.Prime, 100);
        Assert.Equal(20_000, bench.Core.NextDeadlineMs);
        bench.Run(300);
        Assert.Equal(19_700, bench.Core.NextDeadlineMs);
    }

    [Fact]
    public void A_rest_by_shaft_is_due_by_time_only_while_its_signal_is_lost()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.RestMode] = (int)RestMode.Shaft;
            settings[SettingField.ShaftFitted] = 1;
            settings[SettingField.ShaftLostMs] = 40_000;
            settings[SettingField.RestFallbackMs] = 50_000;
        })
        { ShaftPulsesPerTick = 1 }.ToRest();
        bench.ShaftPulsesPerTick = 0;
        bench.Run(20_000);
        Assert.Equal(20_000, bench.Core.NextDeadlineMs);
        bench.RunUntil(() => bench.Stands(AlarmId.ShaftSignalLost), 30_000);
        bench.Press(Button.Acknowledge);
        Assert.InRange(bench.Core.NextDeadlineMs, 9_000, 10_000);
        Assert.Equal(bench.Core.NextDeadlineMs, bench.RunUntil(Phase.Dose, 20_000));
    }

    [Fact]
    public void In_stopped_nothing_but_overdue_is_due()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Inputs.Stop = true;
        bench.Run(10_000);
        Assert.InRange(bench.Core.NextDeadlineMs, TestSettings.OverdueMs - 11_000, TestSettings.OverdueMs - 10_000);
        bench.RunUntil(() => bench.Stands(AlarmId.LubricationOverdue), 700_000);
        bench.Press(Button.Acknowledge).Run(5_000);
        Assert.Equal(Saturating.Never, bench.Core.NextDeadlineMs);
        Assert.Equal(Saturating.Never, bench.Core.NextDeadlineShaftPulses);
    }

    [Fact]
    public void Shaft_pulses_may_be_handed_over_in_one_delta_up_to_the_deadline()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.RestMode] = (int)RestMode.Shaft;
            settings[SettingField.ShaftFitted] = 1;
            settings[SettingField.RestRevolutions] = 5_000;
            settings[SettingField.RestFallbackMs] = 100_000;
        })
        { ShaftPulsesPerTick = 1 }.ToRest();
        bench.Run(6_000);
        int due = bench.Core.NextDeadlineShaftPulses;
        Assert.InRange(due, 4_300, 4_400);
        bench.Inputs.ShaftPulses = due - 1;
        bench.Inputs.ShaftPulseAgeMs = 3;
        bench.Core.Scan(bench.NowMs + 20_000);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Equal(1, bench.Core.NextDeadlineShaftPulses);
        bench.Inputs.ShaftPulses = 1;
        bench.Core.Scan(bench.NowMs + 20_010);
        Assert.Equal(Phase.Dose, bench.Phase);
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void The_age_of_the_last_shaft_pulse_counts_towards_a_lost_signal()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.ShaftFitted] = 1) { ShaftPulsesPerTick = 1 }.ToRest();
        bench.Inputs.ShaftPulses = 7;
        bench.Inputs.ShaftPulseAgeMs = 12_000;
        bench.Core.Scan(bench.NowMs + 12_000);
        bench.Inputs.ShaftPulses = 0;
        bench.Core.Scan(bench.NowMs + 29_999);
        Assert.False(bench.Stands(AlarmId.ShaftSignalLost));
        bench.Core.Scan(bench.NowMs + 30_000);
        Assert.True(bench.Stands(AlarmId.ShaftSignalLost));
    }

    [Fact]
    public void A_transmitter_names_the_band_in_which_nothing_changes()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.PressureTransmitterFitted] = 1);
        var expected = new (int Reading, int Low, int High)[]
        {
            (9_999, int.MinValue, 9_999),
            (10_000, 10_000, 250_000),
            (250_000, 10_000, 250_000),
            (250_001, 250_001, int.MaxValue),
        };
        foreach ((int reading, int low, int high) in expected)
        {
            bench.Inputs.PressureMbar = reading;
            bench.Run(10);
            Assert.Equal((low, high), (bench.Core.QuietPressureLowMbar, bench.Core.QuietPressureHighMbar));
        }
    }

    [Fact]
    public void Two_hours_of_rest_take_few_whole_scans()
    {
        // What a scan skips is seen by the rule: it is asked in whole scans alone.
        int asked = 0;
        var rule = new FakeRule
        {
            Remaining = (own, _) =>
            {
                asked++;
                return Math.Max(0, 7_200_000 - own.ElapsedMs);
            },
        };
        CoreBench bench = new CoreBench(
            settings =>
            {
                settings[SettingField.RestMode] = (int)RestMode.Rule;
                settings[SettingField.RestFallbackMs] = 7_200_000;
                settings[SettingField.RuleLongestRestMs] = 7_200_000;
                settings[SettingField.OverdueMs] = 8_000_000;
            },
            rule).ToRest();
        bench.Run(1_000);
        asked = 0;
        bench.Run(7_100_000);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Equal(0, asked);
    }

    [Theory]
    [InlineData(int.MaxValue, 1, int.MaxValue)]
    [InlineData(1, int.MaxValue, int.MaxValue)]
    [InlineData(int.MaxValue - 5, 5, int.MaxValue)]
    [InlineData(int.MaxValue - 5, 4, int.MaxValue - 1)]
    [InlineData(0, 0, 0)]
    public void Sums_saturate(int left, int right, int sum) => Assert.Equal(sum, Saturating.Add(left, right));

    [Theory]
    [InlineData(10, 3, 7)]
    [InlineData(10, 9, 1)]
    [InlineData(10, 10, 1)]
    [InlineData(10, 11, 1)]
    public void What_remains_is_at_least_one(int limit, int elapsed, int remaining) =>
        Assert.Equal(remaining, Saturating.Remaining(limit, elapsed));

    [Theory]
    [InlineData(1, 2, 1)]
    [InlineData(2, 1, 1)]
    [InlineData(-3, -3, -3)]
    public void The_smaller_of_two_is_taken(int left, int right, int smaller) => Assert.Equal(smaller, Saturating.Min(left, right));

    [Theory]
    [InlineData(7, 2, 3)]
    [InlineData(7, 1, 7)]
    [InlineData(7, 0, 7)]
    [InlineData(7, -5, 7)]
    public void A_quotient_has_a_divisor_of_at_least_one(int dividend, int divisor, int quotient) =>
        Assert.Equal(quotient, SafeDivide.Quotient(dividend, divisor));

    [Theory]
    [InlineData(7L, 2, 4)]
    [InlineData(8L, 2, 4)]
    [InlineData(0L, 2, 0)]
    [InlineData(7L, 0, 7)]
    [InlineData(7L, -1, 7)]
    [InlineData(1L << 40, 1, int.MaxValue)]
    [InlineData((1L << 31) - 1, 1, int.MaxValue)]
    public void A_quotient_rounded_up_saturates(long dividend, int divisor, int quotient) =>
        Assert.Equal(quotient, SafeDivide.QuotientUp(dividend, divisor));
}
