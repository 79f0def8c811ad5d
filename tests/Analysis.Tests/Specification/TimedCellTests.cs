using LubeController.Analysis.Specification;
using Xunit;
using static LubeController.Analysis.Specification.Phase;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>The cells of the phase table that time and pulses cause.</summary>
public sealed class TimedCellTests
{
    private static readonly SpecSettings NewTries = Bench.Short with { NewTries = true };

    [Fact]
    public void Without_a_valid_state_the_rest_is_the_restart_delay()
    {
        Bench bench = new();

        Assert.Equal(Rest, bench.Run(190).Phase);
        Assert.Equal(Dose, bench.Scan().Phase);
        Assert.True(bench.Out.Pump);
    }

    [Fact]
    public void A_completed_dose_starts_a_full_rest()
    {
        Bench bench = new Bench().Dosed();
        Assert.Equal(Rest, bench.Phase);

        // The rest began one scan before, with the last pulse's on-edge.
        Assert.Equal(Rest, bench.Run(980).Phase);
        Assert.Equal(Dose, bench.Scan().Phase);
    }

    [Fact]
    public void A_timeout_with_retries_left_leads_to_the_retry_pause_and_back_to_the_same_dose()
    {
        Bench bench = new Bench().To(Dose);
        bench.Pulse();
        bench.Pulse();
        Assert.Equal(1, bench.State.Dose.Count);

        Assert.Equal(Dose, bench.Run(80).Phase);
        Assert.Equal(RetryPause, bench.Scan().Phase);
        Assert.False(bench.Out.Pump);
        Assert.Equal(RetryPause, bench.Run(30).Phase);
        Assert.Equal(Dose, bench.Scan().Phase);
        Assert.Equal(1, bench.State.Dose.Count);
    }

    [Fact]
    public void A_timeout_with_none_left_leads_to_failed_within_the_stall_bound()
    {
        Bench bench = new Bench();
        bench.Hold(Buttons.DoseNow);
        bench.Scan();

        // Allowance 50, two timeouts of 100, one pause of 40.
        Assert.Equal(Dose, bench.Run(280).Phase);
        Assert.Equal(Failed, bench.Scan().Phase);
        Assert.True(bench.Alarm(AlarmId.DividerStalled).Stands);
        Assert.False(bench.Out.HealthyRelay);
        Assert.False(bench.Out.Pump);
        Assert.True(bench.State.Dose.Pending);
    }

    [Fact]
    public void A_run_on_pulse_in_the_retry_pause_can_complete_the_dose()
    {
        Bench bench = new Bench().To(Dose);
        bench.Pulse();
        bench.Pulse();
        bench.Run(90);
        Assert.Equal(RetryPause, bench.Phase);

        Assert.Equal(Rest, bench.Pulse().Phase);
        Assert.False(bench.State.Dose.Pending);
    }

    [Fact]
    public void In_failed_no_dose_is_tried_again_unless_new_tries_are_set()
    {
        Bench bench = PhaseCellTests.FailedByDoseEnding();

        for (int scan = 0; scan < 300; scan++)
            Assert.Equal(Failed, bench.Scan().Phase);
    }

    [Fact]
    public void A_new_try_that_completes_goes_back_to_failed_with_its_condition_ended()
    {
        Bench bench = new Bench(NewTries).To(RetryPause);
        bench.Run(140);
        Assert.Equal(Failed, bench.Phase);
        Assert.True(bench.Alarm(AlarmId.DividerStalled).Active);

        Assert.Equal(Dose, bench.Run(200).Phase);
        Assert.False(bench.Out.HealthyRelay);
        bench.Pulse();
        bench.Pulse();
        Assert.Equal(Failed, bench.Pulse().Phase);
        Assert.False(bench.Alarm(AlarmId.DividerStalled).Active);
        Assert.True(bench.Alarm(AlarmId.DividerStalled).Latched);
        Assert.Equal(Failed, bench.Run(970).Phase);
        Assert.Equal(Dose, bench.Run(20).Phase);
    }

    [Fact]
    public void A_new_try_that_fails_goes_back_to_failed()
    {
        Bench bench = new Bench(NewTries).To(RetryPause);
        bench.Run(140);
        bench.Run(200);
        Assert.Equal(Dose, bench.Phase);

        // No retry is left without a pulse or a reset: one timeout with its allowance.
        Assert.Equal(Dose, bench.Run(140).Phase);
        Assert.Equal(Failed, bench.Scan().Phase);
    }

    [Fact]
    public void No_new_try_is_given_while_an_interlock_stands()
    {
        Bench bench = new Bench(NewTries).Dosed().To(Failed);

        for (int scan = 0; scan < 300; scan++)
            Assert.Equal(Failed, bench.Scan().Phase);
        Assert.False(bench.State.Dose.Pending);
    }

    [Theory]
    [InlineData(Rest)]
    [InlineData(Stopped)]
    public void Prime_released_leads_where_it_came_from(Phase from)
    {
        Bench bench = new Bench().To(from).To(Prime);
        Assert.True(bench.Out.Pump);
        Assert.True(bench.Out.WarningOutput);
        bench.Hold(Buttons.None);

        Assert.Equal(from, bench.Scan().Phase);
        Assert.False(bench.Out.Pump);
    }

