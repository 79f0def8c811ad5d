using System;
using System.IO;
using System.Linq;
using System.Xml.Linq;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Reporting;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.EndToEnd.Tests;

/// <summary>Faults that grow, that the seed decides, and that take no effect, from script to verdict on the virtual bench.</summary>
[Trait("Run", "Long")]
public sealed class FaultRunTests
{
    [Fact]
    public void A_fault_that_changes_nothing_makes_the_script_not_exercised()
    {
        (ScriptVerdict verdict, RunResult result) = Run("  - { name: stuck, at: 5 min, fault: level-switch-stuck-off, part: empty }\n", "always: output healthy-relay is on");

        Assert.Equal(Outcome.NotExercised, verdict.Outcome);
        Assert.Equal(Outcome.Held, Assert.Single(verdict.Expectations).Outcome);
        Assert.Equal("the fault level-switch-stuck-off on empty (step stuck, at 5 min) never took effect: it needs a level other than the sound one while it is in place", Assert.Single(verdict.Omissions));
        Assert.Contains(VerdictText.Of(verdict, result, withHeld: false), line => line.StartsWith("  not exercised: the fault level-switch-stuck-off", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_fault_counts_once_the_sound_switch_would_have_changed()
    {
        ScriptVerdict verdict = Run("  - { name: stuck, at: 5 min, fault: level-switch-stuck-off, part: empty }\n  - { at: 6 min, fault: reservoir-empty }\n", "always: output healthy-relay is on").Verdict;

        Assert.Empty(verdict.Omissions);
    }

    [Fact]
    public void Each_step_that_sets_a_fault_is_held_to_its_own_effect()
    {
        ScriptVerdict verdict = Run(
            """
              - { name: early, at: 5 min, fault: cycle-switch-wire-broken, part: s4-switch }
              - { at: 6 min, heal: cycle-switch-wire-broken }
              - { name: again, at: 7 min, fault: cycle-switch-stuck-on, part: s4-switch }
              - { at: 8 min, heal: cycle-switch-stuck-on }

            """,
            "always: alarm reservoir-low is off").Verdict;

        Assert.Equal("again", Assert.Single(verdict.Omissions).Split("(step ")[1].Split(',')[0]);
    }

    [Fact]
    public void A_growing_fault_reaches_the_plant_step_by_step()
    {
        RunResult sudden = Run("  - { at: 1 s, fault: line-leak, magnitude: 10 cm3/min }\n", "always: phase is rest").Result;
        RunResult growing = Run("  - { at: 1 s, fault: line-leak, magnitude: 10 cm3/min, over: 60 s }\n", "always: phase is rest").Result;

        double quick = Leaked(sudden, 50);
        double slow = Leaked(growing, 50);
        // The pump runs from 10 s on: grown in a straight line over 60 s from 1 s, the leak is half its size on average.
        Assert.InRange(slow / quick, 0.4, 0.6);
        Assert.Equal(2, growing.Trace.Events.Count(entry => entry.Text.Contains("line-leak", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_the_seed_decided_stands_in_verdict_trace_and_report()
    {
        const string Steps = "  - { name: block, at: { from: 1 s, to: 30 s }, fault: outlet-blocked, part: any }\n";
        (ScriptVerdict verdict, RunResult result) = Run(Steps, "always: phase is rest");
        Step drawn = Assert.Single(verdict.Script.Steps);
        string part = ((SetFault)drawn.Action).Part;

        Assert.Equal($"  drawn by seed 1 for block: {drawn.Drawn}", VerdictText.Of(verdict, result, withHeld: false)[1]);
        Assert.Contains(part, drawn.Drawn, StringComparison.Ordinal);
        Assert.Contains(result.Trace.Events, entry => entry.Text == $"block: fault outlet-blocked of {part} [drawn: {drawn.Drawn}]" && entry.TimeUs == ((AtTime)drawn.Time).TimeUs);
        using var writer = new StringWriter();
        JunitReport.Write([verdict], writer);
        XElement suite = XDocument.Parse(writer.ToString()).Root!.Element("testsuite")!;
        Assert.Equal([("seed", "1"), ("drawn for block", drawn.Drawn)], suite.Element("properties")!.Elements().Select(property => (property.Attribute("name")!.Value, property.Attribute("value")!.Value)));
    }

    [Fact]
    public void Another_seed_decides_otherwise_and_the_same_one_alike()
    {
        BenchScript script = Repository.Read("hil-scripts/faults/outlet-blocked-somewhere.yaml");
        string[] drawn = [.. Enumerable.Range(1, 20).Select(seed => (script with { Seed = (ulong)seed }).Drawn().Steps[0].Drawn)];

        Assert.Equal(20, drawn.Distinct().Count());
        Assert.Equal(ShippedScriptTests.Csv(new EmulatedBench().Run(script)), ShippedScriptTests.Csv(new EmulatedBench().Run(script)));
        Assert.NotEqual(ShippedScriptTests.Csv(new EmulatedBench().Run(script)), ShippedScriptTests.Csv(new EmulatedBench().Run(script with { Seed = 12 })));
    }

    private static double Leaked(RunResult result, int atS) => result.Trace.Find("volume.leaked")!.ValueAt(atS * 1_000_000L);

    private static (ScriptVerdict Verdict, RunResult Result) Run(string steps, string expectation)
    {
        string plants = Path.Combine(Repository.Root, "hil-scripts", "plants");
        using var folder = new TempFolder();
        string path = folder.Write(
            "s.yaml",
            $"script: x\nplant: {plants}/salt-works-brine-pump.plant.yaml\nsettings: {plants}/salt-works-brine-pump.settings.yaml\nduration: 30 min\nsteps:\n{steps}expect:\n  - name: it is so\n    {expectation}\n");
        return new ScriptRunner(new EmulatedBench()).Run(Repository.Read(path));
    }
}
