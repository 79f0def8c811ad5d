using LubeController.Analysis.Specification;
using Xunit;
using static LubeController.Analysis.Specification.Lifecycle;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>
/// Each transition of the lifecycle, for an alarm that latches and for one that does not. States and transitions are those
/// of ISA-18.2 / IEC 62682 (M); the exits of the last three states are the control rules'.
/// </summary>
public sealed class LifecycleTests
{
    private const AlarmId Latching = AlarmId.PulseTooFast;
    private const AlarmId Passing = AlarmId.LubricantCold;

    private static readonly SpecSettings Quiet = Bench.Short with
    {
        RestartDelayMs = 50_000,
        Consequences = [new Consequence(Passing, AlarmId.ScanOverrun), new Consequence(Latching, AlarmId.ScanOverrun)],
    };

    [Theory]
    [InlineData(Passing, "", Normal)]
    [InlineData(Passing, "begin", Unacknowledged)]
    [InlineData(Passing, "begin ack", Acknowledged)]
    [InlineData(Passing, "begin end", ReturnedUnacknowledged)]
    [InlineData(Passing, "begin ack end", Normal)]
    [InlineData(Passing, "begin end ack", Normal)]
    [InlineData(Passing, "begin end begin", Unacknowledged)]
    [InlineData(Passing, "begin end reset", ReturnedUnacknowledged)]
    [InlineData(Latching, "begin", Unacknowledged)]
    [InlineData(Latching, "begin reset", Unacknowledged)]
    [InlineData(Latching, "begin ack", Acknowledged)]
    [InlineData(Latching, "begin ack reset", Acknowledged)]
    [InlineData(Latching, "begin end", ReturnedUnacknowledged)]
    [InlineData(Latching, "begin ack end", Latched)]
    [InlineData(Latching, "begin end ack", Latched)]
    [InlineData(Latching, "begin end ack reset", Normal)]
    [InlineData(Latching, "begin end ack begin", Unacknowledged)]
    [InlineData(Latching, "begin end begin", Unacknowledged)]
    [InlineData(Latching, "begin end reset", ReturnedUnacknowledged)]
    [InlineData(Latching, "begin end reset ack", Normal)]
    public void Conditions_acknowledge_and_reset(AlarmId alarm, string events, Lifecycle expected) => Expect(alarm, events, expected);

    [Theory]
    [InlineData("shelve", Shelved)]
    [InlineData("begin shelve", Shelved)]
    [InlineData("begin ack shelve", Shelved)]
    [InlineData("begin end shelve", Shelved)]
    [InlineData("begin end ack shelve", Shelved)]
    [InlineData("cause shelve", Shelved)]
    [InlineData("remove shelve", OutOfService)]
    [InlineData("shelve begin", Shelved)]
    [InlineData("shelve begin end ack reset", Shelved)]
    [InlineData("shelve unshelve", Normal)]
    [InlineData("shelve wait", Normal)]
    [InlineData("begin shelve unshelve", Unacknowledged)]
    [InlineData("begin ack shelve unshelve", Unacknowledged)]
    [InlineData("begin shelve wait", Unacknowledged)]
    [InlineData("shelve begin wait", Unacknowledged)]
    [InlineData("begin end shelve unshelve", Unacknowledged)] // the latch is its present condition
    [InlineData("begin end shelve unshelve ack", Latched)]
    [InlineData("begin end shelve unshelve reset", ReturnedUnacknowledged)]
    [InlineData("begin end shelve reset unshelve", Normal)]
    [InlineData("shelve cause", Shelved)]
    [InlineData("shelve remove", OutOfService)]
    public void Shelving_of_a_latching_alarm(string events, Lifecycle expected) => Expect(Latching, events, expected);

    [Theory]
    [InlineData("cause", Normal)]
    [InlineData("begin cause", SuppressedByDesign)]
    [InlineData("begin ack cause", SuppressedByDesign)]
    [InlineData("begin end cause", SuppressedByDesign)]
    [InlineData("begin end ack cause", SuppressedByDesign)]
    [InlineData("cause begin", SuppressedByDesign)]
    [InlineData("cause nocause", Normal)]
    [InlineData("begin cause nocause", Unacknowledged)]
    [InlineData("cause begin cause-over", SuppressedByDesign)]
    [InlineData("cause cause-over begin", Unacknowledged)] // only a latch is left of the cause
    [InlineData("cause begin cause-over end begin", Unacknowledged)]
    [InlineData("cause remove", OutOfService)]
    [InlineData("remove", OutOfService)]
    [InlineData("begin remove", OutOfService)]
    [InlineData("begin ack remove", OutOfService)]
    [InlineData("begin end remove", OutOfService)]
    [InlineData("begin end ack remove", OutOfService)]
    [InlineData("remove begin", OutOfService)]
    [InlineData("remove cause", OutOfService)]
    [InlineData("remove return", Normal)]
    [InlineData("begin remove return", Unacknowledged)]
    [InlineData("begin end ack remove return", Unacknowledged)]
    [InlineData("remove begin return", Unacknowledged)]
    public void Suppression_by_design_and_out_of_service(string events, Lifecycle expected) => Expect(Latching, events, expected);

