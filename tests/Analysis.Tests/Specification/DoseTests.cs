using LubeController.Analysis.Specification;
using Xunit;
using static LubeController.Analysis.Specification.Phase;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>Counting, the divider's position, credit, and the switches' timers.</summary>
public sealed class DoseTests
{
    private static readonly SpecSettings TwoSwitches = Bench.Short with
    {
        Switches = [new SwitchSettings(100, 1), new SwitchSettings(150, 0)],
    };

    [Fact]
    public void With_the_position_unknown_counting_opens_at_the_first_pulse()
    {
        Bench bench = new Bench().To(Dose);
        bench.Pulse();
        Assert.Equal(0, bench.State.Dose.Count);
        bench.Pulse();
        Assert.Equal(Dose, bench.Phase);

        Assert.Equal(Rest, bench.Pulse().Phase);
    }

    [Fact]
    public void With_the_position_known_every_pulse_counts()
    {
        Bench bench = new Bench().Dosed();
        bench.Press(Buttons.DoseNow);
        bench.Pulse();
        Assert.Equal(Dose, bench.Phase);

        Assert.Equal(Rest, bench.Pulse().Phase);
    }

    [Theory]
    [InlineData("prime")]
    [InlineData("stop")]
    [InlineData("reset")]
    public void Prime_stop_and_reset_make_the_position_unknown(string what)
    {
        Bench bench = new Bench().Dosed();
        if (what == "prime")
            bench.Press(Buttons.Prime);
        else if (what == "stop")
            bench.To(Stopped).Press(Buttons.Start);
        else
            bench.Press(Buttons.Reset);
        Assert.Equal(Rest, bench.Phase);
        Assert.False(bench.State.Dose.PositionKnown);
        bench.Press(Buttons.DoseNow);
        bench.Pulse();
        bench.Pulse();

        Assert.Equal(Dose, bench.Phase);
    }

    [Fact]
    public void Run_on_pulses_are_credited_to_the_next_dose_up_to_one_less_than_its_count()
    {
        Bench bench = new(Bench.Short with { DosePulses = 3, RunOnMs = 200 });
        bench.Dosed();
        for (int pulse = 0; pulse < 5; pulse++)
            bench.Pulse();
        Assert.Equal(2, bench.State.Dose.Count);
        bench.Press(Buttons.DoseNow);
        Assert.Equal(Dose, bench.Phase);

        Assert.Equal(Rest, bench.Pulse().Phase);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(10, 0)]
    public void A_pulse_after_the_run_on_time_is_not_credited(int beyondMs, int credit)
    {
        // The dose ends with the on-edge; the pulse after it comes two scans and the wait later: 30 ms is the run-on time.
        Bench bench = new Bench().Dosed();
        bench.Run(10 + beyondMs);
        bench.Pulse();

        Assert.Equal(credit, bench.State.Dose.Count);
    }

    [Fact]
    public void A_pulse_in_prime_is_not_counted()
    {
        Bench bench = new Bench().Dosed().To(Prime);
        bench.Pulse();
        bench.Pulse();

        Assert.Equal(0, bench.State.Dose.Count);
        Assert.False(bench.State.Dose.PositionKnown);
    }

    [Fact]
    public void Half_cycle_doses_count_both_edges()
    {
        Bench bench = new(Bench.Short with { Switches = [new SwitchSettings(100, 1, BothEdges: true)] });
        bench.To(Dose);

        // On opens counting, off is one, on is two.
        bench.Pulse();
        Assert.Equal(1, bench.State.Dose.Count);
        bench.Inputs = bench.Inputs with { CycleSwitches = 1 };
        Assert.Equal(Rest, bench.Scan().Phase);
    }

    [Fact]
    public void A_pulse_judged_too_fast_neither_counts_nor_restarts_the_timeout()
    {
        Bench bench = new Bench().Dosed();
        bench.Press(Buttons.DoseNow);
        bench.Pulse();
        bench.Run(50);
        bench.Inputs = bench.Inputs with { TooFastSwitches = 1 };
        bench.Pulse();

        Assert.Equal(1, bench.State.Dose.Count);
        Assert.Equal(RetryPause, bench.Run(20).Phase);
    }

