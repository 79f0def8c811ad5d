using System;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>Buttons, stop and prime.</summary>
public sealed class ButtonTests
{
    public static TheoryData<Button> Buttons() => new(Enum.GetValues<Button>());

    [Theory]
    [MemberData(nameof(Buttons))]
    public void A_button_already_on_at_power_up_does_nothing_until_released(Button button)
    {
        CoreBench bench = new CoreBench().ToRest().Run(6_000);
        bench.Set(button, true).CutPower();
        bench.ClearLog();
        bench.Run(5_000);
        Assert.Empty(bench.Log);
        bench.Set(button, false).Run(100).Set(button, true).Run(100);
        Assert.Single(bench.Log, line => line.StartsWith(button.ToString(), StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Buttons))]
    public void A_press_acts_once_however_long_it_is_held(Button button)
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.PrimeLimitMs] = 3_600_000).ToRest().Run(6_000);
        bench.Set(button, true).Run(15_000).Set(button, false).Run(100);
        Assert.Single(bench.Log, line => line.StartsWith(button.ToString(), StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Buttons))]
    public void A_press_shorter_than_the_debounce_does_nothing(Button button)
    {
        CoreBench bench = new CoreBench().ToRest().Run(6_000);
        bench.Set(button, true).Run(20).Set(button, false).Run(100);
        Assert.Empty(bench.Log);
        bench.Set(button, true).Run(30).Set(button, false).Run(100);
        Assert.NotEmpty(bench.Log);
    }

    [Fact]
    public void Refused_presses_are_counted_and_reported()
    {
        CoreBench bench = new CoreBench().ToRest().Run(6_000);
        bench.Press(Button.Start).Press(Button.Start);
        Assert.Equal(["Start refused", "Start refused"], bench.Log);
        Assert.Equal(2, bench.Core.PressesRefused);
    }

    [Fact]
    public void Stop_turns_the_pump_off_in_the_same_scan_and_warns()
    {
        CoreBench bench = new CoreBench().ToDose();
        Assert.True(bench.Outputs.Pump);
        bench.Inputs.Stop = true;
        bench.Run(10);
        Assert.False(bench.Outputs.Pump);
        Assert.True(bench.Outputs.Warning);
        Assert.True(bench.Outputs.HealthyRelay);
        bench.Inputs.Stop = false;
        bench.Run(100_000);
        Assert.Equal(Phase.Stopped, bench.Phase);
    }

    [Fact]
    public void Stop_at_power_up_leads_to_stopped()
    {
        CoreBench bench = new CoreBench();
        bench.Inputs.Stop = true;
        bench.Scan();
        Assert.Equal(["rest > stopped"], bench.Phases);
    }

    [Fact]
    public void Stop_wins_over_presses_that_come_with_it()
    {
        CoreBench bench = new CoreBench().ToRest().Run(6_000);
        bench.Set(Button.DoseNow, true).Set(Button.Prime, true).Run(20);
        bench.Inputs.Stop = true;
        bench.Run(10);
        Assert.Equal(["rest > stopped"], bench.Phases);
        Assert.Equal(2, bench.Core.PressesRefused);
        Assert.False(bench.Core.DosePending);
    }

    [Fact]
    public void An_interlock_wins_over_presses_that_come_with_it()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.PressureTransmitterFitted] = 1).ToRest().Run(6_000);
        bench.Set(Button.DoseNow, true).Set(Button.Prime, true).Run(20);
        bench.Inputs.PressureMbar = 400_000;
        bench.Run(10);
        Assert.Equal(["rest > failed"], bench.Phases);
        Assert.Equal(2, bench.Core.PressesRefused);
    }

    [Fact]
    public void A_rest_that_ends_in_the_scan_of_a_stop_begins_no_dose()
    {
        CoreBench bench = new CoreBench();
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(3).Switch(true).RunUntil(Phase.Rest, 200);
        bench.Run(TestSettings.RestMs - 10);
        bench.Inputs.Stop = true;
        bench.Run(10);
        Assert.Equal(Phase.Stopped, bench.Phase);
        Assert.False(bench.Core.DosePending);
    }

    [Fact]
    public void A_reset_in_the_scan_of_a_failure_leaves_no_failed_phase_without_one()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Run(6_000).Set(Button.DoseNow, true).RunUntil(Phase.Dose, 100);
        bench.Run(TestSettings.AllowanceMs + TestSettings.TimeoutMs - 30).Set(Button.Reset, true).Run(30);
        Assert.Contains("+divider-stalled", bench.Log);
        Assert.Equal("", bench.Standing());
        Assert.Equal(Phase.Dose, bench.Phase);
        Assert.True(bench.Outputs.HealthyRelay);
    }

    [Theory]
    [InlineData(Phase.Rest)]
    [InlineData(Phase.Stopped)]
    [InlineData(Phase.Failed)]
    public void Prime_runs_the_pump_while_held_and_goes_back_to_where_it_came_from(Phase from)
    {
        CoreBench bench = From(from);
        bench.Hold(Button.Prime).Run(10_000);
        Assert.Equal(Phase.Prime, bench.Phase);
        Assert.True(bench.Outputs.Pump);
        Assert.True(bench.Outputs.Warning);
        bench.Set(Button.Prime, false).Run(50);
        Assert.Equal(from, bench.Phase);
        Assert.False(bench.Outputs.Pump);
    }

    [Theory]
    [InlineData(Phase.Rest)]
    [InlineData(Phase.Stopped)]
    [InlineData(Phase.Failed)]
    public void Prime_ends_at_its_limit_and_needs_a_fresh_press(Phase from)
    {
        CoreBench bench = From(from);
        bench.Set(Button.Prime, true).RunUntil(Phase.Prime, 100);
        Assert.Equal(TestSettings.PrimeMs, bench.RunUntil(from, 60_000));
        bench.Run(5_000);
        Assert.Equal(from, bench.Phase);
        bench.Set(Button.Prime, false).Run(50).Hold(Button.Prime);
        Assert.Equal(Phase.Prime, bench.Phase);
    }

    [Fact]
    public void Prime_after_a_reset_does_not_take_off_the_delay_before_the_next_dose()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.RestMs] = 20_000).ToRest();
        bench.Empty(true).Run(30_000).Empty(false).Press(Button.Reset);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.Press(Button.Prime);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.InRange(bench.RunUntil(Phase.Dose, 20_000), TestSettings.RestartMs - 100, TestSettings.RestartMs);
    }

    [Fact]
    public void A_cut_in_prime_from_failed_after_a_reset_leads_to_rest()
    {
        CoreBench bench = From(Phase.Failed);
        bench.Hold(Button.Prime).Press(Button.Reset);
        Assert.Equal("", bench.Standing());
        Assert.Equal(Phase.Prime, bench.Phase);
        bench.CutPower();
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.False(bench.Outputs.Pump);
    }

    [Fact]
    public void A_cut_in_prime_from_failed_leads_to_failed_while_a_failure_stands()
    {
        CoreBench bench = From(Phase.Failed);
        bench.Hold(Button.Prime).CutPower();
        Assert.Equal(Phase.Failed, bench.Phase);
    }

    [Fact]
    public void Stop_ends_prime()
    {
        CoreBench bench = From(Phase.Rest);
        bench.Hold(Button.Prime);
        bench.Inputs.Stop = true;
        bench.Run(10);
        Assert.Equal(["rest > prime", "prime > stopped"], bench.Phases);
    }

    [Fact]
    public void Acknowledge_and_reset_are_reported_in_every_phase()
    {
        foreach (Phase phase in new[] { Phase.Rest, Phase.Stopped, Phase.Failed })
        {
            CoreBench bench = From(phase);
            bench.Press(Button.Acknowledge).Press(Button.Reset);
            Assert.Contains("Acknowledge obeyed", bench.Log);
            Assert.Contains("Reset obeyed", bench.Log);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void The_empty_switch_has_a_polarity_and_a_debounce(int inverted)
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.LevelEmptyInverted] = inverted;
            settings[SettingField.LevelLowInverted] = inverted;
        });
        bench.Inputs.LevelEmpty = inverted == 1;
        bench.Inputs.LevelLow = inverted == 1;
        bench.ToRest().Run(6_000);
        bench.Inputs.LevelEmpty = inverted == 0;
        bench.Inputs.LevelLow = inverted == 0;
        bench.Scan().Run(TestSettings.LevelMs - 10);
        Assert.Equal("", bench.Standing());
        bench.Run(10);
        Assert.Equal("reservoir-empty reservoir-low", bench.Standing());
    }

    [Fact]
    public void Level_switches_that_are_not_fitted_say_nothing()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.LevelEmptyFitted] = 0;
            settings[SettingField.LevelLowFitted] = 0;
        }).ToRest();
        bench.Inputs.LevelEmpty = true;
        bench.Inputs.LevelLow = true;
        bench.Run(5_000);
        Assert.Equal("", bench.Standing());
    }

    private static CoreBench From(Phase phase)
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.RestMs] = 400_000);
        if (phase == Phase.Failed)
            return bench.ToStalled();
        bench.ToRest().Run(6_000);
        if (phase == Phase.Stopped)
        {
            bench.Inputs.Stop = true;
            bench.Run(20);
            bench.Inputs.Stop = false;
            bench.Run(20);
        }

        bench.ClearLog();
        return bench;
    }
}
