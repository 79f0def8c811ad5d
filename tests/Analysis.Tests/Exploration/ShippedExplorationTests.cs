using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using LubeController.Analysis.Exploration;
using LubeController.Analysis.Specification;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Running;
using LubeController.Tests.Support;
using Xunit;
using AlarmId = LubeController.Core.AlarmId;
using Phase = LubeController.Core.Phase;

namespace LubeController.Analysis.Tests.Exploration;

/// <summary>The explorations that ship reach their end, hold, and come by what they should.</summary>
[Trait("Run", "Long")]
public sealed class ShippedExplorationTests
{
    /// <summary>Changes of phase by the specification's diagram that none of them comes by, and why.</summary>
    private static readonly Dictionary<string, string> BeyondPhases = [];

    [Fact]
    public void They_are_complete_hold_and_reach_together_what_can_be_reached()
    {
        var together = new CoreCoverage();
        foreach (string path in ShippedExplorations.All())
        {
            (ExplorationResult result, CoreCoverage coverage) = Explore(ShippedExplorations.Read(path), 2);
            Assert.True(
                result.Outcome == ExplorationOutcome.Complete,
                $"{path}: {result.Outcome} {(result.Property < 0 ? "" : CoreProperties.Names[result.Property])} after {result.Letters.Count} steps");
            Assert.True(result.States > 3_000, $"{path}: {result.States} states are too few to mean anything");
            together.Add(coverage);
        }

        Assert.All(Enum.GetValues<Phase>(), phase => Assert.True(together.Reached(phase), phase.ToString()));
        Assert.All(Enum.GetValues<AlarmId>(), id => Assert.True((together.Alarms & (1 << (int)id)) != 0, id.ToString()));

        // By the specification, not by the core: what it draws is what can be reached.
        IEnumerable<string> drawn = PhaseGraph.Dot().Split('\n').Where(line => line.Contains(" -> ", StringComparison.Ordinal) && !line.Contains("start ->", StringComparison.Ordinal))
            .Select(line => line.Split('[')[0].Trim()).Where(edge => edge.Split(" -> ")[0] != edge.Split(" -> ")[1]);
        string[] seen = [.. together.Transitions.Select(one => $"{one.From} -> {one.To}")];
        Assert.Equal(BeyondPhases.Keys.Order(StringComparer.Ordinal), drawn.Except(seen).Order(StringComparer.Ordinal));

        // Two changes in one scan, by way of rest.
        Assert.Equal(["Dose -> Prime", "Prime -> Dose", "Stopped -> Dose"], seen.Except(drawn).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_numbers_hang_on_no_worker()
    {
        ExplorationFile file = ShippedExplorations.Named("warnings");
        ExplorationResult one = Explore(file, 1).Result;
        ExplorationResult three = Explore(file, 3).Result;
        Assert.Equal(one with { Bytes = 0, Letters = [] }, three with { Bytes = 0, Letters = [] });
    }

    /// <summary>A bound of less time than is promised is missed; the way there is written as a script, which fails when it is replayed.</summary>
    [Theory]
    [InlineData("timer", CoreProperty.StallIsAlarmed, 40)]
    [InlineData("warnings", CoreProperty.DoseComesRound, 20)]
    public void A_violation_is_written_as_a_script_that_fails_when_replayed(string name, CoreProperty property, int percent)
    {
        ExplorationFile file = ShippedExplorations.Named(name);
        file = file with { Core = file.Core with { BoundPercent = percent } };
        ExplorationResult result = Explore(file, 2).Result;
        Assert.Equal(ExplorationOutcome.Violated, result.Outcome);
        Assert.Equal(property, (CoreProperty)result.Property);
        using var folder = new TempFolder();
        string script = ViolationScript.Path(file, result, folder.Root);
        ViolationScript.Write(file, result, script);
        ScriptVerdict verdict = Replays.Verdict(script, out string report);
        Assert.True(verdict.Outcome == Outcome.Failed, report);
        Assert.Empty(verdict.Omissions);
        Assert.All(verdict.Expectations, one => Assert.NotEqual(Outcome.NotExercised, one.Outcome));
    }

    private static (ExplorationResult Result, CoreCoverage Coverage) Explore(ExplorationFile file, int workers) =>
        CoreExploration.Run(file, 3L << 30, workers, null, CancellationToken.None);
}