    [Fact]
    public void A_pulse_of_a_switch_under_fault_neither_counts_nor_restarts_its_timeout_which_is_not_judged()
    {
        Bench bench = new(TwoSwitches with { DosePulses = 50 });
        bench.To(Dose);
        bench.Witness(AlarmId.OtherSwitchFault);
        Assert.True(bench.Out.HealthyRelay && bench.Out.WarningOutput);
        Assert.Equal(Dose, bench.Phase);
        for (int time = 0; time < 3; time++)
        {
            bench.Pulse(1);
            bench.Pulse();
        }

        // 140 ms of pump-on time have passed; its timeout is 150 ms, which is not judged while it is not believed.
        Assert.Equal(Dose, bench.Phase);
        Assert.Equal(Dose, bench.Scan().Phase);
        Assert.Equal(150, bench.State.Switches[1].TimerMs);
    }

    [Fact]
    public void Only_the_dose_ending_switch_counts()
    {
        Bench bench = new(TwoSwitches with { DoseEndingSwitch = 1 });
        bench.To(Dose);
        bench.Pulse(0);
        bench.Pulse(0);
        bench.Pulse(0);
        Assert.Equal(Dose, bench.Phase);
        Assert.False(bench.State.Dose.PositionKnown);
        bench.Pulse(1);
        bench.Pulse(1);

        Assert.Equal(Rest, bench.Pulse(1).Phase);
    }

    [Fact]
    public void An_interrupted_dose_keeps_its_pump_on_time()
    {
        Bench bench = new Bench().To(Dose);
        bench.Run(50);
        bench.To(Stopped).Press(Buttons.Start);
        bench.Press(Buttons.DoseNow);

        Assert.Equal(60 + 10 + 10, bench.State.Dose.PumpOnMs);
    }

    [Fact]
    public void Each_switch_has_a_timer_and_retries_of_its_own()
    {
        Bench bench = new(TwoSwitches with { DosePulses = 50 });
        bench.To(Dose);

        // The dose-ending switch pulses on; the other one stays silent and has no retry.
        for (int time = 0; time < 6; time++)
            bench.Pulse();
        Assert.Equal(Dose, bench.Run(10).Phase);
        Assert.Equal(Failed, bench.Scan().Phase);
        Assert.True(bench.Alarm(AlarmId.DividerStalled).Stands);
        Assert.Equal(0, bench.State.Switches[0].RetriesUsed);
    }

    [Fact]
    public void A_timer_runs_in_pump_on_time_and_is_carried_over_doses()
    {
        Bench bench = new(TwoSwitches with { Switches = [new SwitchSettings(100, 1), new SwitchSettings(400, 0)] });
        bench.Dosed();
        long carried = bench.State.Switches[1].TimerMs;
        Assert.True(carried > 0);
        bench.Run(500);

        Assert.Equal(carried, bench.State.Switches[1].TimerMs);
        bench.Press(Buttons.DoseNow);
        Assert.Equal(carried + 10, bench.State.Switches[1].TimerMs);
    }

    [Fact]
    public void Retries_are_renewed_by_a_pulse_and_not_by_a_new_dose()
    {
        Bench bench = new Bench().To(RetryPause);
        bench.To(Stopped).Press(Buttons.Start);
        bench.Press(Buttons.DoseNow);
        Assert.Equal(Dose, bench.Phase);
        Assert.Equal(1, bench.State.Switches[0].RetriesUsed);
        bench.Pulse();

        Assert.Equal(0, bench.State.Switches[0].RetriesUsed);
    }

    [Fact]
    public void Reset_renews_timer_retries_and_allowance()
    {
        Bench bench = new Bench().To(RetryPause);
        bench.Run(60);
        Assert.Equal(Dose, bench.Phase);
        bench.Press(Buttons.Reset);
        SwitchState renewed = bench.State.Switches[0];

        Assert.Equal(0, renewed.RetriesUsed);
        Assert.Equal(10, renewed.TimerMs);
        Assert.Equal(50, renewed.AllowanceMs);
    }

