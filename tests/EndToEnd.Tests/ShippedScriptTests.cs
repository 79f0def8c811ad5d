using System.IO;
using System.Linq;
using LubeController.Emulator;
using LubeController.Emulator.Platform;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Records;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.EndToEnd.Tests;

/// <summary>The scripts that ship are held to what they say of themselves.</summary>
[Trait("Run", "Long")]
public sealed class ShippedScriptTests
{
    public static TheoryData<string> All => new(Repository.Scripts("faults").Concat(Repository.Scripts("running")).Concat(Repository.WiringScripts));

    /// <summary>Every fault step of every fault script.</summary>
    public static TheoryData<string, int> Faults
    {
        get
        {
            var data = new TheoryData<string, int>();
            foreach (string path in Repository.Scripts("faults").Concat(Repository.WiringScripts))
            {
                BenchScript script = Repository.Read(path);
                foreach (Step step in script.Steps.Where(step => step.Action is SetFault))
                    data.Add(path, step.Index);
            }

            return data;
        }
    }

    public static TheoryData<string> Short => new(Repository.Scripts("faults").Concat(Repository.Scripts("running")).Concat(Repository.WiringScripts).Where(path => !path.EndsWith("-day.yaml", System.StringComparison.Ordinal)));

    [Theory]
    [MemberData(nameof(All))]
    public void Every_script_that_ships_holds(string path)
    {
        BenchScript script = Repository.Read(path);

        ScriptVerdict verdict = new ScriptRunner(new EmulatedBench()).Run(script).Verdict;

        Assert.All(verdict.Expectations, one => Assert.True(one.Outcome == Outcome.Held, $"{one.Expectation.Name}: {one.Reason}; {one.Seen}"));
        Assert.Equal(Outcome.Held, verdict.Outcome);
    }

    [Theory]
    [MemberData(nameof(Faults))]
    public void With_one_of_its_faults_taken_out_a_fault_script_fails(string path, int fault)
    {
        BenchScript script = Repository.Read(path);
        BenchScript healthy = script with { Steps = [.. script.Steps.Select(step => step.Index == fault ? WithoutFault(step) : step)] };

        ScriptVerdict verdict = new ScriptRunner(new EmulatedBench()).Run(healthy).Verdict;

        Assert.Contains(verdict.Expectations, one => one.Outcome == Outcome.Failed);
    }

    [Fact]
    public void Every_fault_script_sets_a_fault() =>
        Assert.Equal(Repository.Scripts("faults"), Faults.Select(row => row.Data.Item1).Distinct().Intersect(Repository.Scripts("faults")));

    [Theory]
    [MemberData(nameof(Short))]
    public void Skipping_quiet_time_and_scanning_every_tick_give_the_same_bytes(string path)
    {
        BenchScript script = Repository.Read(path);

        RunResult skipped = new EmulatedBench().Run(script);
        RunResult everyTick = new EmulatedBench { SkipQuietTime = false }.Run(script);

        Assert.Equal(Csv(everyTick), Csv(skipped));
        Assert.Equal(everyTick.Trace.Events, skipped.Trace.Events);
        long powered = everyTick.TicksCovered - Unpowered(script, skipped.Trace);
        if (script.Steps.Any(step => step.Action is SetFault fault && BoardFaults.Find(fault.Kind.Name) != null))
            Assert.InRange(everyTick.ScansExecuted, 1, powered);
        else
            Assert.Equal(powered, everyTick.ScansExecuted);
        Assert.True(skipped.ScansExecuted < everyTick.ScansExecuted);
    }

    /// <summary>The bounds stated in DEVELOPERS.md: under 1 % for timer plants, and for shaft plants too.</summary>
    [Theory]
    [InlineData("salt-works-day", 0.001)]
    [InlineData("brick-press-day", 0.001)]
    [InlineData("quarry-day", 0.002)]
    [InlineData("kiln-day", 0.002)]
    [InlineData("sawmill-day", 0.001)]
    [InlineData("stone-saw-day", 0.002)]
    public void A_fault_free_day_executes_few_of_its_scans(string name, double mostShare)
    {
        BenchScript script = Repository.Read($"hil-scripts/running/{name}.yaml");

        RunResult day = new EmulatedBench().Run(script);

        Assert.Equal(8_640_001, day.TicksCovered);
        Assert.InRange(day.ScansExecuted / (double)day.TicksCovered, 1e-5, mostShare);
    }

    [Fact]
    public void A_seed_changes_what_is_irregular_and_nothing_else()
    {
        BenchScript chatter = Repository.Read("hil-scripts/faults/cycle-switch-chattering.yaml");
        BenchScript blocked = Repository.Read("hil-scripts/faults/outlet-blocked.yaml");

        Assert.NotEqual(Csv(new EmulatedBench().Run(chatter)), Csv(new EmulatedBench().Run(chatter with { Seed = chatter.Seed + 1 })));
        Assert.Equal(Csv(new EmulatedBench().Run(blocked)), Csv(new EmulatedBench().Run(blocked with { Seed = blocked.Seed + 1 })));
    }

    internal static string Csv(RunResult result)
    {
        using var writer = new StringWriter();
        CsvRecord.Write(result.Trace, writer);
        return writer.ToString();
    }

    /// <summary>Ticks at which a cut left the board without power: from the tick of the cut until the one of its return.</summary>
    // Whoever cuts the power, a step or a fault of the supply, the run's record tells when.
    private static long Unpowered(BenchScript script, Trace trace)
    {
        long ticks = 0;
        long? cut = null;
        foreach (TraceEvent happening in trace.Events.Where(happening => happening.Kind == "power"))
        {
            if (happening.Text == "off")
            {
                cut = happening.TimeUs;
            }
            else if (cut is { } since)
            {
                ticks += Tick(happening.TimeUs) - Tick(since);
                cut = null;
            }
        }

        return cut is { } last ? ticks + Tick(script.DurationUs + 1) - Tick(last) : ticks;

        long Tick(long timeUs) => (timeUs + (script.ScanPeriodMs * 1000L) - 1) / (script.ScanPeriodMs * 1000L);
    }

    private static Step WithoutFault(Step step) =>
        step.Action is SetFault fault ? step with { Action = new MarkTime("left out: " + fault.Text) } : step;
}
