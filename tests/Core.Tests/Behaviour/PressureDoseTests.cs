using System;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>A dose by pressure from its first step to its last, and what ends it otherwise.</summary>
public sealed class PressureDoseTests
{
    [Fact]
    public void A_dose_is_counted_once_pressure_was_reached_held_and_vented()
    {
        CoreBench bench = Resting().Press(Button.DoseNow);
        bench.Run(1_000).Pressure(TestSettings.ReachedMbar).Run(10);
        Assert.Equal(TestSettings.HoldMs, bench.RunUntil(() => !bench.Outputs.Pump, 60_000));
        bench.Run(3_000).Pressure(TestSettings.VentedMbar).Run(10);
        Assert.Equal(1, bench.Core.DosesCompleted);
        Assert.Equal(TestSettings.VentMs, bench.RunUntil(Phase.Rest, 60_000));
        Assert.Equal(
            ["DoseNow obeyed", "rest > dose", "step pressurise 0", "step hold 0", "step vent 0", "dose completed with 1", "dose > rest"],
            bench.Log);
        Assert.Equal(2, bench.Core.DosesCompleted);
        Assert.False(bench.Core.DosePending);
        Assert.Equal((DoseStep.None, 0), (bench.Core.DoseStep, bench.Core.PressureCycles));
        Assert.Equal("", bench.Standing());
        Assert.InRange(bench.RunUntil(Phase.Dose, 100_000), TestSettings.RestMs, TestSettings.RestMs);
    }

    [Fact]
    public void A_dose_of_several_pressure_cycles_vents_after_each_of_them()
    {
        CoreBench bench = Resting(settings => settings[SettingField.PressureCycles] = 3).Press(Button.DoseNow);
        bench.PressureCycle();
        Assert.Equal((1, DoseStep.Pressurise, true), (bench.Core.PressureCycles, bench.Core.DoseStep, bench.Outputs.Pump));
        bench.PressureCycle();
        Assert.Equal(2, bench.Core.PressureCycles);
        bench.Run(2_000).PressureCycle();
        Assert.Equal(
            [
                "DoseNow obeyed", "rest > dose", "step pressurise 0", "step hold 0", "step vent 0", "step pressurise 1", "step hold 1",
                "step vent 1", "step pressurise 2", "step hold 2", "step vent 2", "dose completed with 3", "dose > rest",
            ],
            bench.Log);
        Assert.Equal(2, bench.Core.DosesCompleted);
    }

    [Theory]
    [InlineData(TestSettings.ReachedMbar - 1, DoseStep.Pressurise)]
    [InlineData(TestSettings.ReachedMbar, DoseStep.Hold)]
    public void Pressure_is_reached_from_its_setting_on(int pressureMbar, DoseStep step)
    {
        CoreBench bench = Dosing().Pressure(pressureMbar).Run(10);
        Assert.Equal(step, bench.Core.DoseStep);
        Assert.True(bench.Outputs.Pump);
    }

    [Theory]
    [InlineData(TestSettings.VentedMbar + 1, 1)]
    [InlineData(TestSettings.VentedMbar, 2)]
    public void The_line_is_vented_up_to_its_setting(int pressureMbar, int completed)
    {
        CoreBench bench = Venting().Pressure(pressureMbar).Run(TestSettings.VentMs + 10);
        Assert.Equal(completed, bench.Core.DosesCompleted);
    }

    [Fact]
    public void Pressure_that_is_lost_while_it_is_held_must_be_reached_and_held_anew_with_the_pump_on()
    {
        CoreBench bench = Dosing().Pressure(12_000).Run(TestSettings.HoldMs);
        bench.Pressure(9_999).Run(10);
        Assert.True(bench.Outputs.Pump);
        bench.Run(3_000).Pressure(12_000).Run(10);
        Assert.Equal(TestSettings.HoldMs, bench.RunUntil(() => !bench.Outputs.Pump, 60_000));
        Assert.Equal(["step hold 0", "step pressurise 0", "step hold 0", "step vent 0"], bench.Log);
    }

