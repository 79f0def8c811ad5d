using System.IO;
using System.Linq;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Files.Reading;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;
using LubeController.Scripts.Tests.Support;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Files;

public sealed class ScriptReaderTests
{
    private const string Head = "script: x\nplant: salt.plant.yaml\nsettings: plain.settings.yaml\nduration: 1 h\n";

    [Fact]
    public void The_sample_script_is_read_whole()
    {
        BenchScript script = Reads.Script(Reads.Data("sample.yaml"));
        Assert.Equal(("A blocked outlet stops the divider", 1_800_000_000L, 10, 7UL, 1_000_000L), (script.Title, script.DurationUs, script.ScanPeriodMs, script.Seed, script.ScanBound));
        Assert.Equal(["block", "wait", "free", ""], script.Steps.Select(step => step.Name));
        Assert.Equal(
            ["fault outlet-blocked of gland", "the alarm has stood for ten seconds", "heal outlet-blocked of gland", "press reset for 300 ms"],
            script.Steps.Select(step => step.Action.Text));
        Assert.Equal(new AtTime(300_000_000), script.Steps[0].Time);
        var wait = Assert.IsType<AfterTrigger>(script.Steps[1].Time);
        Assert.Equal(("alarm divider-stalled is on", 0, 10_000_000L), (wait.Trigger.Text, wait.SinceStep, wait.DelayUs));
        Assert.Equal(new AfterStep(1, 60_000_000), script.Steps[2].Time);
        Assert.Equal(
            [
                "eventually alarm divider-stalled is on within 5 min, from block",
                "always pressure line < 190 bar",
                "never alarm divider-stalled is on or phase is failed, to block",
                "in order: alarm divider-stalled is on, then output pump is off",
                "phase is rest for 2 min without a break",
                "phase is failed until phase is rest within 5 min, from phase is failed",
            ],
            script.Expectations.Select(expectation => expectation.ToString()));
        Assert.Equal(new StepEdge(0, "block"), script.Expectations[0].From);
    }

    [Fact]
    public void Every_action_is_read()
    {
        using var folder = new TempFolder();
        BenchScript script = Reads.Script(folder.Write("all.yaml", Head + """
            steps:
              - {at: 1 s, fault: pump-worn, magnitude: 30 %}
              - {at: 2 s, fault: pump-worn}
              - {at: 3 s, fault: inlet-blocked}
              - {at: 4 s, fault: cycle-switch-stuck-on}
              - {at: 5 s, hold: prime}
              - {at: 6 s, release: prime}
              - {at: 7 s, set: stop, to: on}
              - {at: 8 s, shaft-speed: 600 rpm, ramp: 30 s}
              - {at: 9 s, temperature: 45 degC}
              - {at: 10 s, power: off}
              - {at: 11 s, refill: 3.5 l}
              - {at: 12 s, press: dose-now}
            """));
        StepAction[] actions = script.Steps.Select(step => step.Action).ToArray();
        Assert.Equal([0.3, 0.5, null, null], actions.OfType<SetFault>().Select(fault => fault.MagnitudeSi));
        Assert.Equal("piston-4", ((SetFault)actions[3]).Part);
        Assert.Equal([new MoveButton(Button.Prime, true), new MoveButton(Button.Prime, false)], actions[4..6]);
        Assert.Equal(new SetInput(ControllerInputs.Stop, 1, "on"), actions[6]);
        Assert.Equal(new SetShaftSpeed(10, 30_000_000), actions[7]);
        Assert.Equal(318.15, ((SetTemperature)actions[8]).Kelvin, 1e-9);
        Assert.Equal(new SetPower(false), actions[9]);
        Assert.Equal(3.5e-3, ((RefillReservoir)actions[10]).ContentM3, 1e-15);
        Assert.Equal(new PressButton(Button.DoseNow, 500_000), actions[11]);
    }

    [Fact]
    public void A_script_takes_over_what_another_says_and_its_paths_stay_where_they_were_written()
    {
        using var folder = new TempFolder();
        Directory.CreateDirectory(folder.At("deeper"));
        string path = folder.Write("deeper/other.yaml", "based-on: ../sample.yaml\nscript: the same with another seed\nseed: 8\nsteps: []\nexpect: []\n");
        BenchScript script = Reads.Script(path);
        Assert.Equal(("the same with another seed", 8UL, 0, 1_800_000_000L), (script.Title, script.Seed, script.Steps.Count, script.DurationUs));
        Assert.StartsWith("Salt works", script.Plant.Name);
    }

    [Fact]
    public void A_problem_in_a_shared_file_is_told_there()
    {
        using var folder = new TempFolder();
        folder.Write("basis.yaml", Head.Replace("1 h", "1 parsec"));
        string path = folder.Write("own.yaml", "based-on: basis.yaml\nscript: y\n");
        Problem problem = Reads.Refusal(problems => Read(path, problems));
        Assert.Equal((4, "duration"), (problem.Place.Line, problem.Field));
        Assert.EndsWith("basis.yaml", problem.Place.File);
    }

