using Xunit;

namespace LubeController.Core.Tests;

/// <summary>How edges become a dose: known and unknown position, run-on and idle pulses.</summary>
public sealed class CountingTests
{
    [Fact]
    public void Without_a_saved_state_the_first_pulse_only_opens_the_counting()
    {
        var bench = new CoreBench();
        Assert.False(bench.Core.PositionKnown);
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(3);
        Assert.Equal(["pulse 1 opened", "pulse 1 counted 1", "pulse 1 counted 2"], bench.PulseLines);
        Assert.Equal(Phase.Dose, bench.Phase);
        bench.Pulse();
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Equal(1, bench.Core.OpenedCounts);
        Assert.Equal(1, bench.Core.DosesCompleted);
    }

    [Fact]
    public void With_known_position_every_pulse_counts()
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.Pulses(2);
        Assert.Equal(Phase.Dose, bench.Phase);
        bench.Switch(true).Run(60);
        Assert.Equal(
            ["pulse 1 counted 1", "pulse 1 counted 2", "pulse 1 counted 3", "dose completed with 3", "dose > rest"],
            bench.Log);
        Assert.False(bench.Outputs.Pump);
    }

    [Theory]
    [InlineData("stop")]
    [InlineData("prime")]
    [InlineData("reset")]
    public void Stop_prime_and_reset_make_the_position_unknown(string what)
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Run(6_000);
        Assert.True(bench.Core.PositionKnown);
        switch (what)
        {
            case "stop":
                bench.Inputs.Stop = true;
                bench.Run(20);
                bench.Inputs.Stop = false;
                bench.Press(Button.Start);
                break;
            case "prime":
                bench.Press(Button.Prime);
                break;
            default:
                bench.Press(Button.Reset);
                break;
        }

        Assert.False(bench.Core.PositionKnown);
        bench.Press(Button.DoseNow).Pulses(3);
        Assert.Equal(Phase.Dose, bench.Phase);
        bench.Pulse();
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Equal(2, bench.Core.OpenedCounts);
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    [InlineData(5, 2)]
    public void Run_on_pulses_are_credited_up_to_one_less_than_the_set_count(int runOn, int credit)
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.DoseEdges] = credit + 1).ToRest();
        bench.Pulses(runOn);
        bench.Run(6_000).Press(Button.DoseNow);
        Assert.Equal(credit, bench.Core.DoseEdges);
        Assert.Equal(Phase.Dose, bench.Phase);
        bench.Pulse();
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void A_credit_is_spent_once()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Pulse().Run(6_000).Press(Button.DoseNow).Pulses(2);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.Run(6_000).Press(Button.DoseNow);
        Assert.Equal(0, bench.Core.DoseEdges);
    }

    [Fact]
    public void A_pulse_after_the_run_on_time_is_idle_and_gives_no_credit()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Run(TestSettings.RunOnMs).Pulse();
        Assert.True(bench.Stands(AlarmId.PulseWhileIdle));
        Assert.Equal(["pulse 1 seen"], bench.PulseLines);
        bench.Press(Button.DoseNow);
        Assert.Equal(0, bench.Core.DoseEdges);
    }

    [Fact]
    public void The_run_on_time_ends_with_its_last_millisecond()
    {
        // The pump went off in the scan of the last pulse; ToRest lets 150 ms pass after it.
        CoreBench bench = new CoreBench(settings => settings[SettingField.OfSwitch(0, SettingField.SwitchDebounceMs)] = 0);
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(3).Switch(true).Run(10).Switch(false).Run(10);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.Run(TestSettings.RunOnMs - 20).Switch(true).Run(10);
        Assert.False(bench.Stands(AlarmId.PulseWhileIdle));
        bench.Switch(false).Run(10).Switch(true).Run(10);
        Assert.True(bench.Stands(AlarmId.PulseWhileIdle));
    }

    [Fact]
    public void A_run_on_pulse_after_a_short_cut_is_no_idle_pulse()
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.CutPower().Run(1_000).Pulse();
        Assert.False(bench.Stands(AlarmId.PulseWhileIdle));
        Assert.Contains("pulse 1 credited 1", bench.Log);
    }

    [Fact]
    public void A_run_on_pulse_in_the_retry_pause_counts_and_may_complete_the_dose()
    {
        CoreBench bench = ToRetryPause(2);
        bench.Switch(true).Run(60);
        Assert.Equal(["pulse 1 counted 3", "dose completed with 3", "retry pause > rest"], bench.Log);
    }

    [Fact]
    public void An_idle_pulse_in_the_retry_pause_does_not_count()
    {
        CoreBench bench = ToRetryPause(2, settings => settings[SettingField.RetryPauseMs] = 60_000);
        bench.Run(6_000).Pulse();
        Assert.Equal(2, bench.Core.DoseEdges);
        Assert.Equal(Phase.RetryPause, bench.Phase);
        Assert.True(bench.Stands(AlarmId.PulseWhileIdle));
    }

    [Fact]
    public void A_run_on_pulse_after_a_failure_is_credited_to_the_pending_dose()
    {
        CoreBench bench = new CoreBench().ToStalled();
        bench.Pulses(4);
        Assert.Equal(2, bench.Core.DoseEdges);
        Assert.Equal(["pulse 1 credited 1", "pulse 1 credited 2", "pulse 1 credited 2", "pulse 1 credited 2"], bench.PulseLines);
    }

    [Fact]
    public void After_prime_a_run_on_pulse_only_tells_the_position()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Hold(Button.Prime).Pulse();
        Assert.False(bench.Core.PositionKnown);
        bench.Set(Button.Prime, false).Run(50).Pulse();
        Assert.True(bench.Core.PositionKnown);
        Assert.Equal(["pulse 1 seen", "pulse 1 opened"], bench.PulseLines);
        Assert.Equal(1, bench.Core.OpenedCounts);
        bench.Pulse().Run(6_000).Press(Button.DoseNow);
        Assert.Equal(1, bench.Core.DoseEdges);
    }

    [Fact]
    public void Only_the_dose_ending_switch_counts()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.SwitchCount] = 3;
            settings[SettingField.DoseEndingSwitch] = 2;
            settings[SettingField.WitnessPulses] = 0;
        });
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulse(0).Pulse(1).Pulse(2);
        Assert.Equal(["pulse 1 seen", "pulse 2 opened", "pulse 3 seen"], bench.PulseLines);
        bench.Pulse(1);
        Assert.Equal(1, bench.Core.DoseEdges);
        Assert.Equal([1, 2, 1, 0], new[] { bench.Core.PulsesOf(0), bench.Core.PulsesOf(1), bench.Core.PulsesOf(2), bench.Core.PulsesOf(3) });
    }

    [Fact]
    public void A_switch_that_is_not_fitted_is_not_looked_at()
    {
        CoreBench bench = new CoreBench().ToDose();
        bench.Pulses(5, 1);
        Assert.Empty(bench.Log);
    }

    private static CoreBench ToRetryPause(int counted, System.Action<Settings>? more = null)
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings.SetRetries(0, 1);
            more?.Invoke(settings);
        }).ToDose();
        bench.Pulses(counted).RunUntil(Phase.RetryPause, TestSettings.TimeoutMs);
        bench.ClearLog();
        return bench;
    }
}
