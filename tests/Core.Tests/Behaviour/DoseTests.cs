using Xunit;

namespace LubeController.Core.Tests;

/// <summary>How a dose ends, is interrupted, goes on and is tried anew.</summary>
public sealed class DoseTests
{
    [Fact]
    public void A_dose_by_run_time_ends_after_its_pump_on_time()
    {
        CoreBench bench = new CoreBench(RunTime);
        bench.RunUntil(Phase.Dose, 12_000);
        Assert.Equal(30_000, bench.RunUntil(Phase.Rest, 60_000));
        Assert.Equal(1, bench.Core.DosesCompleted);
        Assert.False(bench.Core.DosePending);
    }

    [Fact]
    public void A_dose_by_run_time_keeps_its_pump_on_time_over_an_interruption()
    {
        CoreBench bench = new CoreBench(RunTime);
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Run(20_000).CutPower();
        Assert.Equal(TestSettings.RestartMs, bench.RunUntil(Phase.Dose, 60_000));
        Assert.Equal(10_000, bench.RunUntil(Phase.Rest, 60_000));
    }

    [Fact]
    public void A_dose_by_run_time_may_be_watched_by_a_cycle_switch()
    {
        CoreBench bench = new CoreBench(RunTime);
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(5);
        Assert.Equal(Phase.Dose, bench.Phase);
        Assert.Equal(5, bench.Core.DoseEdges);
        Assert.Equal(0, bench.Core.OpenedCounts);

        // The last edge was accepted in the scan 60 ms after its level came, and 240 ms have passed since.
        Assert.Equal(25_000 - 240, bench.RunUntil(Phase.Failed, 60_000));
        Assert.True(bench.Stands(AlarmId.DividerStalled));
    }

    [Fact]
    public void A_dose_by_run_time_does_not_tell_the_position_to_a_later_dose_by_cycles()
    {
        CoreBench bench = new CoreBench(RunTime);
        bench.RunUntil(Phase.Dose, 12_000);
        while (bench.Phase == Phase.Dose)
            bench.Pulse();
        bench.Pulse();
        Assert.True(bench.Core.UseSettings(TestSettings.Make()));
        bench.Run(6_000).Press(Button.DoseNow).Pulses(3);
        Assert.Equal(Phase.Dose, bench.Phase);
    }