    [Fact]
    public void The_allowance_covers_the_first_pulse_only()
    {
        Bench bench = new Bench().Dosed();
        bench.Press(Buttons.DoseNow);
        bench.Run(130);
        Assert.Equal(Dose, bench.Phase);
        bench.Pulse();
        bench.Run(80);
        Assert.Equal(Dose, bench.Phase);

        Assert.Equal(RetryPause, bench.Scan().Phase);
    }

    [Fact]
    public void A_pulse_in_the_scan_of_its_timeout_is_in_time()
    {
        Bench bench = new Bench().Dosed();
        bench.Press(Buttons.DoseNow);
        bench.Run(130);

        Assert.Equal(Dose, bench.Pulse().Phase);
    }

    [Fact]
    public void A_dose_by_run_time_ends_after_its_pump_on_time()
    {
        Bench bench = new(Bench.Short with { DoseMode = DoseMode.RunTime, Switches = [] });
        bench.Hold(Buttons.DoseNow);
        bench.Scan();

        Assert.Equal(Dose, bench.Run(70).Phase);
        Assert.Equal(Rest, bench.Scan().Phase);
    }

    [Fact]
    public void A_dose_fails_when_its_pump_on_time_reaches_its_limit()
    {
        Bench bench = new(Bench.Short with { DoseLimitMs = 90 });
        bench.To(Dose);
        Assert.Equal(Dose, bench.Run(70).Phase);
        Assert.Equal(80, bench.State.Dose.PumpOnMs);

        Assert.Equal(Failed, bench.Scan().Phase);
        Assert.True(bench.Alarm(AlarmId.DoseTooLong).Active);
    }

    [Fact]
    public void Reset_after_a_dose_too_long_lets_the_pending_dose_run_again()
    {
        Bench bench = new(Bench.Short with { DoseLimitMs = 90 });
        bench.To(Dose);
        bench.Run(90);
        bench.Press(Buttons.Reset);
        Assert.Equal(Rest, bench.Phase);
        bench.Run(200);

        Assert.Equal(Dose, bench.Phase);
        Assert.Equal(10, bench.State.Dose.PumpOnMs);
    }

    [Fact]
    public void Supply_low_holds_the_pump_while_dose_and_pause_wait()
    {
        Bench bench = new Bench().To(Dose);
        bench.Supply(17_000);
        bench.Scan();
        (DoseProgress dose, long timerMs) = (bench.State.Dose, bench.State.Switches[0].TimerMs);
        Assert.Equal(Dose, bench.Run(500).Phase);
        Assert.False(bench.Out.Pump);
        Assert.Equal(dose, bench.State.Dose);
        Assert.Equal(timerMs, bench.State.Switches[0].TimerMs);
        bench.Supply(24_000);

        Assert.True(bench.Scan().Pump);
    }

    [Fact]
    public void A_retry_pause_waits_while_the_supply_is_low()
    {
        Bench bench = new Bench().To(RetryPause);
        bench.Supply(17_000);
        Assert.Equal(RetryPause, bench.Run(500).Phase);
        bench.Supply(24_000);
        bench.Scan();

        Assert.Equal(Dose, bench.Run(40).Phase);
    }

    [Fact]
    public void A_dose_once_begun_is_finished_although_the_machine_stops()
    {
        Bench bench = new(Bench.Short with { RestOnlyWhileRunning = true });
        bench.To(Dose);
        bench.Inputs = bench.Inputs with { MachineRunning = false };
        bench.Pulse();
        bench.Pulse();
        Assert.True(bench.Out.Pump);

        Assert.Equal(Rest, bench.Pulse().Phase);
    }

    [Fact]
    public void An_ordinary_dose_fails_at_once_while_a_dose_ending_alarm_stands()
    {
        Bench bench = new();
        bench.Witness(AlarmId.CycleSwitchFault);
        Assert.Equal(Rest, bench.Phase);
        SpecOutputs pressed = bench.Press(Buttons.DoseNow);

        Assert.Equal(Failed, pressed.Phase);
        Assert.False(pressed.Pump);
    }
}
