using System;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using LubeController.Analysis.Exploration;
using LubeController.Files.Reading;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Cli.Tests;

/// <summary>The section on explorations of the page on scripts, against what the reader takes and the search judges.</summary>
public sealed partial class ExplorationPageTests
{
    [Fact]
    public void Every_field_of_an_exploration_is_told()
    {
        // What every file may be based on is told once for all of them.
        string[] told = [.. Rows("field").SelectMany(cells => Names(cells[0]))];
        Assert.Equal(ExplorationReader.Keys.Keys.Where(key => key != Inheritance.Key).Order(), told.Order());
    }

    [Fact]
    public void Every_input_that_can_vary_is_told()
    {
        string inputs = Rows("field").Single(cells => cells[0] == "`inputs`")[1];
        string[] told = [.. Names(inputs).Select(name => name.StartsWith('-') ? "switch" + name : name)];
        Assert.Equal(ExplorationReader.InputKeys.Keys.Where(key => key is not ("switch-2" or "switch-3")).Order(), told.Order());
    }

    [Fact]
    public void Every_property_is_told_with_what_it_says() =>
        Assert.Equal(
            CoreProperties.Names.Zip(CoreProperties.Meanings, (name, meaning) => $"`{name}`: {meaning}"),
            Rows("property").Select(cells => $"{cells[0]}: {cells[1]}"));

    private static string[][] Rows(string firstColumn)
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "hil-scripts", "README.md")).ReplaceLineEndings("\n");
        string section = page[page.IndexOf("\n## Explorations\n", StringComparison.Ordinal)..];
        int table = section.IndexOf($"| {firstColumn} | ", StringComparison.Ordinal);
        Assert.True(table >= 0, $"no table begins with the column '{firstColumn}'");
        return
        [
            .. section[table..].Split('\n').TakeWhile(line => line.StartsWith('|')).Skip(2)
                .Select(line => line.Trim('|').Split('|').Select(cell => cell.Trim()).ToArray()),
        ];
    }

    private static string[] Names(string cell) => [.. Name().Matches(cell).Select(name => name.Groups["name"].Value)];

    [GeneratedRegex("`(?<name>[^`]+)`")]
    private static partial Regex Name();
}