    [Fact]
    public void Pressure_that_is_lost_just_as_its_hold_time_ends_was_not_held()
    {
        CoreBench bench = Dosing().Pressure(12_000).Run(TestSettings.HoldMs);
        Assert.Equal(DoseStep.Hold, bench.Core.DoseStep);
        bench.Pressure(9_999).Run(10);
        Assert.Equal(DoseStep.Pressurise, bench.Core.DoseStep);
    }

    [Fact]
    public void Pressure_that_comes_and_goes_without_being_held_is_bounded_by_the_dose_limit()
    {
        CoreBench bench = Dosing();
        int pumpOnMs = 0;
        while (bench.Phase == Phase.Dose)
        {
            bench.Pressure(bench.Inputs.PressureMbar == 0 ? 12_000 : 0).Run(1_000);
            pumpOnMs += 1_000;
        }

        // The limit ends within the last second.
        Assert.InRange(pumpOnMs, TestSettings.LimitMs - 60, TestSettings.LimitMs + 1_000);
        Assert.Equal("dose-too-long", bench.Standing());
        Assert.False(bench.Outputs.Pump);
        Assert.Equal(1, bench.Core.DosesCompleted);
    }

    [Fact]
    public void Pressure_that_is_not_reached_stops_the_pump_within_its_time()
    {
        CoreBench bench = Resting().Set(Button.DoseNow, true);
        bench.RunUntil(Phase.Dose, 100);
        bench.Pressure(TestSettings.ReachedMbar - 1);
        Assert.Equal(TestSettings.MissingMs, bench.RunUntil(() => !bench.Outputs.Pump, 60_000));
        Assert.Equal(["DoseNow obeyed", "rest > dose", "step pressurise 0", "+line-pressure-missing", "dose > failed"], bench.Log);
        Assert.True(bench.Core.DosePending);
        Assert.Equal(DoseStep.None, bench.Core.DoseStep);
        bench.Run(300_000);
        Assert.False(bench.Outputs.Pump);
        Assert.Equal(1, bench.Core.DosesCompleted);
    }