    [Theory]
    [InlineData(14_990, false)]
    [InlineData(15_000, true)]
    public void A_dose_is_too_long_at_its_limit(int pumpOnMs, bool tooLong)
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.DoseLimitMs] = 15_000).ToRest();
        bench.Run(6_000).Set(Button.DoseNow, true).RunUntil(Phase.Dose, 100);
        bench.Run(pumpOnMs);
        Assert.Equal(tooLong, bench.Stands(AlarmId.DoseTooLong));
        Assert.Equal(tooLong ? Phase.Failed : Phase.Dose, bench.Phase);
    }

    [Fact]
    public void Pump_on_time_adds_up_over_retries_and_cuts()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.DoseLimitMs] = 30_000;
            settings.SetRetries(0, 5);
        }).ToRest();
        bench.Run(6_000).Set(Button.DoseNow, true).RunUntil(Phase.Dose, 100);
        bench.Set(Button.DoseNow, false);
        Assert.Equal(25_000, bench.RunUntil(Phase.RetryPause, 60_000));
        bench.RunUntil(Phase.Dose, 5_000);
        bench.Run(2_000).CutPower().RunUntil(Phase.Dose, 12_000);
        Assert.Equal(3_000, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal("dose-too-long", bench.Standing());
    }

    [Fact]
    public void After_a_reset_a_dose_that_was_too_long_goes_on_with_a_fresh_limit()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.DoseLimitMs] = 15_000).ToDose();
        bench.Pulse().RunUntil(Phase.Failed, 20_000);
        bench.Press(Button.Reset);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.RunUntil(Phase.Dose, 12_000);
        Assert.Equal(1, bench.Core.DoseEdges);
        bench.Run(1_000).Pulses(3);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void Another_failures_reset_leaves_the_pump_on_time_of_the_dose()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.DoseLimitMs] = 22_000).ToDose();
        bench.Run(10_000).Empty(true).Empty(false).Press(Button.Reset);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.RunUntil(Phase.Dose, 12_000);
        Assert.InRange(bench.RunUntil(Phase.Failed, 60_000), 11_000, 12_000);
        Assert.Equal("dose-too-long", bench.Standing());
    }

    [Fact]
    public void A_dose_once_begun_is_finished_although_the_machine_stops()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.RestOnlyWhileRunning] = 1).ToDose();
        bench.Inputs.MachineRunning = false;
        bench.Pulses(3);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Equal(["dose > rest"], bench.Phases);
    }

    [Theory]
    [InlineData("stop")]
    [InlineData("cut")]
    [InlineData("failure")]
    public void An_interrupted_dose_keeps_its_count_and_goes_on_after_the_restart_delay(string how)
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.Pulse();
        switch (how)
        {
            case "stop":
                bench.Inputs.Stop = true;
                bench.Run(30_000);
                bench.Inputs.Stop = false;
                bench.Set(Button.Start, true).RunUntil(Phase.Rest, 100);
                break;
            case "cut":
                bench.CutPower();
                break;
            default:
                bench.Empty(true).Empty(false).Set(Button.Reset, true).RunUntil(Phase.Rest, 100);
                break;
        }

        Assert.True(bench.Core.DosePending);
        Assert.Equal(TestSettings.RestartMs, bench.RunUntil(Phase.Dose, 60_000));
        Assert.Equal(1, bench.Core.DoseEdges);
    }

    [Fact]
    public void The_restart_delay_precedes_the_first_dose_where_no_state_was_found()
    {
        CoreBench bench = new CoreBench();
        bench.Scan();
        Assert.Equal(TestSettings.RestartMs, bench.RunUntil(Phase.Dose, 60_000));
    }

    [Fact]
    public void Line_pressure_is_missing_after_its_pump_on_time_without_it()
    {
        CoreBench bench = PressureBench();
        bench.RunUntil(Phase.Dose, 12_000);
        Assert.Equal(8_000, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal("line-pressure-missing", bench.Standing());
    }

    [Fact]
    public void Line_pressure_that_is_reached_renews_its_time()
    {
        CoreBench bench = PressureBench();
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Run(7_000);
        bench.Inputs.PressureMbar = 10_000;
        bench.Run(5_000);
        bench.Inputs.PressureMbar = 9_999;
        bench.Run(8_000);
        Assert.Equal("", bench.Standing());
        bench.Run(10);
        Assert.Equal("line-pressure-missing", bench.Standing());
    }

    [Fact]
    public void A_pressure_switch_shows_line_pressure_after_its_debounce()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Reached;
            settings[SettingField.PressureSwitchInverted] = 1;
            settings[SettingField.PressureMissingMs] = 8_000;
        });
        bench.Inputs.PressureSwitch = true;
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Run(7_970);
        bench.Inputs.PressureSwitch = false;
        bench.Run(20);
        bench.Inputs.PressureSwitch = true;
        bench.Run(10);
        Assert.Equal("line-pressure-missing", bench.Standing());
        bench.Press(Button.Reset).RunUntil(Phase.Dose, 12_000);
        bench.Inputs.PressureSwitch = false;
        bench.Run(19_000);
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void A_pressure_switch_at_its_limit_is_an_interlock()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Limit).ToDose();
        bench.Inputs.PressureSwitch = true;
        bench.Scan().Run(40);
        Assert.Equal(Phase.Dose, bench.Phase);
        bench.Run(10);
        Assert.Equal(Phase.Failed, bench.Phase);
        Assert.Equal("line-overpressure", bench.Standing());
    }

    [Fact]
    public void A_switch_or_transmitter_that_is_not_fitted_says_nothing()
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.Inputs.PressureMbar = 900_000;
        bench.Inputs.PressureSwitch = true;
        bench.Run(1_000);
        Assert.Equal(Phase.Dose, bench.Phase);
    }

    [Fact]
    public void Pressure_missing_time_zero_judges_nothing()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.PressureTransmitterFitted] = 1);
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Run(24_000);
        Assert.Equal("", bench.Standing());
    }

    private static CoreBench PressureBench() => new(settings =>
    {
        settings[SettingField.PressureTransmitterFitted] = 1;
        settings[SettingField.PressureMissingMs] = 8_000;
    });

    private static void RunTime(Settings settings)
    {
        settings[SettingField.DoseMode] = (int)DoseMode.RunTime;
        settings[SettingField.DoseRunMs] = 30_000;
        settings.SetTimeout(0, 25_000);
        settings[SettingField.FirstPulseAllowanceMs] = 6_000;
    }
}
