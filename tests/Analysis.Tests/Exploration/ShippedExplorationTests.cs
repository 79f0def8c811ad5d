using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using LubeController.Analysis.Exploration;
using LubeController.Core;
using LubeController.Scripts.Reading;
using LubeController.Scripts.SettingsFiles;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Analysis.Tests.Exploration;

/// <summary>The explorations that ship reach their end, hold, and come by what they should.</summary>
public sealed class ShippedExplorationTests
{
    /// <summary>What none of them comes by, and why.</summary>
    private static readonly Dictionary<AlarmId, string> Beyond = new()
    {
        [AlarmId.SettingsInvalid] = "settings are fixed in an exploration",
        [AlarmId.RuleFault] = "no rule is explored here",
        [AlarmId.CycleSwitchFault] = "takes more pulses of one switch in one dose than a dose made small has",
        [AlarmId.PulseTooFast] = "a pulse takes two steps, and no time is set between pulses",
        [AlarmId.LineNotVented] = "no dose by pressure is explored here",
        [AlarmId.LogicFault] = "told by the main loop, which is not explored",
        [AlarmId.ScanOverrun] = "told by the main loop, which is not explored",
        [AlarmId.StorageCorrupt] = "told by the main loop, which is not explored",
        [AlarmId.RestartUnexpected] = "restarts-most is 0: a restart is what is explored",
    };

    [Fact]
    public void They_are_complete_hold_and_reach_together_what_can_be_reached()
    {
        var together = new CoreCoverage();
        foreach (string path in Files())
        {
            ExplorationResult result = ExplorationSession.Explore(Read(path), Options(2), new Silent(), CancellationToken.None, out CoreCoverage coverage);
            Assert.True(
                result.Outcome == ExplorationOutcome.Complete,
                $"{path}: {result.Outcome} {(result.Property < 0 ? "" : CoreProperties.Names[result.Property])} after {result.Letters.Count} steps");
            Assert.True(result.States > 10_000, $"{path}: {result.States} states are too few to mean anything");
            together.Add(coverage);
        }

        Assert.All(Enum.GetValues<Phase>(), phase => Assert.True(together.Reached(phase), phase.ToString()));
        IEnumerable<AlarmId> unreached = Enum.GetValues<AlarmId>().Where(id => (together.Alarms & (1 << (int)id)) == 0);
        Assert.Equal(Beyond.Keys.Order(), unreached.Order());
    }

    [Fact]
    public void The_numbers_hang_on_no_worker()
    {
        ExplorationFile file = Read(Files().Single(path => path.EndsWith("two-switches.exploration.yaml", StringComparison.Ordinal)));
        ExplorationResult one = ExplorationSession.Explore(file, Options(1), new Silent(), CancellationToken.None, out _);
        ExplorationResult three = ExplorationSession.Explore(file, Options(3), new Silent(), CancellationToken.None, out _);
        Assert.Equal(one with { Bytes = 0, Letters = [] }, three with { Bytes = 0, Letters = [] });
    }

    /// <summary>A bound of less time than is promised is missed; the way there is written as a script, which fails when it is replayed.</summary>
    [Theory]
    [InlineData("timer", CoreProperty.StallIsAlarmed, 40)]
    [InlineData("warnings", CoreProperty.DoseComesRound, 20)]
    public void A_violation_is_written_as_a_script_that_fails_when_replayed(string name, CoreProperty property, int percent)
    {
        ExplorationFile file = Read(Files().Single(path => Path.GetFileName(path) == name + ".exploration.yaml"));
        file = file with { Core = file.Core with { BoundPercent = percent } };
        ExplorationResult result = ExplorationSession.Explore(file, Options(2), new Silent(), CancellationToken.None, out _);
        Assert.Equal(ExplorationOutcome.Violated, result.Outcome);
        Assert.Equal(property, (CoreProperty)result.Property);
        using var folder = new TempFolder();
        string script = ViolationScript.Path(file, result, folder.Root);
        ViolationScript.Write(file, result, script);
        int code = Replays.ExitCode(script, out string report);
        Assert.True(code == 1, report);
        Assert.Contains("FAILED", report, StringComparison.Ordinal);
        Assert.DoesNotContain("NOT EXERCISED", report, StringComparison.Ordinal);
    }

    private static ExplorationOptions Options(int workers) => new([], workers, 3L << 30, null);

    private static string[] Files() => [.. Directory.GetFiles(Path.Combine(Repository.Root, "hil-scripts", "explorations"), "*.exploration.yaml").Order(StringComparer.Ordinal)];

    private static ExplorationFile Read(string path)
    {
        var problems = new ProblemList();
        ExplorationFile? file = new ExplorationReader(RestRules.All).Read(path, problems);
        Assert.True(file != null, string.Join(Environment.NewLine, problems.All));
        return file;
    }

    private sealed class Silent : IExplorationProgress
    {
        public void Level(int depth, int states, long transitions, int frontier)
        {
        }
    }
}
