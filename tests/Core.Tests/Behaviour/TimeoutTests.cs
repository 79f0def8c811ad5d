using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>Timeouts, retries and the stall bound.</summary>
public sealed class TimeoutTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void A_dose_without_a_pulse_stalls_exactly_at_the_bound(int retries)
    {
        // The bound of PHASES.md counts from the level change: debounce and one scan lie before the accepted edge,
        // which here ended the dose before, and count no time in dose.
        CoreBench bench = new CoreBench(settings => settings.SetRetries(0, retries)).ToRest();
        bench.Run(6_000).Set(Button.DoseNow, true).RunUntil(Phase.Dose, 100);
        int took = bench.RunUntil(Phase.Failed, 10 * 60_000);
        Assert.Equal(TestSettings.AllowanceMs + ((retries + 1) * TestSettings.TimeoutMs) + (retries * TestSettings.PauseMs), took);
        Assert.Equal("divider-stalled", bench.Standing());
        Assert.Equal(retries, bench.Phases.Count(change => change == "dose > retry pause"));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void Within_a_dose_the_allowance_is_not_granted(int retries)
    {
        CoreBench bench = new CoreBench(settings => settings.SetRetries(0, retries)).ToDose();
        bench.Switch(true).Scan();
        int took = bench.RunUntil(Phase.Failed, 10 * 60_000);
        Assert.Equal(TestSettings.DebounceMs + ((retries + 1) * TestSettings.TimeoutMs) + (retries * TestSettings.PauseMs), took);
    }

    [Fact]
    public void An_accepted_edge_renews_timeout_and_retries()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings.SetRetries(0, 1);
            settings[SettingField.DoseEdges] = 20;
        }).ToDose();
        for (int time = 0; time < 3; time++)
        {
            bench.RunUntil(Phase.RetryPause, TestSettings.TimeoutMs + TestSettings.AllowanceMs);
            bench.RunUntil(Phase.Dose, TestSettings.PauseMs);
            bench.Pulse();
            Assert.Equal(Phase.Dose, bench.Phase);
        }

        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void The_timer_is_carried_over_doses_and_no_new_dose_renews_it()
    {
        // Switch 2 never gives a pulse; each dose pumps for some seconds.
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.SwitchCount] = 2;
            settings[SettingField.WitnessPulses] = 0;
            settings.SetTimeout(1, 10_000);
        });
        bench.RunUntil(Phase.Dose, 12_000);
        int pumped = 0;
        while (bench.Phase != Phase.Failed && pumped < 60_000)
        {
            if (bench.Phase == Phase.Rest)
                bench.Run(6_000).Set(Button.DoseNow, true).Run(30).Set(Button.DoseNow, false);
            bool on = bench.Outputs.Pump;
            bench.Switch(pumped % 2_000 < 1_000).Run(10);
            pumped += on ? 10 : 0;
        }

        Assert.InRange(pumped, 9_900, 10_200);
        Assert.True(bench.Core.DosesCompleted >= 1);
        Assert.Equal("divider-stalled", bench.Standing());
    }

    [Fact]
    public void An_interrupted_dose_goes_on_with_the_rest_of_its_timeout_and_one_allowance()
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.Pulse().Run(14_750);
        for (int time = 0; time < 3; time++)
        {
            bench.Inputs.Stop = true;
            bench.Run(20);
            Assert.Equal(Phase.Stopped, bench.Phase);
            bench.Inputs.Stop = false;
            bench.Press(Button.Start);
            bench.RunUntil(Phase.Dose, 12_000);
        }

        int took = bench.RunUntil(Phase.Failed, 60_000);
        Assert.InRange(took, 9_900, 10_000);
    }

    [Fact]
    public void The_timer_survives_a_power_cut()
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.Run(20_000).CutPower().RunUntil(Phase.Dose, 12_000);
        Assert.InRange(bench.RunUntil(Phase.Failed, 60_000), 4_900, 5_000);
    }

    [Fact]
    public void Reset_renews_timeout_retries_and_allowance()
    {
        CoreBench bench = new CoreBench(settings => settings.SetRetries(0, 1)).ToDose();
        bench.RunUntil(Phase.RetryPause, 30_000);
        bench.RunUntil(Phase.Dose, 5_000);
        bench.Run(15_000).Set(Button.Reset, true).Run(30);
        Assert.Equal(TestSettings.AllowanceMs + TestSettings.TimeoutMs, bench.RunUntil(Phase.RetryPause, 60_000));
    }

    [Fact]
    public void Each_switch_has_a_timeout_and_retries_of_its_own()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.SwitchCount] = 2;
            settings[SettingField.WitnessPulses] = 0;
            settings[SettingField.DoseEdges] = 100;
            settings.SetTimeout(1, 8_000);
            settings.SetRetries(1, 2);
        });
        bench.RunUntil(Phase.Dose, 12_000);
        int ticks = 0;
        while (bench.Phase != Phase.Failed && ticks++ < 10_000)
            bench.Switch(ticks % 400 < 200).Run(10);
        Assert.Equal(
            ["rest > dose", "dose > retry pause", "retry pause > dose", "dose > retry pause", "retry pause > dose", "dose > failed"],
            bench.Phases);
        Assert.InRange(ticks * 10, (3 * 8_000) + (2 * TestSettings.PauseMs), (3 * 8_000) + (2 * TestSettings.PauseMs) + 100);
    }

    [Fact]
    public void Two_timeouts_that_end_in_the_same_scan_use_both_retries_and_one_pause()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.SwitchCount] = 2;
            settings[SettingField.FirstPulseAllowanceMs] = 0;
            settings.SetRetries(0, 1);
            settings.SetRetries(1, 1);
        });
        bench.RunUntil(Phase.Dose, 12_000);
        bench.ClearLog();
        Assert.Equal((2 * TestSettings.TimeoutMs) + TestSettings.PauseMs, bench.RunUntil(Phase.Failed, 120_000));
        Assert.Equal(["dose > retry pause", "retry pause > dose", "+divider-stalled", "dose > failed"], bench.Log);
    }

    [Fact]
    public void The_allowance_is_for_the_dose_ending_switch_alone()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.SwitchCount] = 2;
            settings[SettingField.DoseEndingSwitch] = 2;
        });
        bench.RunUntil(Phase.Dose, 12_000);
        Assert.Equal(TestSettings.TimeoutMs, bench.RunUntil(Phase.Failed, 60_000));
    }

    [Fact]
    public void A_run_on_pulse_renews_the_timeout()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.DoseEdges] = 20).ToDose();
        bench.Run(20_000);
        bench.Inputs.Stop = true;
        bench.Run(20).Pulse();
        bench.Inputs.Stop = false;
        bench.Press(Button.Start).RunUntil(Phase.Dose, 12_000);
        Assert.Equal(TestSettings.AllowanceMs + TestSettings.TimeoutMs, bench.RunUntil(Phase.Failed, 60_000));
    }

    [Fact]
    public void Time_in_prime_is_no_pump_on_time_of_a_dose()
    {
        CoreBench bench = new CoreBench(settings => settings.SetTimeout(0, 10_000)).ToRest();
        bench.Hold(Button.Prime).Run(25_000).Set(Button.Prime, false).Run(50);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.Set(Button.DoseNow, true).RunUntil(Phase.Dose, 100);
        Assert.Equal(TestSettings.AllowanceMs + 10_000, bench.RunUntil(Phase.Failed, 60_000));
    }

    [Fact]
    public void Retries_left_over_from_wider_settings_do_not_prolong_the_timeout()
    {
        CoreBench bench = new CoreBench(settings => settings.SetRetries(0, 3)).ToDose();
        for (int time = 0; time < 3; time++)
        {
            bench.RunUntil(Phase.RetryPause, 30_000);
            bench.RunUntil(Phase.Dose, 5_000);
        }

        Assert.True(bench.Core.UseSettings(TestSettings.Make()));
        bench.Run(10);
        Assert.Equal(Phase.Failed, bench.Phase);
    }
}
