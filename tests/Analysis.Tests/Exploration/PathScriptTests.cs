using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using CsCheck;
using LubeController.Analysis.Exploration;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Running;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Analysis.Tests.Exploration;

/// <summary>
/// A way written as a script leads the bench, with the deployed main loop, its memory and its clock, to where it led the model of the
/// exploration: the script says "never" of what the model shows at its end, and must fail.
/// </summary>
[Trait("Run", "Long")]
public sealed class PathScriptTests
{
    private const int Steps = 60;
    private const ulong Seed = 20_251_125;

    [Theory]
    [InlineData("own-rule", PowerCut.None)]
    [InlineData("revolutions", PowerCut.None)]
    [InlineData("shaft", PowerCut.None)]
    [InlineData("guards", PowerCut.None)]
    [InlineData("by-pressure", PowerCut.None)]
    [InlineData("warnings", PowerCut.None)]
    [InlineData("switch-faults", PowerCut.None)]
    [InlineData("timer-cuts", PowerCut.Cut)]
    [InlineData("timer-cuts", PowerCut.CutInSave)]
    [InlineData("restarts", PowerCut.LoopFault)]
    [InlineData("restarts", PowerCut.BlockLost)]
    public void A_way_leads_the_bench_where_it_led_the_model(string name, PowerCut kind)
    {
        for (uint stream = 1; stream <= 10; stream++)
        {
            ScriptVerdict verdict = Follow(name, kind, stream, out string report);
            Assert.True(verdict.Outcome == Outcome.Failed && report.Contains("FAILED 'this never comes about'", StringComparison.Ordinal), report);
        }
    }

    // With lost settings the bench raises restart-unexpected and the model lubrication-overdue, and bits that are turned round twice
    // at once take no effect: a difference that nobody has explained yet. Whoever does moves this case up.
    [Fact]
    public void With_lost_settings_bench_and_model_still_differ()
    {
        for (uint stream = 1; stream <= 10; stream++)
        {
            ScriptVerdict verdict = Follow("settings-lost", PowerCut.SettingsLost, stream, out string report);
            Assert.True(verdict.Outcome == Outcome.NotExercised && report.Contains("held 'this never comes about'", StringComparison.Ordinal), report);
        }
    }

    private static ScriptVerdict Follow(string name, PowerCut kind, uint stream, out string report)
    {
        ExplorationFile file = ShippedExplorations.Named(name);
        List<int> way = Way(file.Core, kind, stream);
        Assert.Contains(way, letter => file.Core.Alphabet.Letters[letter].Cut == kind);
        var result = new ExplorationResult(ExplorationOutcome.Violated, 1, 1, way.Count, (int)CoreProperty.OutputsFollow, false, way, 0);
        using var folder = new TempFolder();
        string script = ViolationScript.Path(file, result, folder.Root);
        ViolationScript.Write(file, result, script);
        ScriptVerdict verdict = Replays.Verdict(script, out report);
        report += File.ReadAllText(script);
        return verdict;
    }

    /// <summary>Steps at random, a restart every dozen, the last one without: what the model shows then is what the bench must show.</summary>
    private static List<int> Way(CoreSetup core, PowerCut kind, uint stream)
    {
        var dice = new PCG(stream, Seed);
        var model = new CoreModel(core);
        var state = new byte[model.StateLength];
        model.WriteFirst(state);
        var way = new List<int>();
        int[] quiet = [.. Enumerable.Range(0, core.Alphabet.Letters.Count).Where(letter => core.Alphabet.Letters[letter].Cut == PowerCut.None)];
        int[] cuts = [.. Enumerable.Range(0, core.Alphabet.Letters.Count).Where(letter => core.Alphabet.Letters[letter].Cut == kind)];
        while (way.Count < Steps)
        {
            // A torn save needs one that is due; it is tried until there is.
            bool cut = way.Count > 8 && way.Count < Steps - 4 && dice.Next(8u) == 0;
            int letter = cut ? cuts[dice.Next((uint)cuts.Length)] : quiet[dice.Next((uint)quiet.Length)];
            if (model.Move(state, letter) == IExploredModel.NoSuchMove)
                continue;
            model.Write(state);
            way.Add(letter);
        }

        return way;
    }
}
