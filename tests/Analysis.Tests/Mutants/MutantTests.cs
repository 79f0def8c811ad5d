using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading.Tasks;
using LubeController.Analysis.Exploration;
using LubeController.Analysis.Tests.Lockstep;
using LubeController.Core;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Analysis.Tests.Mutants;

/// <summary>
/// Deliberate faults in copies of the core: exploration and lockstep together find each of them, and each property alone finds one.
/// FOUND.md says which finds which; <c>tests/renew mutants</c> tries every fault on everything, which takes ten minutes, and writes it.
/// </summary>
[Trait("Run", "Long")]
public sealed class MutantTests
{
    private const string Lockstep = "lockstep";
    private const string LockstepCases = "4000";
    private const string Row = "| fault | aimed at | found by |";

    private static readonly string Folder = Path.Combine(Repository.Root, "tests", "Analysis.Tests", "Mutants");

    // The quickest first.
    private static readonly string[] Trials =
    [
        Lockstep,
        "rule", "often", "torn", "levels", "guards", "warnings", "stall", "pressure", "stop", "shaft", "tries", "two-switches", "empty", "cuts", "restarts", "volume", "switch",
    ];

    // For each property a fault that it finds, and where.
    private static readonly (string Property, string Fault, string Trial)[] Witnesses =
    [
        ("pump-off-under-interlock", "overpressure only informs", "guards"),
        ("pump-off-on-stop", "stop spares a dose", "stop"),
        ("relay-tells-failure", "stall is no failure", "stall"),
        ("failed-has-cause", "failed is kept without a cause", "torn"),
        ("outputs-follow", "stopped gives no warning", "stop"),
        ("stall-is-alarmed", "one retry more than set", "switch"),
        ("dose-comes-round", "lost shaft has no fallback", "shaft"),
        ("cause-is-alarmed", "warm counts as cold", "warnings"),
        ("alarm-survives-cut", "power-up clears latches", "torn"),
        ("reset-leaves-failed", "reset wants an acknowledgement first", "torn"),
        ("start-leaves-stopped", "start is refused while a failure stands", "stop"),
        ("no-start-by-reset", "reset starts a dose", "torn"),
        ("dose-ends", "failing alarm lets a new try go on", "tries"),
    ];

    private static string Page => Path.Combine(Folder, "FOUND.md");