    [Fact]
    public void Prime_held_ends_at_its_limit_and_needs_a_fresh_press()
    {
        Bench bench = new Bench().Dosed().To(Prime);

        Assert.Equal(Prime, bench.Run(290).Phase);
        Assert.Equal(Rest, bench.Scan().Phase);
        Assert.Equal(Rest, bench.Run(100).Phase);
        bench.Hold(Buttons.None);
        bench.Scan();
        Assert.Equal(Prime, bench.To(Prime).Phase);
    }

    [Fact]
    public void An_output_test_ends_in_stopped_after_its_time()
    {
        Bench bench = new Bench().To(OutputTest);
        Assert.True(bench.Out.FunctionCheck);
        Assert.False(bench.Out.Pump);

        // One scan of it has passed with the button's release.
        Assert.Equal(OutputTest, bench.Run(80).Phase);
        Assert.Equal(Stopped, bench.Scan().Phase);
        Assert.False(bench.Out.FunctionCheck);
    }

    [Fact]
    public void A_stopped_dose_is_pending_and_resumes_with_its_counts_after_the_restart_delay_from_start()
    {
        Bench bench = new Bench().To(Dose);
        bench.Pulse();
        bench.Pulse();
        bench.To(Stopped);
        bench.Run(1000);
        Assert.Equal(Rest, bench.Press(Buttons.Start).Phase);

        Assert.Equal(Rest, bench.Run(180).Phase);
        Assert.Equal(Dose, bench.Scan().Phase);
        Assert.Equal(1, bench.State.Dose.Count);
    }

    [Theory]
    [InlineData(Prime)]
    [InlineData(Stopped)]
    [InlineData(Failed)]
    public void Rest_runs_on(Phase phase)
    {
        Bench bench = new Bench().Dosed();
        long before = bench.State.Rest.ElapsedMs;
        bench.To(phase);
        bench.Run(100);

        Assert.Equal(phase, bench.Phase);
        Assert.InRange(bench.State.Rest.ElapsedMs, before + 100, before + 120);
    }

    [Fact]
    public void Reset_never_starts_the_pump_directly()
    {
        Bench bench = new Bench().Dosed().To(Failed);
        bench.Run(2000);
        bench.Press(Buttons.Reset);

        Assert.Equal(Rest, bench.Run(180).Phase);
        Assert.Equal(Dose, bench.Scan().Phase);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Reset_in_prime_that_came_from_failed_lets_prime_end_in_rest(bool cut)
    {
        Bench bench = PhaseCellTests.FailedByDoseEnding().To(Prime);
        bench.Hold(Buttons.Prime | Buttons.Reset);
        Assert.Equal(Prime, bench.Scan().Phase);
        bench.Hold(Buttons.None);
        if (cut)
            bench.Spec.PowerCut();

        Assert.Equal(Rest, bench.Scan().Phase);
    }

    [Fact]
    public void Reset_in_prime_that_came_from_failed_changes_nothing_while_a_failure_stands()
    {
        Bench bench = PhaseCellTests.FailedByDoseEnding().To(Prime);
        bench.Inputs = new SpecInputs { Pressed = Buttons.Prime | Buttons.Reset }.WithWitness(AlarmId.CycleSwitchFault);
        bench.Scan();
        bench.Hold(Buttons.None);

        Assert.Equal(Failed, bench.Scan().Phase);
    }

    [Fact]
    public void Reset_in_the_scan_of_the_last_timeout_lets_the_dose_go_on()
    {
        Bench bench = new Bench().To(RetryPause);
        bench.Run(130);
        Assert.Equal(Dose, bench.Phase);

        Assert.Equal(Dose, bench.Press(Buttons.Reset).Phase);
        Assert.False(bench.Alarm(AlarmId.DividerStalled).Stands);
    }

    [Fact]
    public void Reset_in_the_scan_of_a_new_trys_timeout_lets_it_go_on_under_another_alarm()
    {
        Bench bench = new Bench(NewTries).To(RetryPause);
        bench.Inputs = bench.Inputs.WithWitness(AlarmId.CycleSwitchFault);
        bench.Run(200);
        bench.Run(150);
        Assert.Equal(Dose, bench.Phase);

        Assert.Equal(Dose, bench.Press(Buttons.Reset).Phase);
        Assert.True(bench.State.Dose.Try);
        Assert.False(bench.Alarm(AlarmId.DividerStalled).Stands);
        bench.To(Stopped);
        Assert.False(bench.State.Dose.Try);
    }

    [Fact]
    public void Reset_in_a_new_try_lets_it_end_in_rest()
    {
        Bench bench = PhaseCellTests.FailedByDoseEnding(NewTries);
        bench.Run(200);
        Assert.Equal(Dose, bench.Phase);
        Assert.Equal(Dose, bench.Press(Buttons.Reset).Phase);
        bench.Pulse();
        bench.Pulse();

        Assert.Equal(Rest, bench.Pulse().Phase);
    }

    [Fact]
    public void Stop_is_the_strongest_of_what_comes_in_one_scan()
    {
        Bench bench = new Bench().To(Dose);
        bench.Empty(true);
        bench.Stop(true);

        Assert.Equal(Stopped, bench.Scan().Phase);
        Assert.True(bench.State.Dose.Pending);
        Assert.True(bench.Alarm(AlarmId.ReservoirEmpty).Stands);
    }

    [Fact]
    public void Start_with_the_rest_over_doses_in_the_same_scan()
    {
        Bench bench = new Bench().Dosed().To(Stopped);
        bench.Run(1000);

        Assert.Equal(Dose, bench.Press(Buttons.Start).Phase);
    }
}
