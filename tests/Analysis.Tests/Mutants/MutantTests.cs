using System;
using System.Collections.Generic;
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
/// Deliberate faults in copies of the core: exploration and lockstep together find all of them. The table of which finds which is
/// kept current; LUBEBENCH_WRITE_MUTANTS=1 writes it anew.
/// </summary>
public sealed class MutantTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "tests", "Analysis.Tests", "Mutants");

    [Fact]
    public void There_is_one_for_each_alarm_and_each_property()
    {
        Assert.True(MutantList.All.Count >= 30);
        Assert.Equal(MutantList.All.Count, MutantList.All.Select(mutant => mutant.Name).Distinct().Count());
        IEnumerable<string> aims = Enumerable.Range(0, AlarmTable.Count).Select(index => AlarmTable.NameOf((AlarmId)index)).Concat(CoreProperties.Names);
        Assert.Empty(aims.Except(MutantList.All.Select(mutant => mutant.Aim)));
        Assert.Empty(MutantList.All.Select(mutant => mutant.Aim).Except(aims));
    }

    [Fact]
    public void Each_is_found_by_exploration_or_lockstep_and_each_property_finds_one()
    {
        var compiler = new MutatedCore();
        Assert.All(MutantList.All, mutant => Assert.Equal(1, compiler.Places(mutant)));
        string files = string.Join('\n', Directory.GetFiles(Path.Combine(Folder, "explorations"), "*.exploration.yaml").Order(StringComparer.Ordinal));
        Assert.Equal("", Try(compiler.Build(null), files));
        var found = new string[MutantList.All.Count];
        Parallel.For(0, found.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, index => found[index] = Try(compiler.Build(MutantList.All[index]), files));
        string table = Table(found);
        string path = Path.Combine(Folder, "FOUND.md");
        if (Environment.GetEnvironmentVariable("LUBEBENCH_WRITE_MUTANTS") == "1")
            File.WriteAllText(path, table);
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), table);
        Assert.DoesNotContain("", found);
        Assert.All(CoreProperties.Names, name => Assert.Contains(found, one => one.Split(',').Contains(name)));
    }

    private static string Try(byte[] core, string files)
    {
        var world = new MutantWorld(core);
        try
        {
            return world.Call(typeof(MutantTrial), nameof(MutantTrial.Explore), files);
        }
        finally
        {
            world.Unload();
        }
    }

    private static string Table(IReadOnlyList<string> found)
    {
        var text = new StringBuilder("# Deliberate faults and what finds them\n\nWritten by a test from `MutantList.cs`, which was there first.\n\n| fault | aimed at | found by |\n|---|---|---|\n");
        for (int index = 0; index < found.Count; index++)
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"| {MutantList.All[index].Name} | {MutantList.All[index].Aim} | {found[index].Replace(",", ", ", StringComparison.Ordinal)} |\n");
        text.Append("\n| found by | faults |\n|---|---|\n");
        foreach (string name in found.SelectMany(one => one.Split(',')).Where(name => name.Length > 0).Distinct().Order(StringComparer.Ordinal))
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"| {name} | {found.Count(one => one.Split(',').Contains(name))} |\n");
        return text.ToString();
    }
}