    [Fact]
    public void There_is_one_for_each_alarm_and_each_property()
    {
        Assert.True(MutantList.All.Count >= 30);
        Assert.Equal(MutantList.All.Count, MutantList.All.Select(mutant => mutant.Name).Distinct().Count());
        IEnumerable<string> aims = Enumerable.Range(0, AlarmTable.Count).Select(index => AlarmTable.Spec((AlarmId)index).Name).Concat(CoreProperties.Names);
        Assert.Empty(aims.Except(MutantList.All.Select(mutant => mutant.Aim)));
        Assert.Empty(MutantList.All.Select(mutant => mutant.Aim).Except(aims));
        var compiler = new MutatedCore();
        Assert.All(MutantList.All, mutant => Assert.Equal(1, compiler.Places(mutant)));
        Assert.Equal(Trials.Where(trial => trial != Lockstep).Order(StringComparer.Ordinal), Directory.GetFiles(Path.Combine(Folder, "explorations"), "*.exploration.yaml").Select(path => Path.GetFileName(path).Split('.')[0]).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_core_as_it_is_violates_nothing_in_any_trial() => Assert.Empty(Try(new MutatedCore().Build(null), Trials));

    /// <summary>Each is tried on one thing after the other, until it is found.</summary>
    [Fact]
    public void Each_is_found()
    {
        IReadOnlyList<(string Trial, string Finds)[]> found = Tried(MutantList.All.Select(mutant => (mutant, Soonest(mutant))), all: false);
        Assert.Empty(MutantList.All.Where((_, index) => found[index].Length == 0).Select(mutant => mutant.Name));
    }

    [Fact]
    public void Each_property_alone_finds_one()
    {
        Assert.Empty(CoreProperties.Names.Except(Witnesses.Select(one => one.Property)));
        IReadOnlyList<(string Trial, string Finds)[]> found = Tried(Witnesses.Select(one => (MutantList.All.Single(mutant => mutant.Name == one.Fault), new[] { one.Trial })), all: true);
        Assert.All(Witnesses.Select((one, index) => (one.Property, Found: found[index])), one => Assert.Contains(one.Found, trial => trial.Finds.Split(", ").Contains(one.Property)));
    }

    [Fact]
    [Trait("Renews", "mutants")]
    public void The_table_holds_the_faults_of_the_list()
    {
        if (MadePage.Renews == "mutants")
            File.WriteAllText(Page, Table(Tried(MutantList.All.Select(mutant => (mutant, Trials)), all: true)));
        string[] faults = [.. File.ReadAllLines(Page).SkipWhile(line => line != Row).Skip(2).TakeWhile(line => line.Length > 0).Select(line => line.Trim('|').Split('|')[0].Trim())];
        Assert.True(MutantList.All.Select(mutant => mutant.Name).SequenceEqual(faults), "FOUND.md does not hold the faults of MutantList; renew it with 'tests/renew mutants'");
    }

    /// <summary>Lockstep last where the specification knows nothing of what the fault is aimed at.</summary>
    private static string[] Soonest(Mutant mutant) =>
        LockstepTests.LeftOut.Any(alarm => AlarmTable.Spec(alarm).Name == mutant.Aim) ? [.. Trials.Where(trial => trial != Lockstep), Lockstep] : Trials;

    private static IReadOnlyList<(string Trial, string Finds)[]> Tried(IEnumerable<(Mutant Mutant, string[] Trials)> asked, bool all)
    {
        var compiler = new MutatedCore();
        (Mutant Mutant, string[] Trials)[] each = [.. asked];
        var found = new (string, string)[each.Length][];
        Parallel.For(0, each.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, index =>
        {
            found[index] = [.. Try(compiler.Build(each[index].Mutant), each[index].Trials).Take(all ? int.MaxValue : 1)];
        });
        return found;
    }

    private static IEnumerable<(string Trial, string Finds)> Try(byte[] core, string[] trials)
    {
        var world = new MutantWorld(core);
        try
        {
            foreach (string trial in trials)
            {
                string finds = trial == Lockstep
                    ? world.Call(typeof(MutantTrial), nameof(MutantTrial.Lockstep), LockstepCases)
                    : world.Call(typeof(MutantTrial), nameof(MutantTrial.Explore), Path.Combine(Folder, "explorations", trial + ".exploration.yaml"));
                if (finds.Length > 0)
                    yield return (trial, finds.Replace(",", ", ", StringComparison.Ordinal));
            }
        }
        finally
        {
            world.Unload();
        }
    }

    private static string Table(IReadOnlyList<(string Trial, string Finds)[]> found)
    {
        var text = new StringBuilder("# Deliberate faults and what finds them\n\nWritten by `MutantTests`; the faults in `MutantList.cs` were there first. `cuts: stall-is-alarmed` means: exploring\n`explorations/cuts.exploration.yaml` violates that property; `lockstep: difference`: core and specification\ndiffer in one of 4000 cases drawn at random.\n\n" + Row + "\n|---|---|---|\n");
        for (int index = 0; index < found.Count; index++)
            text.Append(CultureInfo.InvariantCulture, $"| {MutantList.All[index].Name} | {MutantList.All[index].Aim} | {string.Join("; ", found[index].Select(one => $"{one.Trial}: {one.Finds}"))} |\n");
        text.Append("\n| property | faults that it finds |\n|---|---|\n");
        foreach (string name in found.SelectMany(one => one.SelectMany(trial => trial.Finds.Split(", "))).Distinct().Order(StringComparer.Ordinal))
            text.Append(CultureInfo.InvariantCulture, $"| {name} | {found.Count(one => one.Any(trial => trial.Finds.Split(", ").Contains(name)))} |\n");
        return text.ToString();
    }
}
