using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading.Tasks;
using LubeController.Analysis.Exploration;
using LubeController.Core;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Analysis.Tests.Mutants;

/// <summary>
/// Deliberate faults in copies of the core: exploration and lockstep together find all of them. FOUND.md says which finds which;
/// LUBEBENCH_WRITE_MUTANTS=1 tries every fault on everything, which takes several minutes, and writes it anew. Otherwise each
/// fault is tried where the page says that it is found soonest, and each property once where it is said to find one.
/// </summary>
public sealed class MutantTests
{
    private const string Lockstep = "lockstep";
    private const string LockstepCases = "2000";
    private const string Row = "| fault | aimed at | found by |";

    private static readonly string Folder = Path.Combine(Repository.Root, "tests", "Analysis.Tests", "Mutants");

    // The quickest first.
    private static readonly string[] Trials =
    [
        Lockstep,
        "rule", "often", "torn", "levels", "guards", "warnings", "switch", "tries", "pressure", "stop", "shaft", "two-switches", "restarts", "cuts", "empty", "volume",
    ];

    private static bool Writes => Environment.GetEnvironmentVariable("LUBEBENCH_WRITE_MUTANTS") == "1";

    private static string Page => Path.Combine(Folder, "FOUND.md");

    [Fact]
    public void There_is_one_for_each_alarm_and_each_property()
    {
        Assert.True(MutantList.All.Count >= 30);
        Assert.Equal(MutantList.All.Count, MutantList.All.Select(mutant => mutant.Name).Distinct().Count());
        IEnumerable<string> aims = Enumerable.Range(0, AlarmTable.Count).Select(index => AlarmTable.NameOf((AlarmId)index)).Concat(CoreProperties.Names);
        Assert.Empty(aims.Except(MutantList.All.Select(mutant => mutant.Aim)));
        Assert.Empty(MutantList.All.Select(mutant => mutant.Aim).Except(aims));
        var compiler = new MutatedCore();
        Assert.All(MutantList.All, mutant => Assert.Equal(1, compiler.Places(mutant)));
        Assert.Equal(Trials.Where(trial => trial != Lockstep).Order(StringComparer.Ordinal), Directory.GetFiles(Path.Combine(Folder, "explorations"), "*.exploration.yaml").Select(path => Path.GetFileName(path).Split('.')[0]).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_core_as_it_is_violates_nothing_in_any_trial() => Assert.Empty(Try(new MutatedCore().Build(null), Trials));

    [Fact]
    public void Each_is_found_and_each_property_finds_one()
    {
        if (Writes)
            File.WriteAllText(Page, Table(Tried(MutantList.All.Select(mutant => (mutant, Trials)))));
        Dictionary<string, (string Trial, string Finds)[]> page = Read();
        Assert.Equal(MutantList.All.Select(mutant => mutant.Name), page.Keys);
        Assert.All(page.Values, Assert.NotEmpty);
        Assert.Empty(CoreProperties.Names.Except(page.Values.SelectMany(found => found.SelectMany(one => one.Finds.Split(", ")))));

        // Where each is found soonest, and for each property one that it finds.
        var asked = new HashSet<(string Fault, string Trial)>(page.Select(row => (row.Key, row.Value[0].Trial)));
        foreach (string property in CoreProperties.Names)
        {
            if (!asked.Any(one => page[one.Fault].Any(found => found.Trial == one.Trial && found.Finds.Split(", ").Contains(property))))
                asked.Add(page.SelectMany(row => row.Value.Where(found => found.Finds.Split(", ").Contains(property)).Select(found => (row.Key, found.Trial))).First());
        }

        IReadOnlyList<(string, string)[]> tried = Tried(MutantList.All.Select(mutant => (mutant, asked.Where(one => one.Fault == mutant.Name).Select(one => one.Trial).ToArray())));
        for (int index = 0; index < tried.Count; index++)
            Assert.All(tried[index], found => Assert.Contains(found, page[MutantList.All[index].Name]));
        Assert.All(tried, Assert.NotEmpty);
    }

    private static IReadOnlyList<(string Trial, string Finds)[]> Tried(IEnumerable<(Mutant Mutant, string[] Trials)> asked)
    {
        var compiler = new MutatedCore();
        (Mutant Mutant, string[] Trials)[] all = [.. asked];
        var found = new (string, string)[all.Length][];
        Parallel.For(0, all.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, index =>
        {
            found[index] = [.. Try(compiler.Build(all[index].Mutant), all[index].Trials)];
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
        var text = new StringBuilder("# Deliberate faults and what finds them\n\nWritten by `MutantTests`; the faults in `MutantList.cs` were there first. `cuts: stall-is-alarmed` means: exploring\n`explorations/cuts.exploration.yaml` violates that property; `lockstep: difference`: core and specification\ndiffer in one of 2000 cases drawn at random.\n\n" + Row + "\n|---|---|---|\n");
        for (int index = 0; index < found.Count; index++)
            text.Append(CultureInfo.InvariantCulture, $"| {MutantList.All[index].Name} | {MutantList.All[index].Aim} | {string.Join("; ", found[index].Select(one => $"{one.Trial}: {one.Finds}"))} |\n");
        text.Append("\n| property | faults that it finds |\n|---|---|\n");
        foreach (string name in found.SelectMany(one => one.SelectMany(trial => trial.Finds.Split(", "))).Distinct().Order(StringComparer.Ordinal))
            text.Append(CultureInfo.InvariantCulture, $"| {name} | {found.Count(one => one.Any(trial => trial.Finds.Split(", ").Contains(name)))} |\n");
        return text.ToString();
    }

    private static Dictionary<string, (string Trial, string Finds)[]> Read() =>
        File.ReadAllLines(Page).SkipWhile(line => line != Row).Skip(2).TakeWhile(line => line.Length > 0).Select(line => line.Trim('|').Split('|')).ToDictionary(
            cells => cells[0].Trim(),
            cells => cells[2].Trim().Split("; ", StringSplitOptions.RemoveEmptyEntries).Select(one => (one.Split(": ")[0], one.Split(": ")[1])).ToArray(),
            StringComparer.Ordinal);
}
