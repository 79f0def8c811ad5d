using System;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>New tries from failed.</summary>
public sealed class NewTryTests
{
    private const int DelayMs = 15_000;

    [Fact]
    public void Without_new_tries_failed_lasts()
    {
        CoreBench bench = new CoreBench().ToStalled();
        bench.Run(300_000);
        Assert.Empty(bench.Phases);
    }

    [Fact]
    public void A_try_begins_after_its_delay_and_has_one_timeout_with_allowance()
    {
        CoreBench bench = Stalled(settings => settings.SetRetries(0, 2));
        Assert.Equal(DelayMs, bench.RunUntil(Phase.Dose, 60_000));
        Assert.True(bench.Stands(AlarmId.DividerStalled));
        Assert.False(bench.Outputs.HealthyRelay);
        Assert.True(bench.Outputs.Pump);
        Assert.Equal(TestSettings.AllowanceMs + TestSettings.TimeoutMs, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal(["failed > dose", "dose > failed"], bench.Phases);
    }

    [Fact]
    public void A_try_that_completes_goes_back_to_failed_with_its_condition_ended_and_dosing_goes_on()
    {
        CoreBench bench = Stalled();
        bench.RunUntil(Phase.Dose, 60_000);
        bench.Pulses(3);
        Assert.Equal(Phase.Failed, bench.Phase);
        Assert.False(bench.Core.DosePending);
        Assert.False(bench.Core.Alarms.IsActive(AlarmId.DividerStalled));
        Assert.True(bench.Core.Alarms.IsLatched(AlarmId.DividerStalled));
        Assert.InRange(bench.RunUntil(Phase.Dose, 70_000), TestSettings.RestMs - 400, TestSettings.RestMs);
        bench.Pulses(3);
        Assert.Equal(3, bench.Core.DosesCompleted);
        Assert.Equal(Phase.Failed, bench.Phase);
        bench.Press(Button.Reset);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void A_try_that_fails_after_one_that_completed_raises_the_alarm_again()
    {
        CoreBench bench = Stalled();
        bench.RunUntil(Phase.Dose, 60_000);
        bench.Pulses(3).Press(Button.Acknowledge);
        Assert.False(bench.Core.Alarms.AnyUnseen);
        bench.RunUntil(Phase.Dose, 70_000);
        bench.ClearLog();
        bench.RunUntil(Phase.Failed, 60_000);
        Assert.Equal(["+divider-stalled", "dose > failed"], bench.Log);
        Assert.True(bench.Core.Alarms.IsUnseen(AlarmId.DividerStalled));
    }

    [Fact]
    public void No_try_begins_while_an_interlock_stands()
    {
        CoreBench bench = Stalled();
        bench.Empty(true).Run(60_000);
        Assert.Empty(bench.Phases);
        bench.Empty(false).Run(60_000);
        Assert.Empty(bench.Phases);
    }

    [Fact]
    public void An_interlock_ends_a_try()
    {
        CoreBench bench = Stalled();
        bench.RunUntil(Phase.Dose, 60_000);
        bench.Empty(true);
        Assert.Equal(Phase.Failed, bench.Phase);
    }

    [Fact]
    public void A_cut_in_a_try_leads_to_failed()
    {
        CoreBench bench = Stalled();
        bench.RunUntil(Phase.Dose, 60_000);
        bench.CutPower();
        Assert.Equal(Phase.Failed, bench.Phase);
        Assert.Equal(DelayMs, bench.RunUntil(Phase.Dose, 60_000));
    }

    [Fact]
    public void A_reset_in_a_try_makes_it_an_ordinary_dose()
    {
        CoreBench bench = Stalled();
        bench.RunUntil(Phase.Dose, 60_000);
        bench.Press(Button.Reset);
        Assert.Equal(Phase.Dose, bench.Phase);
        Assert.Equal("", bench.Standing());
        bench.Pulses(4);
        Assert.Equal(Phase.Rest, bench.Phase);
    }

    [Fact]
    public void A_try_after_a_dose_that_was_too_long_has_a_limit_of_its_own()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.NewTryDelayMs] = DelayMs;
            settings[SettingField.DoseLimitMs] = 12_000;
        }).ToDose();
        bench.RunUntil(Phase.Failed, 20_000);
        bench.RunUntil(Phase.Dose, 20_000);
        Assert.Equal(12_000, bench.RunUntil(Phase.Failed, 20_000));
    }

    [Fact]
    public void A_try_after_missing_pressure_has_a_time_of_its_own()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.NewTryDelayMs] = DelayMs;
            settings[SettingField.PressureTransmitterFitted] = 1;
            settings[SettingField.PressureMissingMs] = 8_000;
        });
        bench.RunUntil(Phase.Failed, 30_000);
        bench.RunUntil(Phase.Dose, 20_000);
        Assert.Equal(8_000, bench.RunUntil(Phase.Failed, 20_000));
    }

    [Fact]
    public void A_try_with_a_dose_ending_switch_that_is_not_trusted_is_bounded_by_its_timeout()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.NewTryDelayMs] = DelayMs).ToDose();
        bench.Chatter();
        Assert.Equal("cycle-switch-fault", bench.Standing());
        Assert.Equal(Phase.Failed, bench.Phase);
        bench.RunUntil(Phase.Dose, 20_000);
        bench.ClearLog();
        bench.Pulses(5);
        Assert.Equal(Phase.Dose, bench.Phase);
        Assert.Equal(Enumerable.Repeat("pulse 1 distrusted", 5), bench.PulseLines);
        Assert.Equal(TestSettings.AllowanceMs + TestSettings.TimeoutMs, (5 * 300) + bench.RunUntil(Phase.Failed, 60_000));
    }

    [Fact]
    public void Chatter_that_comes_back_in_a_try_ends_it()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.NewTryDelayMs] = DelayMs).ToDose();
        bench.Chatter().RunUntil(Phase.Dose, 20_000);
        bench.Run(1_000).Chatter().Run(CoreBench.TickMs);
        Assert.Equal(Phase.Failed, bench.Phase);
    }

    [Fact]
    public void Accepted_pulses_in_a_try_give_the_retries_back()
    {
        CoreBench bench = Stalled(settings => settings.SetRetries(0, 1));
        bench.RunUntil(Phase.Dose, 60_000);
        bench.Pulse();
        bench.RunUntil(Phase.RetryPause, 30_000);
        bench.RunUntil(Phase.Dose, 5_000);
        bench.Pulses(2);
        Assert.Equal(Phase.Failed, bench.Phase);
        Assert.False(bench.Core.Alarms.IsActive(AlarmId.DividerStalled));
    }

    private static CoreBench Stalled(Action<Settings>? more = null)
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.NewTryDelayMs] = DelayMs;
            more?.Invoke(settings);
        }).ToDose();
        bench.RunUntil(Phase.Failed, 200_000);
        bench.ClearLog();
        return bench;
    }
}
