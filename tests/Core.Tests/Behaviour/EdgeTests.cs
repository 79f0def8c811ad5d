using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>What counts as an edge of a cycle switch, and what is only a baseline.</summary>
public sealed class EdgeTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_level_at_power_up_is_a_baseline_and_no_pulse(bool on)
    {
        var bench = new CoreBench();
        bench.Switch(on).Run(5_000);
        Assert.Empty(bench.PulseLines);
        Assert.Equal("", bench.Standing());
        Assert.Equal(0, bench.Core.PulsesOf(0));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_cut_in_rest_gives_no_pulse_and_no_alarm_and_the_next_dose_is_whole(bool on)
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Switch(on).Run(200).Switch(on);
        bench.ClearLog();
        bench.CutPower().Run(2_000);
        Assert.Empty(bench.PulseLines);
        Assert.Equal("", bench.Standing());
        Assert.True(bench.Core.PositionKnown);
        bench.Press(Button.DoseNow).Switch(false).Run(100);
        int credited = on ? 1 : 0;
        Assert.Equal(credited, bench.Core.DoseEdges);
        bench.Pulses(2 - credited);
        Assert.Equal(Phase.Dose, bench.Phase);
        bench.Pulse();
        Assert.Equal(Phase.Rest, bench.Phase);
    }

    [Fact]
    public void A_dose_that_ended_on_an_edge_rests_on_and_a_cut_there_loses_nothing()
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.Pulses(2).Switch(true).Run(100);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.ClearLog();
        bench.CutPower().Run(6_000);
        Assert.Empty(bench.Log);
        bench.Press(Button.DoseNow).Switch(false).Run(100).Pulses(2);
        Assert.Equal(Phase.Dose, bench.Phase);
        bench.Pulse();
        Assert.Equal(Phase.Rest, bench.Phase);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_cut_in_mid_dose_keeps_the_count_and_gives_no_pulse_and_no_alarm(bool on)
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.Pulse().Switch(true).Run(100);
        Assert.Equal(2, bench.Core.DoseEdges);
        bench.Switch(on);
        bench.ClearLog();
        bench.CutPower().Run(5_000);
        Assert.Empty(bench.PulseLines);
        Assert.Equal("", bench.Standing());
        Assert.Equal(2, bench.Core.DoseEdges);
        Assert.True(bench.Core.DosePending);
        Assert.False(bench.Outputs.Pump);
        bench.RunUntil(Phase.Dose, 6_000);
        bench.Switch(false).Run(100);
        Assert.Equal(Phase.Dose, bench.Phase);
        bench.Pulse();
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Contains("dose completed with 3", bench.Log);
    }

    [Theory]
    [InlineData(40, 0)]
    [InlineData(50, 1)]
    [InlineData(60, 1)]
    public void A_level_counts_once_it_has_rested_for_the_debounce_time(int onMs, int pulses)
    {
        CoreBench bench = new CoreBench().ToDose();
        int before = bench.Core.PulsesOf(0);

        // The scan that first sees the level begins its time.
        bench.Switch(true).Scan().Run(onMs).Switch(false).Run(200);
        Assert.Equal(before + pulses, bench.Core.PulsesOf(0));
    }

    [Fact]
    public void Bounce_begins_the_debounce_time_anew()
    {
        CoreBench bench = new CoreBench().ToDose();
        for (int bounce = 0; bounce < 4; bounce++)
            bench.Switch(true).Run(40).Switch(false).Run(TestSettings.DebounceMs - 40);
        Assert.Equal(0, bench.Core.DoseEdges);
        bench.Switch(true).Run(60);
        Assert.Equal(1, bench.Core.DoseEdges);
    }

    [Fact]
    public void An_edge_within_the_ready_delay_is_part_of_the_baseline()
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.CutPower().Run(100).Switch(true).Run(1_000);
        Assert.Empty(bench.PulseLines);
        bench.Switch(false).Run(100).Switch(true).Run(100);
        Assert.Single(bench.PulseLines);
    }

    [Fact]
    public void The_baseline_is_taken_at_the_end_of_the_ready_delay_and_no_earlier()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.CutPower().Run(TestSettings.ReadyMs - 10).Switch(true).Run(10).Switch(false).Run(200);
        Assert.Empty(bench.PulseLines);
        bench.CutPower().Run(TestSettings.ReadyMs).Switch(true).Run(60);
        Assert.Single(bench.PulseLines);
    }

    [Fact]
    public void An_inverted_switch_counts_the_opposite_edge()
    {
        var bench = new CoreBench(settings => settings[SettingField.OfSwitch(0, SettingField.SwitchInverted)] = 1);
        bench.Switch(true).RunUntil(Phase.Dose, 12_000);
        bench.Switch(false).Run(100);
        Assert.Equal(["pulse 1 opened"], bench.PulseLines);
        bench.Switch(true).Run(100);
        Assert.Single(bench.PulseLines);
        bench.Switch(false).Run(100);
        Assert.Equal(["pulse 1 opened", "pulse 1 counted 1"], bench.PulseLines);
    }

    [Theory]
    [InlineData(1, "pulse 1 counted 1")]
    [InlineData(2, "pulse 1 counted 1,pulse 1 counted 2")]
    public void Full_cycles_count_on_edges_and_half_cycles_both(int edgesPerCycle, string expected)
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.EdgesPerCycle] = edgesPerCycle;
            settings[SettingField.DoseEdges] = 4;
        });
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Switch(true).Run(100);
        if (edgesPerCycle == 1)
            bench.Switch(false).Run(100).Switch(true).Run(100).Switch(false).Run(100);
        else
            bench.Switch(false).Run(100).Switch(true).Run(100);
        Assert.Equal("pulse 1 opened," + expected, string.Join(',', bench.PulseLines));
    }

    [Fact]
    public void A_half_cycle_dose_ends_on_either_edge()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.EdgesPerCycle] = 2;
            settings[SettingField.DoseEdges] = 1;
        });
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Switch(true).Run(100).Switch(false).Run(100);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.Run(6_000).Press(Button.DoseNow).Switch(true).Run(100);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Equal(2, bench.Core.DosesCompleted);
    }

    [Theory]
    [InlineData(400, 2)]
    [InlineData(250, 3)]
    public void A_pulse_faster_than_the_pump_can_cause_neither_counts_nor_renews_the_timeout(int shortestMs, int counted)
    {
        // Pulses come every 300 ms.
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.MinPulseIntervalMs] = shortestMs;
            settings[SettingField.DoseEdges] = 50;
        });
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(4);
        Assert.Equal(counted == 3 ? 3 : 1, bench.Core.DoseEdges);
        Assert.Equal(counted != 3, bench.Stands(AlarmId.PulseTooFast));
        Assert.Equal(counted == 3 ? 0 : 2, bench.PulseLines.Count(line => line.EndsWith("too fast", System.StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData(400, true)]
    [InlineData(401, false)]
    public void A_pulse_exactly_at_the_shortest_interval_counts(int shortestMs, bool counts)
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.MinPulseIntervalMs] = shortestMs).ToRunningDose();
        for (int pulse = 0; pulse < 2; pulse++)
            bench.Switch(true).Run(200).Switch(false).Run(200);
        Assert.Equal(counts ? 2 : 1, bench.Core.PulsesOf(0));
    }

    [Fact]
    public void Half_cycles_are_too_fast_only_beside_edges_of_their_own_direction()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.EdgesPerCycle] = 2;
            settings[SettingField.DoseEdges] = 50;
            settings[SettingField.MinPulseIntervalMs] = 400;
        }).ToRunningDose();
        for (int pulse = 0; pulse < 3; pulse++)
            bench.Switch(true).Run(100).Switch(false).Run(400);
        Assert.Equal("", bench.Standing());
        Assert.Equal(5, bench.Core.DoseEdges);
        bench.Switch(true).Run(340).Switch(false).Run(60).Switch(true).Run(100).Switch(false).Run(100);
        Assert.True(bench.Stands(AlarmId.PulseTooFast));
    }

    [Fact]
    public void Pulses_that_are_too_fast_do_not_keep_a_stalled_divider_alive()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.MinPulseIntervalMs] = 15_000;
            settings[SettingField.DoseEdges] = 50;
            settings[SettingField.ChatterChanges] = 0;
        });
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulse();
        int took = 300;
        while (bench.Phase == Phase.Dose && took < 30_000)
        {
            bench.Pulse();
            took += 300;
            if (took > 14_000)
                took += bench.RunUntil(Phase.Failed, 10_000);
        }

        Assert.True(bench.Stands(AlarmId.DividerStalled));
        Assert.InRange(took, TestSettings.TimeoutMs, TestSettings.TimeoutMs + 300);
    }
}
