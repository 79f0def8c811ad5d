using LubeController.Analysis.Specification;
using Xunit;
using static LubeController.Analysis.Specification.Phase;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>What ends a rest, and the clock of overdue lubrication.</summary>
public sealed class RestTests
{
    private static readonly SpecSettings ByShaft = Bench.Short with { HasShaft = true, RestMode = RestMode.Shaft };
    private static readonly SpecSettings ByEither = ByShaft with { RestMode = RestMode.Either };

    [Fact]
    public void Rest_by_revolutions_ends_with_the_last_pulse()
    {
        Bench bench = new Bench(ByShaft).Dosed();
        for (int pulse = 0; pulse < 19; pulse++)
            Turn(bench, 100);
        Assert.Equal(Rest, bench.Phase);

        Assert.Equal(Dose, Turn(bench, 10).Phase);
    }

    [Fact]
    public void A_completed_dose_begins_to_count_revolutions_anew()
    {
        Bench bench = new(ByShaft);
        for (int pulse = 0; pulse < 10; pulse++)
            Turn(bench, 10);
        Assert.Equal(10, bench.State.Rest.ShaftPulses);

        Assert.Equal(0, bench.Dosed().State.Rest.ShaftPulses);
    }

    [Fact]
    public void Without_a_shaft_input_no_signal_can_be_lost()
    {
        Bench bench = new();
        bench.Run(1000);

        Assert.False(bench.Alarm(AlarmId.ShaftSignalLost).Stands);
    }

    [Fact]
    public void Rest_by_revolutions_falls_back_to_time_when_the_signal_is_lost()
    {
        Bench bench = new Bench(ByShaft).Dosed();
        Assert.Equal(Rest, bench.Run(1480).Phase);
        Assert.True(bench.Alarm(AlarmId.ShaftSignalLost).Active);

        Assert.Equal(Dose, bench.Scan().Phase);
    }

    [Fact]
    public void The_fallback_time_does_not_end_a_rest_whose_signal_is_there()
    {
        Bench bench = new Bench(ByShaft).Dosed();
        for (int pulse = 0; pulse < 16; pulse++)
            Turn(bench, 100);

        Assert.Equal(Rest, bench.Phase);
        Assert.False(bench.Alarm(AlarmId.ShaftSignalLost).Active);
    }

    [Theory]
    [InlineData(100, 1000)]
    [InlineData(10, 200)]
    public void Rest_by_either_ends_with_whichever_comes_first(int betweenMs, int expectedMs)
    {
        Bench bench = new Bench(ByEither).Dosed();
        int passed = 10;
        for (; bench.Phase == Rest && passed < 5000; passed += betweenMs)
            Turn(bench, betweenMs);

        Assert.Equal(Dose, bench.Phase);
        Assert.InRange(passed, expectedMs, expectedMs + betweenMs);
    }

    [Fact]
    public void Rest_counts_only_while_the_machine_runs_if_so_set()
    {
        Bench bench = new Bench(ByEither with { RestOnlyWhileRunning = true }).Dosed();
        bench.Inputs = bench.Inputs with { MachineRunning = false };
        bench.Scan();
        RestState before = bench.State.Rest;
        for (int pulse = 0; pulse < 30; pulse++)
            Turn(bench, 100);

        Assert.Equal(Rest, bench.Phase);
        Assert.Equal(before.ElapsedMs, bench.State.Rest.ElapsedMs);
        Assert.Equal(before.ShaftPulses, bench.State.Rest.ShaftPulses);
    }

    [Fact]
    public void Rest_counts_at_standstill_too_unless_so_set()
    {
        Bench bench = new Bench().Dosed();
        bench.Inputs = bench.Inputs with { MachineRunning = false };

        Assert.Equal(Dose, bench.Run(990).Phase);
    }

    [Fact]
    public void A_lost_shaft_signal_needs_a_running_machine_and_standing_still_does_not_renew_its_time()
    {
        Bench bench = new(ByShaft);
        bench.Inputs = bench.Inputs with { MachineRunning = false };
        bench.Run(1000);
        Assert.False(bench.Alarm(AlarmId.ShaftSignalLost).Active);
        bench.Inputs = bench.Inputs with { MachineRunning = true };
        bench.Run(150);
        bench.Inputs = bench.Inputs with { MachineRunning = false };
        bench.Run(1000);
        Assert.False(bench.Alarm(AlarmId.ShaftSignalLost).Active);
        bench.Inputs = bench.Inputs with { MachineRunning = true };
        int scans = 0;
        for (; !bench.Alarm(AlarmId.ShaftSignalLost).Active && scans < 300; scans++)
            bench.Scan();
        Assert.InRange(scans, 14, 16);

        Turn(bench, 10);
        Assert.False(bench.Alarm(AlarmId.ShaftSignalLost).Active);
    }

    [Theory]
    [InlineData(Rest)]
    [InlineData(Dose)]
    [InlineData(Stopped)]
    [InlineData(Failed)]
    public void Lubrication_is_overdue_when_its_limit_has_passed_in_any_phase(Phase phase)
    {
        Bench bench = new(Bench.Short with { OverdueMs = 60, RestartDelayMs = 5000 });
        bench.To(phase);
        bench.Run(60);

        Assert.True(bench.Alarm(AlarmId.LubricationOverdue).Active);
        Assert.False(bench.Out.HealthyRelay);
    }

    [Fact]
    public void A_completed_dose_ends_overdue_lubrication()
    {
        Bench bench = new(Bench.Short with { OverdueMs = 500, RestartDelayMs = 5000 });
        bench.Run(490);
        Assert.True(bench.Out.HealthyRelay);
        bench.Scan();
        Assert.False(bench.Out.HealthyRelay);
        bench.Dosed();

        Assert.False(bench.Alarm(AlarmId.LubricationOverdue).Stands);
        Assert.True(bench.Out.HealthyRelay);
    }

    [Theory]
    [InlineData(true, false, true)] // shaft fitted, machine stands: both say standstill
    [InlineData(false, false, false)]
    [InlineData(true, true, false)]
    public void The_overdue_clock_is_held_only_while_both_inputs_say_standstill(bool shaft, bool running, bool held)
    {
        Bench bench = new(Bench.Short with { HasShaft = shaft, RestartDelayMs = 50_000 });
        bench.Inputs = bench.Inputs with { MachineRunning = running };
        bench.Run(400);
        long before = bench.State.Rest.OverdueMs;
        bench.Run(1000);

        Assert.Equal(held ? before : before + 1000, bench.State.Rest.OverdueMs);
    }

    [Fact]
    public void The_overdue_clock_runs_through_a_power_cut_in_powered_time()
    {
        Bench bench = new();
        bench.Run(100);
        bench.Spec.PowerCut();
        bench.Scan(50);

        Assert.Equal(150, bench.State.Rest.OverdueMs);
    }

    private static SpecOutputs Turn(Bench bench, int betweenMs)
    {
        bench.Run(betweenMs - Bench.ScanMs);
        bench.Inputs = bench.Inputs with { ShaftPulses = 1 };
        SpecOutputs turned = bench.Scan();
        bench.Inputs = bench.Inputs with { ShaftPulses = 0 };
        return turned;
    }
}
