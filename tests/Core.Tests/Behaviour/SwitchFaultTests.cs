using System;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>What speaks against a cycle switch: a second witness, or chatter.</summary>
public sealed class SwitchFaultTests
{
    [Fact]
    public void Three_pulses_of_another_switch_and_none_of_the_dose_ending_one_end_the_dose()
    {
        CoreBench bench = TwoSwitches();
        bench.Pulses(2, 1);
        Assert.Equal(Phase.Dose, bench.Phase);
        bench.Pulse(1);
        Assert.Equal(
            ["pulse 2 seen", "pulse 2 seen", "switch 1 found wrong by witness", "pulse 2 seen", "+cycle-switch-fault", "dose > failed"],
            bench.Log);
        Assert.Equal(AlarmAction.DoseEnding, bench.Core.Alarms.ActionOf(AlarmId.CycleSwitchFault));
        Assert.Equal(AlarmCategory.Failure, bench.Core.Alarms.CategoryOf(AlarmId.CycleSwitchFault));
        Assert.False(bench.Outputs.HealthyRelay);
        Assert.False(bench.Outputs.Warning);
        Assert.True(bench.Core.IsDistrusted(0));
        Assert.False(bench.Core.IsDistrusted(1));
    }

    [Fact]
    public void Another_switch_that_falls_silent_only_informs()
    {
        CoreBench bench = TwoSwitches();
        bench.Pulses(3);
        Assert.Equal("cycle-switch-fault", bench.Standing());
        Assert.Equal(AlarmAction.None, bench.Core.Alarms.ActionOf(AlarmId.CycleSwitchFault));
        Assert.Equal(AlarmCategory.OutOfSpecification, bench.Core.Alarms.CategoryOf(AlarmId.CycleSwitchFault));
        Assert.Equal(Phase.Dose, bench.Phase);
        Assert.True(bench.Outputs.HealthyRelay);
        Assert.True(bench.Outputs.Warning);
        Assert.True(bench.Core.IsDistrusted(1));
    }

