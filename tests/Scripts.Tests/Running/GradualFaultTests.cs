using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;
using LubeController.Scripts.Tests.Support;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Running;

public sealed class GradualFaultTests
{
    private const string Head = "script: x\nplant: salt.plant.yaml\nsettings: plain.settings.yaml\nduration: 200 s\nsteps:\n";

    [Fact]
    public void A_fault_grows_from_harmless_to_what_is_written_in_64_equal_steps()
    {
        List<(long TimeUs, StepAction Action)> seen = Run("  - {at: 10 s, fault: worn, magnitude: 36 %, over: 64 s}\n", out RunResult result);

        Assert.Equal((10_000_000, 1.0), (seen[0].TimeUs, ((SetFault)seen[0].Action).MagnitudeSi));
        Assert.Equal(65, seen.Count);
        for (int step = 1; step <= 64; step++)
        {
            Assert.Equal((10 + step) * 1_000_000L, seen[step].TimeUs);
            Assert.Equal(1 - (0.01 * step), ((GrowFault)seen[step].Action).MagnitudeSi, 1e-12);
        }

        Assert.Equal(0.36, ((GrowFault)seen[^1].Action).MagnitudeSi);
        Assert.Equal([new FiredStep(0, 10_000_000)], result.FiredSteps);
        Assert.Equal(["fault worn, 36 %, over 1 min 4 s", "fault worn reaches 36 %"], result.Trace.Events.Select(entry => entry.Text));
    }

    [Theory]
    [InlineData("heal: worn", 16)]
    [InlineData("fault: worn, magnitude: 50 %", 16)]
    [InlineData("fault: leaking, part: a, magnitude: 50 %", 64)]
    [InlineData("mark: nothing", 64)]
    public void Healing_or_setting_it_anew_ends_the_growth(string other, int expected)
    {
        List<(long TimeUs, StepAction Action)> seen = Run($"  - {{at: 10 s, fault: worn, magnitude: 36 %, over: 64 s}}\n  - {{at: 26.5 s, {other}}}\n", out _);

        Assert.Equal(expected, seen.Count(entry => entry.Action is GrowFault));
    }

    [Fact]
    public void A_growth_that_begins_anew_goes_on_alone()
    {
        List<(long TimeUs, StepAction Action)> seen = Run("  - {at: 10 s, fault: worn, magnitude: 36 %, over: 64 s}\n  - {at: 26.5 s, fault: worn, magnitude: 20 %, over: 64 s}\n", out _);

        Assert.Equal(16 + 64, seen.Count(entry => entry.Action is GrowFault));
        Assert.Equal(90_500_000, seen[^1].TimeUs);
    }

    [Fact]
    public void Two_parts_grow_apart_and_any_part_heals_both()
    {
        const string Steps = "  - {at: 10 s, fault: leaking, part: a, magnitude: 64 %, over: 64 s}\n  - {at: 20 s, fault: leaking, part: b, magnitude: 64 %, over: 64 s}\n";

        Assert.Equal(10 + 64, Run(Steps + "  - {at: 20.5 s, heal: leaking, part: a}\n", out _).Count(entry => entry.Action is GrowFault));
        Assert.Equal(20 + 10, Run(Steps + "  - {at: 30.5 s, heal: leaking, part: any}\n", out _).Count(entry => entry.Action is GrowFault));
    }

    [Fact]
    public void A_second_number_is_read_told_and_kept()
    {
        using var folder = new TempFolder();
        BenchScript script = Reads.Script(folder.Write("s.yaml", Head + "  - {at: 1 s, fault: loose, magnitude: 50 ms, with: {on-time: 3 s}}\n  - {at: 2 s, fault: loose, magnitude: 50 ms}\n"), Bench());

        Assert.Equal([3.0, 2.0], script.Steps.Select(step => ((SetFault)step.Action).SecondSi!.Value));
        Assert.Equal("fault loose, 50 ms, on-time 3000 ms", script.Steps[0].Action.Text);
    }

    [Fact]
    public void A_fault_that_took_no_effect_makes_the_script_not_exercised()
    {
        using var folder = new TempFolder();
        FakeScriptBench bench = Bench();
        string path = folder.Write("s.yaml", Head + "  - {name: hole, at: 70 s, fault: leaking, part: b, magnitude: 64 %}\nexpect:\n  - {name: it rests, always: phase is rest}\n");
        Assert.Equal(LubeController.Scripts.Expectations.Outcome.Held, new ScriptRunner(bench).Run(Reads.Script(path, bench)).Verdict.Outcome);

        bench.IdleFaults = ["leaking"];
        ScriptVerdict verdict = new ScriptRunner(bench).Run(Reads.Script(path, bench)).Verdict;

        Assert.Equal(LubeController.Scripts.Expectations.Outcome.NotExercised, verdict.Outcome);
        Assert.Equal("the fault leaking on b (step hole, at 1 min 10 s) never took effect: it needs pressure in the line while it is in place", Assert.Single(verdict.Omissions));
    }

    private static FakeScriptBench Bench()
    {
        var share = new QuantityRange(UnitFamily.Ratio, 0, 100, "%");
        var time = new QuantityRange(UnitFamily.Time, 1, 60_000, "ms");
        return SampleBench.Make()
            .With(new BenchFault("worn", [], share, 0.5) { HarmlessMagnitude = 1 })
            .With(new BenchFault("leaking", ["a", "b"], share, null) { HarmlessMagnitude = 0, Needs = "pressure in the line" })
            .With(new BenchFault("loose", [], time, 0.05) { Second = new BenchFaultNumber("on-time", time, 2) });
    }

    private static List<(long TimeUs, StepAction Action)> Run(string steps, out RunResult result)
    {
        using var folder = new TempFolder();
        FakeScriptBench bench = Bench();
        BenchScript script = Reads.Script(folder.Write("s.yaml", Head + steps), bench);
        var seen = new List<(long TimeUs, StepAction Action)>();
        bench.OnAction = (time, action, _) => seen.Add((time, action));
        result = bench.Run(script);
        return seen;
    }
}