    [Theory]
    [InlineData("begin shelve end unshelve", Normal)]
    [InlineData("begin remove end return", Normal)]
    [InlineData("begin cause end nocause", Normal)]
    public void An_alarm_that_does_not_latch_leaves_as_normal_once_its_condition_is_gone(string events, Lifecycle expected) =>
        Expect(Passing, events, expected);

    [Fact]
    public void Shelving_lasts_for_its_time_and_tells_what_remains()
    {
        Bench bench = new(Quiet);
        bench.Spec.Shelve(Latching, 100);
        bench.Run(90);
        Assert.Equal(10, bench.Alarm(Latching).ShelvedMs);
        Assert.Equal(Shelved, bench.Alarm(Latching).Lifecycle);
        bench.Scan();

        Assert.Equal(Normal, bench.Alarm(Latching).Lifecycle);
        Assert.Equal(0, bench.Alarm(Latching).ShelvedMs);
    }

    [Fact]
    public void A_second_shelving_is_for_the_new_time()
    {
        Bench bench = new(Quiet);
        bench.Spec.Shelve(Latching, 100);
        bench.Spec.Shelve(Latching, 100_000);

        Assert.Equal(100_000, bench.Alarm(Latching).ShelvedMs);
    }

    [Theory]
    [InlineData(AlarmId.ReservoirLow, false)]
    [InlineData(AlarmId.ReservoirEmpty, true)]
    public void Silenced_alarms_leave_the_warning_output_and_never_the_healthy_relay(AlarmId alarm, bool failure)
    {
        Bench bench = new(Bench.Short with { RestartDelayMs = 50_000 });
        bench.Inputs = bench.Inputs.WithWitness(alarm);
        bench.Scan();
        bench.Spec.Shelve(alarm, 1000);

        Assert.Equal(failure, !bench.Scan().HealthyRelay);
        Assert.False(bench.Out.WarningOutput);
        Assert.True(bench.Alarm(alarm).Stands);
        bench.Spec.EndShelving(alarm);
        Assert.Equal(!failure, bench.Out.WarningOutput);
    }

    [Fact]
    public void Reservoir_low_is_a_consequence_of_reservoir_empty()
    {
        Bench bench = new(Bench.Short with { RestartDelayMs = 50_000 });
        bench.Inputs = bench.Inputs with { LevelLow = true, LevelEmpty = true };
        bench.Scan();

        Assert.Equal(SuppressedByDesign, bench.Alarm(AlarmId.ReservoirLow).Lifecycle);
        Assert.Equal(Unacknowledged, bench.Alarm(AlarmId.ReservoirEmpty).Lifecycle);
    }

    private static void Expect(AlarmId alarm, string events, Lifecycle expected)
    {
        Bench bench = new(Quiet);
        bench.Scan();
        foreach (string happening in events.Split(' '))
            Do(bench, alarm, happening);

        Assert.Equal(expected, bench.Alarm(alarm).Lifecycle);
    }

    private static void Do(Bench bench, AlarmId alarm, string happening)
    {
        switch (happening)
        {
            case "begin":
                bench.Inputs = bench.Inputs.WithWitness(alarm);
                bench.Scan();
                break;
            case "end":
                bench.Inputs = bench.Inputs with { Witnessed = bench.Inputs.Witnessed & ~(1UL << (int)alarm) };
                bench.Scan();
                break;
            case "ack":
                bench.Press(Buttons.Acknowledge);
                break;
            case "reset":
                bench.Press(Buttons.Reset);
                break;
            case "shelve":
                bench.Spec.Shelve(alarm, 200);
                break;
            case "unshelve":
                bench.Spec.EndShelving(alarm);
                break;
            case "wait":
                bench.Run(200);
                break;
            case "cause":
                bench.Inputs = bench.Inputs.WithWitness(AlarmId.ScanOverrun);
                bench.Scan();
                break;
            case "cause-over":
                bench.Inputs = bench.Inputs with { Witnessed = bench.Inputs.Witnessed & ~(1UL << (int)AlarmId.ScanOverrun) };
                bench.Scan();
                break;
            case "nocause":
                Do(bench, alarm, "cause-over");
                bench.Press(Buttons.Reset);
                break;
            case "remove":
                bench.Spec.TakeOutOfService(alarm);
                break;
            case "return":
                bench.Spec.ReturnToService(alarm);
                break;
            default:
                Assert.Equal("", happening);
                break;
        }
    }
}
