using LubeController.Analysis.Specification;
using Xunit;
using static LubeController.Analysis.Specification.Phase;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>Debounce, fresh presses, ready delay and baseline.</summary>
public sealed class EdgeTests
{
    private static readonly SpecSettings Ready = Bench.Short with { ReadyDelayMs = 300, SwitchDebounceMs = 20, RestartDelayMs = 0 };

    [Theory]
    [InlineData(290, false)] // seen at 300 ms, the end of the ready delay, and accepted at 320 ms, as the first level
    [InlineData(300, true)]
    public void The_first_level_after_the_ready_delay_is_a_baseline_and_no_edge(int onAtMs, bool edge)
    {
        Bench bench = new(Ready with { Switches = [new SwitchSettings(5000, 0)] });
        Assert.Equal(Dose, bench.Phase);
        bench.Run(onAtMs);
        bench.Inputs = bench.Inputs with { CycleSwitches = 1 };
        bench.Run(100);

        Assert.Equal(edge, bench.State.Dose.PositionKnown);
    }

    [Fact]
    public void A_switch_that_rests_on_gives_no_pulse_at_power_up()
    {
        Bench bench = new Bench().Dosed();
        bench.Inputs = bench.Inputs with { CycleSwitches = 1 };
        bench.Run(100);
        bench.Press(Buttons.DoseNow);
        int counted = bench.State.Dose.Count;
        bench.Spec.PowerCut();
        bench.Run(100);

        Assert.Equal(counted, bench.State.Dose.Count);
        Assert.True(bench.State.Dose.PositionKnown);
        Assert.True(bench.Out.HealthyRelay);
    }

    [Fact]
    public void A_switch_that_came_on_during_a_cut_gives_no_pulse()
    {
        Bench bench = new Bench().Dosed().To(Dose);
        bench.Spec.PowerCut();
        Assert.False(bench.State.Pump.On);
        bench.Inputs = bench.Inputs with { CycleSwitches = 1 };
        bench.Run(50);
        bench.Press(Buttons.DoseNow);
        bench.Run(50);

        Assert.Equal(0, bench.State.Dose.Count);
        Assert.Equal(50, bench.State.Switches[0].AllowanceMs);
    }

    [Fact]
    public void After_a_cut_the_level_is_not_known_until_it_has_stood_for_the_debounce_time()
    {
        Bench bench = new(Bench.Short with { SwitchDebounceMs = 50, RestartDelayMs = 0, Switches = [new SwitchSettings(5000, 0)] });
        bench.Run(100);
        bench.Spec.PowerCut();
        bench.Inputs = bench.Inputs with { CycleSwitches = 1 };
        bench.Run(200);

        Assert.False(bench.State.Dose.PositionKnown);
    }

    [Fact]
    public void After_a_cut_no_edge_counts_within_the_ready_delay()
    {
        Bench bench = new(Ready with { Switches = [new SwitchSettings(5000, 0)] });
        bench.Run(400);
        bench.Spec.PowerCut();
        bench.Run(50);
        bench.Inputs = bench.Inputs with { CycleSwitches = 1 };
        bench.Run(100);
        bench.Inputs = bench.Inputs with { CycleSwitches = 0 };
        bench.Run(300);

        Assert.False(bench.State.Dose.PositionKnown);
    }

    [Fact]
    public void The_run_on_time_goes_on_after_a_cut()
    {
        Bench bench = new Bench().Dosed();
        bench.Spec.PowerCut();
        bench.Scan(0);
        bench.Pulse();

        Assert.Equal(1, bench.State.Dose.Count);
        Assert.False(bench.Alarm(AlarmId.PulseWhileIdle).Stands);
    }

    [Fact]
    public void No_edge_counts_while_the_supply_is_low_nor_until_the_baseline_after_it()
    {
        Bench bench = new(Bench.Short with { ReadyDelayMs = 100, Switches = [new SwitchSettings(5000, 0)], RestartDelayMs = 0 });
        bench.Run(100);
        bench.Supply(17_000);
        bench.Scan();
        bench.Pulse();
        bench.Supply(24_000);
        bench.Scan();
        Assert.Equal(100, bench.State.ReadyMs);
        bench.Run(70);
        bench.Pulse();
        bench.Scan();
        Assert.False(bench.State.Dose.PositionKnown);
        bench.Pulse();

        Assert.True(bench.State.Dose.PositionKnown);
    }