    [Fact]
    public void Each_pressure_cycle_owes_its_pressure_for_a_time_of_its_own()
    {
        CoreBench bench = Resting(settings => settings[SettingField.PressureCycles] = 2).Press(Button.DoseNow);
        bench.Run(7_000).PressureCycle();
        Assert.Equal(DoseStep.Pressurise, bench.Core.DoseStep);
        Assert.Equal(TestSettings.MissingMs, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal("line-pressure-missing", bench.Standing());
        Assert.Equal(1, bench.Core.PressureCycles);
    }

    [Fact]
    public void A_line_whose_pressure_does_not_fall_is_not_vented_and_the_dose_is_not_counted()
    {
        CoreBench bench = Dosing().Pressure(12_000).Run(TestSettings.HoldMs + 10);
        Assert.Equal(DoseStep.Vent, bench.Core.DoseStep);
        bench.Pressure(TestSettings.VentedMbar + 1);
        Assert.Equal(TestSettings.VentLimitMs, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal(["step hold 0", "step vent 0", "+line-not-vented", "dose > failed"], bench.Log);
        Assert.Equal(1, bench.Core.DosesCompleted);
        Assert.True(bench.Core.DosePending);
    }

    [Fact]
    public void Pressure_that_rises_again_while_the_line_is_vented_starts_the_vent_time_anew()
    {
        CoreBench bench = Venting().Pressure(0).Run(5_000);
        bench.Pressure(TestSettings.VentedMbar + 1).Run(10).Pressure(0).Run(10);
        Assert.Equal(TestSettings.VentMs, bench.RunUntil(Phase.Rest, 60_000));
    }

    [Fact]
    public void Venting_whose_vent_time_is_not_over_within_the_limit_has_failed()
    {
        CoreBench bench = Venting();
        bench.Run(TestSettings.VentLimitMs - TestSettings.VentMs).Pressure(0);
        Assert.Equal(TestSettings.VentMs, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal("line-not-vented", bench.Standing());
    }

    [Fact]
    public void Venting_whose_vent_time_ends_with_the_limit_has_not_failed()
    {
        CoreBench bench = Venting();
        bench.Run(TestSettings.VentLimitMs - TestSettings.VentMs - 10).Pressure(0);
        Assert.Equal(TestSettings.VentMs + 10, bench.RunUntil(Phase.Rest, 60_000));
        Assert.Equal("", bench.Standing());
    }

    [Theory]
    [InlineData(TestSettings.VentedMbar + 1)]
    [InlineData(12_000)]
    public void Pressure_that_stands_before_the_pump_has_run_keeps_the_pump_off_and_is_no_dose(int pressureMbar)
    {
        CoreBench bench = Resting().Pressure(pressureMbar).Run(10).Set(Button.DoseNow, true);
        bench.RunUntil(Phase.Dose, 100);
        Assert.False(bench.Outputs.Pump);
        Assert.Equal(TestSettings.VentLimitMs, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal(["DoseNow obeyed", "rest > dose", "step recharge 0", "+line-not-vented", "dose > failed"], bench.Log);
        Assert.Equal(1, bench.Core.DosesCompleted);
    }

    [Fact]
    public void A_line_that_stood_vented_for_its_time_only_after_the_dose_began_is_pressurised_then()
    {
        CoreBench bench = Resting().Pressure(12_000).Run(10).Set(Button.DoseNow, true);
        bench.RunUntil(Phase.Dose, 100);
        bench.Pressure(0).Run(10);
        Assert.Equal(TestSettings.VentMs, bench.RunUntil(() => bench.Outputs.Pump, 60_000));
        Assert.Equal(["DoseNow obeyed", "rest > dose", "step recharge 0", "step pressurise 0"], bench.Log);
    }

    [Fact]
    public void A_reset_ends_line_not_vented_and_it_rises_again_within_its_bound_while_the_cause_stays()
    {
        CoreBench bench = Resting().Pressure(12_000).Run(10).Press(Button.DoseNow);
        bench.RunUntil(Phase.Failed, 20_000);
        bench.ClearLog();
        bench.Press(Button.Reset);
        Assert.Equal("", bench.Standing());
        bench.RunUntil(Phase.Dose, TestSettings.RestartMs);
        Assert.Equal(TestSettings.VentLimitMs, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal(
            ["Reset obeyed", "-line-not-vented", "~line-not-vented", "failed > rest", "rest > dose", "step recharge 0", "+line-not-vented", "dose > failed"],
            bench.Log);
    }

    [Fact]
    public void A_reset_while_the_line_is_vented_starts_its_limit_anew()
    {
        CoreBench bench = Venting().Run(14_000).Set(Button.Reset, true);
        bench.RunUntil(() => bench.Log.Contains("Reset obeyed"), 100);
        Assert.Equal(TestSettings.VentLimitMs, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal("line-not-vented", bench.Standing());
    }

    [Fact]
    public void A_reset_in_the_very_scan_of_line_not_vented_leaves_the_dose_to_begin_its_pressure_cycle_anew()
    {
        CoreBench bench = Venting().Run(TestSettings.VentLimitMs - 30).Hold(Button.Reset);
        Assert.Equal(["+line-not-vented", "Reset obeyed", "-line-not-vented", "~line-not-vented", "step recharge 0"], bench.Log);
        Assert.Equal(Phase.Dose, bench.Phase);
        bench.Pressure(0).RunUntil(() => bench.Outputs.Pump, TestSettings.VentMs + 20);
    }

    [Fact]
    public void A_new_try_after_line_not_vented_has_a_limit_of_its_own_and_ends_the_condition_when_it_completes()
    {
        CoreBench bench = Resting(settings => settings[SettingField.NewTryDelayMs] = 12_000).Pressure(12_000).Run(10).Press(Button.DoseNow);
        bench.RunUntil(Phase.Failed, 20_000);
        Assert.Equal(12_000, bench.RunUntil(Phase.Dose, 60_000));
        Assert.Equal(TestSettings.VentLimitMs, bench.RunUntil(Phase.Failed, 60_000));
        bench.Pressure(0).RunUntil(() => bench.Outputs.Pump, 20_000);
        bench.ClearLog();
        bench.PressureCycle();
        Assert.Equal(["step hold 0", "step vent 0", "dose completed with 1", "-line-not-vented", "dose > failed"], bench.Log);
        Assert.True(bench.Core.Alarms.IsLatched(AlarmId.LineNotVented));
        Assert.False(bench.Core.DosePending);
    }

    [Fact]
    public void Overdue_rises_though_the_pump_may_not_run()
    {
        CoreBench bench = Resting(settings => settings[SettingField.OverdueMs] = 80_000).Pressure(12_000);
        bench.Run(80_000);
        Assert.Equal("lubrication-overdue line-not-vented", bench.Standing());
    }

    [Fact]
    public void Pulses_of_a_watching_cycle_switch_neither_count_nor_are_credited_nor_tell_a_position()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.SwitchCount] = 1;
        }).ToRunningDose();
        bench.Pulses(5);
        Assert.Equal(0, bench.Core.DoseEdges);
        bench.PressureCycle().Pulse();
        Assert.Equal(0, bench.Core.OpenedCounts);
        Assert.False(bench.Core.PositionKnown);
        Assert.Equal(Enumerable.Repeat("pulse 1 seen", 6), bench.PulseLines);
    }

    [Fact]
    public void A_watching_cycle_switch_that_falls_silent_stalls_the_dose_and_its_time_is_pump_on_time()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.SwitchCount] = 1;
            settings[SettingField.PressureCycles] = 9;
            settings[SettingField.FirstPulseAllowanceMs] = 1_000;
            settings.SetTimeout(0, 9_000);
        }).ToRunningDose();

        // Pump on for hold-time and one scan in each pressure cycle; ten seconds of it are over in the fifth.
        bench.PressureCycles(4).RunUntil(Phase.Failed, 5_000);
        Assert.Equal("divider-stalled", bench.Standing());
        Assert.Equal(4, bench.Core.PressureCycles);
    }

    [Fact]
    public void A_retry_pause_vents_the_line_and_the_dose_goes_on_from_a_recharged_one()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.SwitchCount] = 1;
            settings[SettingField.FirstPulseAllowanceMs] = 0;
            settings.SetTimeout(0, 5_000);
            settings.SetRetries(0, 1);
        }).ToRunningDose();
        bench.RunUntil(Phase.RetryPause, 6_000);
        bench.RunUntil(() => bench.Outputs.Pump, 20_000);
        Assert.Equal(
            ["dose > retry pause", "retry pause > dose", "step recharge 0", "step pressurise 0"],
            bench.Log);
    }

    [Fact]
    public void Other_dose_modes_know_no_steps()
    {
        CoreBench bench = Venting();
        Assert.True(bench.Core.UseSettings(TestSettings.Make()));
        bench.Run(10);
        Assert.Equal((DoseStep.None, 0), (bench.Core.DoseStep, bench.Core.PressureCycles));
        Assert.True(bench.Outputs.Pump);
        Assert.True(bench.Core.UseSettings(bench.Settings));
        bench.ClearLog();
        bench.Run(10);
        Assert.Equal(["step recharge 0"], bench.Log);
        Assert.False(bench.Outputs.Pump);
    }

    private static CoreBench Resting(Action<Settings>? more = null) => new CoreBench(settings =>
    {
        TestSettings.ByPressure(settings);
        more?.Invoke(settings);
    }).ToRest();

    private static CoreBench Dosing()
    {
        CoreBench bench = Resting().Press(Button.DoseNow);
        Assert.Equal(DoseStep.Pressurise, bench.Core.DoseStep);
        bench.ClearLog();
        return bench;
    }

    /// <summary>Venting has just begun, and the pressure stands.</summary>
    private static CoreBench Venting()
    {
        CoreBench bench = Dosing().Pressure(12_000);
        bench.RunUntil(() => bench.Core.DoseStep == DoseStep.Vent, TestSettings.HoldMs + 20);
        bench.ClearLog();
        return bench;
    }
}