    [Fact]
    public void All_problems_of_a_script_and_its_files_are_told_at_once()
    {
        using var folder = new TempFolder();
        folder.Write("bad.plant.yaml", File.ReadAllText(Reads.Data("salt.plant.yaml")).Replace("4 l", "4 s"));
        folder.Write("bad.settings.yaml", "rest: 1 bar\n");
        string path = folder.Write("bad.yaml", "script: x\nplant: bad.plant.yaml\nsettings: bad.settings.yaml\nduration: 1 m\nseeds: 3\nsteps:\n  - at: soon\n    press: reset\n");
        var problems = new ProblemList();
        Assert.Null(Read(path, problems));
        Assert.Equal(["seeds", "reservoir.capacity", "rest", "duration", "steps[0].at"], problems.All.Select(problem => problem.Field));
    }

    [Theory]
    [InlineData("steps:\n  - at: 1 s\n", "steps[0]", "a step needs one of the fields")]
    [InlineData("steps:\n  - at: 1 s\n    press: reset\n    power: on\n", "steps[0].power", "a step has 'press' and 'power'")]
    [InlineData("steps:\n  - press: reset\n", "steps[0]", "a step needs one of the fields at, after")]
    [InlineData("steps:\n  - at: 1 s\n    delay: 2 s\n    press: reset\n", "steps[0].delay", "'delay' belongs to 'after'")]
    [InlineData("steps:\n  - at: 1 s\n    press: reset\n    part: gland\n", "steps[0].part", "'part' does not go with 'press'")]
    [InlineData("steps:\n  - after: nowhere\n    press: reset\n", "steps[0].after", "no step is called 'nowhere'")]
    [InlineData("steps:\n  - after: pressure line > 3 bar\n    press: reset\n", "steps[0].after", "a step cannot wait for 'pressure line'")]
    [InlineData("steps:\n  - name: a\n    after: a\n    press: reset\n", "steps[0].after", "the step waits for itself: a -> a")]
    [InlineData("steps:\n  - name: a\n    after: b\n    press: reset\n  - name: b\n    after: phase is dose\n    since: a\n    press: reset\n", "steps[0].after", "the steps wait for each other in a ring: a -> b -> a")]
    [InlineData("steps:\n  - at: 1 s\n    fault: outlet-blocked\n", "steps[0].part", "a step needs the field 'part'")]
    [InlineData("steps:\n  - at: 1 s\n    fault: injector-stuck\n    part: i1\n", "steps[0].fault", "the plant has no such part: injector-stuck concerns the injector")]
    [InlineData("steps:\n  - at: 1 s\n    heal: vent-valve-stuck-open\n", "steps[0].heal", "the plant has no such part: vent-valve-stuck-open concerns the vent valve")]
    [InlineData("steps:\n  - at: 1 s\n    fault: injector-stick\n", "steps[0].fault", "the word is not one of 5 known ones")]
    [InlineData("steps:\n  - at: 1 s\n    fault: outlet-blocked\n    part: elbow\n", "steps[0].part", "the word is not one of 3 known ones")]
    [InlineData("steps:\n  - at: 1 s\n    fault: inlet-blocked\n    part: gland\n", "steps[0].part", "the fault inlet-blocked concerns the whole plant")]
    [InlineData("steps:\n  - at: 1 s\n    fault: inlet-blocked\n    magnitude: 3 %\n", "steps[0].magnitude", "the fault inlet-blocked has no magnitude")]
    [InlineData("steps:\n  - at: 1 s\n    fault: line-leak\n", "steps[0].magnitude", "a step needs the field 'magnitude'")]
    [InlineData("steps:\n  - {at: 1 s, fault: inlet-blocked, over: 3 s}\n", "steps[0].over", "the fault inlet-blocked can only come at once")]
    [InlineData("steps:\n  - {at: 1 s, heal: pump-worn, over: 3 s}\n", "steps[0].over", "'over' does not go with 'heal'")]
    [InlineData("steps:\n  - {at: 1 s, fault: pump-worn, over: 0 s}\n", "steps[0].over", "a time outside its range")]
    [InlineData("steps:\n  - {at: 1 s, fault: pump-worn, with: {on-time: 3 s}}\n", "steps[0].with", "the fault pump-worn has no second number")]
    [InlineData("steps:\n  - {at: 1 s, fault: pump-worn, magnitude: {from: 3 %}}\n", "steps[0].magnitude.to", "a range to draw from needs the field 'to'")]
    [InlineData("steps:\n  - {at: 1 s, fault: pump-worn, magnitude: {from: 3 %, to: 101 %}}\n", "steps[0].magnitude.to", "a ratio outside its range")]
    [InlineData("steps:\n  - {at: 1 s, fault: pump-worn, magnitude: {from: 3 %, to: 3 %}}\n", "steps[0].magnitude.to", "the range ends where it begins or before, at 3 %")]
    [InlineData("steps:\n  - {at: 1 s, fault: pump-worn, magnitude: {from: 0 %, to: 3 %, spread: log}}\n", "steps[0].magnitude.from", "a range spread by ratios begins above zero")]
    [InlineData("steps:\n  - {at: 1 s, fault: pump-worn, magnitude: {from: 1 %, to: 3 %, spread: wide}}\n", "steps[0].magnitude.spread", "the word is not one of 2 known ones")]
    [InlineData("steps:\n  - {at: 1 s, fault: inlet-blocked, magnitude: {from: 1 %, to: 3 %}}\n", "steps[0].magnitude", "the fault inlet-blocked has no magnitude")]
    [InlineData("steps:\n  - {at: 1 s, fault: inlet-blocked, part: any}\n", "steps[0].part", "the fault inlet-blocked concerns the whole plant")]
    [InlineData("steps:\n  - {at: {from: 1 s, to: 3 bar}, press: reset}\n", "steps[0].at.to", "'bar' makes it a pressure, but a time is expected")]
    [InlineData("steps:\n  - {at: {from: 3 s, to: 1 s}, press: reset}\n", "steps[0].at.to", "the range ends where it begins or before")]
    [InlineData("steps:\n  - at: 1 s\n    set: stop\n", "steps[0].to", "a step needs the field 'to'")]
    [InlineData("steps:\n  - at: 1 s\n    refill: 5 l\n", "steps[0].refill", "the reservoir does not hold so much")]
    [InlineData("expect:\n  - name: x\n    always: alarm divider-stuck is on\n", "expect[0].always", "nothing is recorded under the name 'alarm divider-stuck'")]
    [InlineData("expect:\n  - name: x\n    always: phase is asleep\n", "expect[0].always", "'phase' is never 'asleep'")]
    [InlineData("expect:\n  - name: x\n    always: phase > rest\n", "expect[0].always", "'phase' is a word, which is neither more nor less than another")]
    [InlineData("expect:\n  - name: x\n    always: pressure line = 3 bar\n", "expect[0].always", "'pressure line' moves without steps and equals a number only for an instant")]
    [InlineData("expect:\n  - name: x\n    always: pressure line > 3 s\n", "expect[0].always", "'pressure line' is compared with '3 s': 's' makes it a time, but a pressure is expected")]
    [InlineData("expect:\n  - name: x\n    always: the pump runs\n", "expect[0].always", "the sentence compares nothing")]
    [InlineData("expect:\n  - name: x\n    always: phase is rest and\n", "expect[0].always", "nothing stands beside 'and' or 'or'")]
    [InlineData("expect:\n  - name: x\n    always: phase is rest\n    within: 3 s\n", "expect[0].within", "'within' does not go with 'always'")]
    [InlineData("expect:\n  - name: x\n    holds: phase is rest\n", "expect[0].for", "an expectation needs the field 'for'")]
    [InlineData("expect:\n  - name: x\n    in-order: [phase is rest]\n", "expect[0].in-order", "an order needs two conditions or more")]
    [InlineData("expect:\n  - name: x\n    always: phase is rest\n    from: 5 min\n    to: 3 min\n", "expect[0].to", "the window would end before it begins, at 5 min")]
    [InlineData("expect:\n  - name: x\n    eventually: phase is rest\n    within: 5 min\n    to: 3 min\n", "expect[0].within", "'within' and 'to' both end the window")]
    [InlineData("expect:\n  - always: phase is rest\n", "expect[0].name", "an expectation needs the field 'name'")]
    [InlineData("expect:\n  - name: x\n    always: phase is rest\n  - name: x\n    never: phase is dose\n", "expect[1].name", "two expectations have this name")]
    [InlineData("scan-period: 2.5 ms\n", "scan-period", "the controller's clock counts whole milliseconds")]
    public void What_is_wrong_is_told_by_field(string rest, string field, string message)
    {
        using var folder = new TempFolder();
        string path = folder.Write("wrong.yaml", Head + rest);
        Problem problem = Reads.Refusal(problems => Read(path, problems));
        Assert.Equal(field, problem.Field);
        Assert.Contains(message, problem.Message);
        Assert.True(problem.Place.Line > 4);
        Assert.NotEqual("", problem.Remedy);
    }

    [Theory]
    [InlineData("cycle-switches: 2\ndose-ending-switch: 2\n", "the settings reckon with 2 cycle switches ('cycle-switches'), the plant has 1")]
    public void Settings_may_reckon_only_with_parts_that_the_plant_has(string settings, string message)
    {
        using var folder = new TempFolder();
        folder.Write("more.settings.yaml", settings);
        string path = folder.Write("more.yaml", Head.Replace("plain.settings", "more.settings"));
        Assert.Equal(message, Reads.Refusal(problems => Read(path, problems)).Message);
    }

    private static BenchScript? Read(string path, ProblemList problems) => new ScriptReader(SampleBench.Make(), RestRules.All).Read(path, problems);
}