    [Theory]
    [InlineData(20, false)]
    [InlineData(30, true)]
    public void A_press_counts_when_the_button_was_down_for_the_debounce_time(int downMs, bool counts)
    {
        Bench bench = new(Bench.Short with { ButtonDebounceMs = 30 });
        bench.Run(30);
        bench.Hold(Buttons.DoseNow);
        bench.Scan();
        bench.Run(downMs);

        Assert.Equal(counts ? Dose : Rest, bench.Phase);
    }

    [Theory]
    [InlineData(20, false)]
    [InlineData(30, true)]
    public void A_press_counts_only_when_the_button_was_released_for_the_debounce_time_before(int upMs, bool counts)
    {
        Bench bench = new(Bench.Short with { ButtonDebounceMs = 30, PrimeLimitMs = 50, RestartDelayMs = 50_000 });
        bench.Run(30);
        bench.Hold(Buttons.Prime);
        bench.Run(150);
        Assert.Equal(Rest, bench.Phase);
        bench.Hold(Buttons.None);
        bench.Scan();
        bench.Run(upMs);
        bench.Hold(Buttons.Prime);
        bench.Run(40);

        Assert.Equal(counts ? Prime : Rest, bench.Phase);
    }

    [Theory]
    [InlineData(Buttons.Start, Stopped)]
    [InlineData(Buttons.DoseNow, Rest)]
    [InlineData(Buttons.Prime, Rest)]
    [InlineData(Buttons.Reset, Failed)]
    [InlineData(Buttons.OutputTest, Stopped)]
    public void A_button_already_down_at_power_up_does_nothing_until_released(Buttons button, Phase phase)
    {
        Bench bench = new Bench().To(phase);
        bench.Hold(button);
        bench.Spec.PowerCut();
        Assert.Equal(phase, bench.Run(100).Phase);
        bench.Hold(Buttons.None);
        bench.Scan();
        bench.Hold(button);

        Assert.NotEqual(phase, bench.Scan().Phase);
    }

    [Fact]
    public void A_stuck_button_acts_once()
    {
        Bench bench = new Bench().To(Stopped);
        bench.Hold(Buttons.Start);
        bench.Scan();
        bench.Stop(true);
        bench.Scan();
        bench.Stop(false);

        Assert.Equal(Stopped, bench.Run(500).Phase);
    }

    [Theory]
    [InlineData(490, false)]
    [InlineData(500, true)]
    public void A_level_counts_when_it_has_stood_for_its_debounce_time(int standsMs, bool counts)
    {
        Bench bench = new(Bench.Short with { LevelDebounceMs = 500, RestartDelayMs = 50_000 });
        bench.Run(500);
        bench.Empty(true);
        bench.Scan();
        bench.Run(standsMs);

        Assert.Equal(counts, bench.Alarm(AlarmId.ReservoirEmpty).Stands);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_level_that_flickers_from_power_up_never_counts(int onAt)
    {
        Bench bench = new(Bench.Short with { LevelDebounceMs = 20, RestartDelayMs = 50_000 });
        for (int time = 0; time < 100; time++)
        {
            bench.Empty(time % 2 == onAt);
            bench.Scan();
        }

        Assert.False(bench.Alarm(AlarmId.ReservoirEmpty).Stands);
    }

    [Fact]
    public void A_machine_not_yet_known_to_stand_reads_running()
    {
        Bench bench = new(Bench.Short with { MachineRunningDebounceMs = 100, HasShaft = true, ShaftTimeoutMs = 50 });
        bench.Inputs = bench.Inputs with { MachineRunning = false };
        bench.Spec.PowerCut();
        bench.Run(80);
        Assert.True(bench.Alarm(AlarmId.ShaftSignalLost).Active);

        bench.Run(40);
        Assert.False(bench.Alarm(AlarmId.ShaftSignalLost).Active);
    }
}