    [Fact]
    public void A_pulse_of_its_own_clears_a_switch_of_suspicion()
    {
        CoreBench bench = TwoSwitches();
        for (int time = 0; time < 4; time++)
            bench.Pulses(2, 1).Pulse(0);
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void Witnesses_are_counted_one_by_one()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.SwitchCount] = 3;
            settings[SettingField.DoseEdges] = 100;
        }).ToRunningDose();
        bench.Pulses(2, 1).Pulses(2, 2);
        Assert.False(bench.Stands(AlarmId.CycleSwitchFault));
        bench.Pulse(2);
        Assert.True(bench.Core.IsDistrusted(0));
    }

    [Fact]
    public void Idle_pulses_are_no_witnesses()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.SwitchCount] = 2;
            settings[SettingField.WitnessPulses] = 5;
        }).ToRest();
        bench.Run(6_000).Pulses(6, 1);
        Assert.Equal("pulse-while-idle", bench.Standing());
    }

    [Fact]
    public void Half_cycles_are_witnessed_by_on_edges_alone()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.SwitchCount] = 2;
            settings[SettingField.EdgesPerCycle] = 2;
            settings[SettingField.DoseEdges] = 100;
        }).ToRunningDose();
        bench.Pulses(2, 1);
        Assert.False(bench.Stands(AlarmId.CycleSwitchFault));
        bench.Pulse(1);
        Assert.True(bench.Stands(AlarmId.CycleSwitchFault));
    }

    [Fact]
    public void Witness_pulses_zero_judges_nothing()
    {
        CoreBench bench = TwoSwitches(settings => settings[SettingField.WitnessPulses] = 0);
        bench.Pulses(20);
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void Pulses_of_a_switch_that_is_not_trusted_neither_count_nor_witness_nor_renew()
    {
        CoreBench bench = TwoSwitches();
        bench.Pulses(3);
        int pulses = bench.Core.PulsesOf(1);
        bench.ClearLog();
        bench.Pulses(3, 1);
        Assert.Equal(["pulse 2 distrusted", "pulse 2 distrusted", "pulse 2 distrusted"], bench.Log);
        Assert.Equal(pulses, bench.Core.PulsesOf(1));
        Assert.Equal(Phase.Dose, bench.Phase);
    }

    [Fact]
    public void The_timeout_of_another_switch_that_is_not_trusted_is_not_judged()
    {
        CoreBench bench = TwoSwitches();
        bench.Pulses(3);
        for (int time = 0; time < 30; time++)
            bench.Run(1_000).Pulse();
        Assert.Equal(Phase.Dose, bench.Phase);
        Assert.Equal("cycle-switch-fault", bench.Standing());
    }

    [Fact]
    public void Reset_ends_what_a_witness_proved_and_the_switch_is_trusted_again()
    {
        CoreBench bench = TwoSwitches();
        bench.Pulses(3, 1).Press(Button.Reset);
        Assert.Equal("", bench.Standing());
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.False(bench.Core.IsDistrusted(0));
        Assert.Equal(AlarmAction.None, bench.Core.Alarms.ActionOf(AlarmId.CycleSwitchFault));
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(2, 1).Pulse(0);
        Assert.Equal(Phase.Dose, bench.Phase);
        bench.Pulses(3, 1);
        Assert.True(bench.Stands(AlarmId.CycleSwitchFault));
    }

    [Theory]
    [InlineData(19, false)]
    [InlineData(20, true)]
    public void As_many_changes_in_the_window_as_set_are_chatter(int changes, bool fault)
    {
        CoreBench bench = new CoreBench().ToDose();
        for (int change = 0; change < changes; change++)
            bench.Switch(change % 2 == 0).Run(10);
        bench.Run(3_000);
        Assert.Equal(fault, bench.Stands(AlarmId.CycleSwitchFault));
        Assert.Equal(fault ? Phase.Failed : Phase.Dose, bench.Phase);
        Assert.Equal(fault ? 1 : 0, bench.Log.Count(line => line == "switch 1 found wrong by chatter"));
    }

    [Fact]
    public void Two_switches_may_chatter_at_once()
    {
        CoreBench bench = TwoSwitches();
        for (int change = 0; change < 20; change++)
            bench.Switch(change % 2 == 0, 0).Switch(change % 2 == 0, 1).Run(10);
        Assert.True(bench.Core.Alarms.IsActive(AlarmId.CycleSwitchFault));
        Assert.True(bench.Core.IsDistrusted(0) && bench.Core.IsDistrusted(1));
        Assert.Equal(Phase.Failed, bench.Phase);
        bench.Run(5_000).Press(Button.Reset);
        Assert.False(bench.Core.IsDistrusted(0) || bench.Core.IsDistrusted(1));
    }

    [Fact]
    public void A_switch_trusted_again_is_judged_by_the_rank_it_has_now()
    {
        CoreBench bench = TwoSwitches();
        bench.Pulses(3, 1).Press(Button.Reset);
        Assert.Equal(AlarmCategory.OutOfSpecification, bench.Core.Alarms.CategoryOf(AlarmId.CycleSwitchFault));
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(3);
        Assert.Equal("cycle-switch-fault", bench.Standing());
        Assert.Equal(Phase.Dose, bench.Phase);
    }

    [Fact]
    public void A_fault_that_comes_to_end_doses_is_raised_again_although_it_was_acknowledged()
    {
        CoreBench bench = TwoSwitches();
        bench.Chatter(1).Press(Button.Acknowledge).ClearLog();
        Assert.Equal(AlarmState.Acknowledged, bench.Core.Alarms.StateOf(AlarmId.CycleSwitchFault));
        bench.Chatter(0);
        Assert.Equal(["+cycle-switch-fault"], bench.AlarmLines);
        Assert.Equal(AlarmState.Unacknowledged, bench.Core.Alarms.StateOf(AlarmId.CycleSwitchFault));
    }

    [Fact]
    public void Changes_spread_over_two_windows_are_no_chatter()
    {
        CoreBench bench = new CoreBench().ToDose();
        for (int time = 0; time < 4; time++)
        {
            for (int change = 0; change < 18; change++)
                bench.Switch(change % 2 == 0).Run(10);
            bench.Run(1_900);
        }

        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void Chatter_ends_with_the_first_whole_window_without_it_and_only_then_reset_helps()
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.Chatter();
        Assert.True(bench.Core.Alarms.IsActive(AlarmId.CycleSwitchFault));
        bench.Press(Button.Reset);
        Assert.True(bench.Stands(AlarmId.CycleSwitchFault));
        Assert.True(bench.Core.IsDistrusted(0));
        Assert.Equal(Phase.Failed, bench.Phase);
        Assert.InRange(bench.RunUntil(() => !bench.Core.Alarms.IsActive(AlarmId.CycleSwitchFault), 10_000), 3_500, 3_800);
        Assert.True(bench.Stands(AlarmId.CycleSwitchFault));
        bench.Press(Button.Reset);
        Assert.Equal("", bench.Standing());
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.False(bench.Core.IsDistrusted(0));
    }

    [Fact]
    public void The_delay_off_of_chatter_is_kept_by_reset()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.DelayOff(AlarmId.CycleSwitchFault)] = 10_000).ToDose();
        bench.Chatter().Run(5_000).Press(Button.Reset);
        Assert.True(bench.Stands(AlarmId.CycleSwitchFault));
        bench.Run(10_000).Press(Button.Reset);
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void Chatter_in_rest_drops_the_relay_and_fails_the_next_dose_before_the_pump_runs()
    {
        CoreBench bench = new CoreBench().ToRest().Run(6_000);
        bench.Chatter();
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.False(bench.Outputs.HealthyRelay);
        bool pumped = false;
        for (int tick = 0; tick < 7_000; tick++)
            pumped |= bench.Run(10).Outputs.Pump;
        Assert.False(pumped);
        Assert.Equal(["rest > dose", "dose > failed"], bench.Phases);
    }

    [Fact]
    public void Chatter_changes_zero_judges_nothing()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.ChatterChanges] = 0).ToDose();
        bench.Chatter().Chatter().Chatter();
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void Changes_before_the_baseline_are_no_chatter()
    {
        CoreBench bench = new CoreBench();
        bench.Chatter().Run(1_000);
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void A_cut_ends_chatter_but_not_the_distrust()
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.Chatter().CutPower().Run(1_000);
        Assert.False(bench.Core.Alarms.IsActive(AlarmId.CycleSwitchFault));
        Assert.True(bench.Core.IsDistrusted(0));
        Assert.Equal(Phase.Failed, bench.Phase);
        bench.Press(Button.Reset);
        Assert.False(bench.Core.IsDistrusted(0));
    }

    private static CoreBench TwoSwitches(Action<Settings>? more = null) => new CoreBench(settings =>
    {
        settings[SettingField.SwitchCount] = 2;
        settings[SettingField.DoseEdges] = 100;
        more?.Invoke(settings);
    }).ToRunningDose();
}
