using System.Collections.Generic;
using LubeController.Emulator;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;
using LubeController.Scripts.Tests.Support;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Running;

public sealed class StepScheduleTests
{
    private const string Head = "script: x\nplant: salt.plant.yaml\nsettings: plain.settings.yaml\nduration: 100 s\n";
    private const long Second = 1_000_000;

    [Fact]
    public void Steps_come_in_order_of_time_and_at_one_time_in_order_of_writing() => AssertActions(
        """
        steps:
          - {at: 5 s, mark: third}
          - {at: 1 s, mark: first}
          - {at: 5 s, mark: fourth}
          - {at: 2 s, mark: second}
        """,
        SampleBench.Make(),
        "1 first", "2 second", "5 third", "5 fourth");

    [Fact]
    public void A_step_follows_another_by_its_delay() => AssertActions(
        """
        steps:
          - {name: b, after: a, delay: 3 s, mark: two}
          - {name: a, at: 4 s, mark: one}
          - {after: b, mark: three}
        """,
        SampleBench.Make(),
        "4 one", "7 two", "7 three");

    [Fact]
    public void A_step_waits_for_the_first_instant_of_a_condition() => AssertActions(
        """
        steps:
          - {after: phase is failed and alarm divider-stalled is on, delay: 2 s, mark: seen}
        """,
        SampleBench.Make().At(10 * Second, "phase", 5).At(12 * Second, "alarm.divider-stalled", 1).At(13 * Second, "phase", 0).At(15 * Second, "phase", 5),
        "14 seen");

    [Fact]
    public void A_condition_true_already_counts_when_its_watch_begins() => AssertActions(
        """
        steps:
          - {name: later, at: 20 s, mark: watch}
          - {after: phase is failed, since: later, mark: at once}
          - {after: phase is dose, since: later, mark: not before}
        """,
        SampleBench.Make().At(5 * Second, "phase", 1).At(10 * Second, "phase", 5).At(30 * Second, "phase", 1),
        "20 watch", "20 at once", "30 not before");

    [Fact]
    public void A_press_is_a_button_going_down_and_up() => AssertActions(
        "steps:\n  - {at: 3 s, press: reset, for: 2 s}\n  - {at: 4 s, mark: between}\n",
        SampleBench.Make(),
        "3 hold reset", "4 between", "5 release reset");

    [Fact]
    public void Steps_are_noted_in_the_trace_and_those_that_never_came_are_told()
    {
        using var folder = new TempFolder();
        BenchScript script = Reads.Script(folder.Write("s.yaml", Head + "steps:\n  - {name: go, at: 3 s, mark: one}\n  - {after: phase is prime, mark: two}\n  - {at: 200 s, mark: three}\nexpect:\n  - {name: x, always: phase is rest}\n"));
        (ScriptVerdict verdict, RunResult result) = new ScriptRunner(SampleBench.Make()).Run(script);
        Assert.Equal(new TraceEvent(3 * Second, "step", "go: one"), Assert.Single(result.Trace.Events));
        Assert.Equal([new FiredStep(0, 3 * Second)], result.FiredSteps);
        Assert.Equal(
            [
                "the step steps[1] (two) was never carried out: 'phase is prime' did not come true, or the run ended before its delay did",
                "the step steps[2] (three) was never carried out: its time, 3 min 20 s, lies beyond the run",
            ],
            verdict.Omissions);
        Assert.Equal(LubeController.Scripts.Expectations.Outcome.NotExercised, verdict.Outcome);
    }

    private static void AssertActions(string steps, FakeScriptBench bench, params string[] expected)
    {
        using var folder = new TempFolder();
        BenchScript script = Reads.Script(folder.Write("s.yaml", Head + steps), bench);
        var seen = new List<string>();
        bench.OnAction = (time, action, _) => seen.Add($"{time / Second} {action.Text}");
        bench.Run(script);
        Assert.Equal(expected, seen);
    }
}
