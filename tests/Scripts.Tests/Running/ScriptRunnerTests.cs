using LubeController.Scripts.Expectations;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Tests.Support;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Running;

public sealed class ScriptRunnerTests
{
    private const string Head = "script: x\nplant: salt.plant.yaml\nsettings: plain.settings.yaml\nduration: 100 s\n";
    private const string Rest = "expect:\n  - {name: it rests, always: phase is rest}\n";

    [Fact]
    public void A_script_whose_expectations_hold_is_held() => Assert.Equal(Outcome.Held, Run(Rest, SampleBench.Make()).Outcome);

    [Fact]
    public void One_failure_fails_the_script() =>
        Assert.Equal(Outcome.Failed, Run(Rest + "  - {name: it doses, eventually: phase is dose, from: phase is prime}\n", SampleBench.Make().At(5, "phase", 1)).Outcome);

    [Fact]
    public void A_script_that_expects_nothing_is_not_exercised()
    {
        ScriptVerdict verdict = Run("", SampleBench.Make());
        Assert.Equal((Outcome.NotExercised, "the script expects nothing"), (verdict.Outcome, Assert.Single(verdict.Omissions)));
    }

    [Fact]
    public void A_run_broken_off_at_its_scan_bound_is_not_exercised()
    {
        FakeScriptBench bench = SampleBench.Make();
        for (int time = 1; time <= 10; time++)
            bench.At(time * 1_000_000L, "counter.doses", time);
        ScriptVerdict verdict = Run("scan-bound: 5\n" + Rest, bench);
        Assert.Equal(Outcome.NotExercised, verdict.Outcome);
        Assert.Contains("broken off at 5 s, after 6 scans, its bound", Assert.Single(verdict.Omissions));
        Assert.Equal(Outcome.Held, Run("scan-bound: 50\n" + Rest, bench).Outcome);
    }

    [Fact]
    public void A_run_that_ends_early_covers_no_window_beyond_it()
    {
        FakeScriptBench bench = SampleBench.Make();
        bench.EndsEarlyUs = 1;
        Assert.Equal(Outcome.NotExercised, Run(Rest, bench).Outcome);
    }

    private static ScriptVerdict Run(string rest, FakeScriptBench bench)
    {
        using var folder = new TempFolder();
        BenchScript script = Reads.Script(folder.Write("s.yaml", Head + rest), bench);
        return new ScriptRunner(bench).Run(script).Verdict;
    }
}
