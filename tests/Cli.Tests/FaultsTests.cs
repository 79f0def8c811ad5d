using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using LubeController.Plant.Line;
using LubeController.Scripts.Steps;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Cli.Tests;

public sealed class FaultsTests
{
    private static string[] Names => [.. BenchFaults.All.Select(fault => fault.Name)];

    [Fact]
    public void Every_fault_is_listed_with_what_changes_is_noticed_and_heals()
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("faults"));
        Assert.Equal(Names, session.OutputLines.Where(line => line[0] != ' ').Select(line => line.Split(':')[0]));
        Assert.All(BenchFaults.All, fault => Assert.Contains($"  noticed    {fault.Noticed}\n", session.Output, StringComparison.Ordinal));
        Assert.Contains("  magnitude  delivery that remains at a stated pressure and reference viscosity, 0 % to 100 %, 50 % if not written; may grow from 100 %\n", session.Output, StringComparison.Ordinal);
        Assert.Contains("  on-time    mean time for which it is whole, ", session.Output, StringComparison.Ordinal);
        Assert.Equal("", session.Errors);
    }

    [Fact]
    public void Json_holds_the_registry_with_units()
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("faults", "--format", "json"));
        using var json = JsonDocument.Parse(session.Output);
        JsonElement[] faults = [.. json.RootElement.EnumerateArray()];
        Assert.Equal(Names, faults.Select(fault => fault.GetProperty("name").GetString()));
        JsonElement leak = faults.Single(fault => fault.GetProperty("name").GetString() == LineFaults.Leak.Name).GetProperty("parameters")[0];
        Assert.Equal(("cm3/min", 60.0, 0.0, 600_000.0), (leak.GetProperty("unit").GetString(), leak.GetProperty("default").GetDouble(), leak.GetProperty("minimum").GetDouble(), leak.GetProperty("maximum").GetDouble()));
        Assert.Equal(BenchFaults.All.Where(fault => fault.Gradual).Select(fault => fault.Name), faults.Where(fault => fault.GetProperty("gradual").GetBoolean()).Select(fault => fault.GetProperty("name").GetString()));
    }

    [Fact]
    public void Csv_has_a_cell_for_each_column_in_every_line()
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("faults", "--format", "csv", "--plant", session.At("salt.plant.yaml")));
        Assert.All(session.OutputLines, line => Assert.Equal(24, Cells(line)));
        Assert.StartsWith("name,part,place,manner,magnitude-name,", session.OutputLines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void With_a_plant_only_faults_of_its_parts_are_listed_with_their_names()
    {
        using var session = new Session();
        string path = session.At("salt.plant.yaml");
        Assert.Equal(0, session.Run("faults", "--plant", path));
        Assert.Contains("shaft-switch-lost", session.Output, StringComparison.Ordinal);
        Assert.Contains("  parts      low, empty\n", session.Output, StringComparison.Ordinal);
        Assert.Contains("outlet-blocked: the outlet, blocked\n  parts      ", session.Output, StringComparison.Ordinal);

        string whole = File.ReadAllText(path);
        session.Folder.Write("no-shaft.plant.yaml", whole[..whole.IndexOf("shaft:", StringComparison.Ordinal)]);
        Assert.Equal(0, session.Run("faults", "--plant", session.At("no-shaft.plant.yaml")));
        Assert.DoesNotContain("shaft-switch-lost", session.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--format xml", "--format is 'xml': give one of text, csv, json, markdown.")]
    [InlineData("--plant nowhere.yaml", "there is no such file")]
    [InlineData("more", "'more'")]
    public void What_cannot_be_listed_is_refused(string arguments, string complaint)
    {
        using var session = new Session();
        Assert.Equal(2, session.Run(["faults", .. arguments.Split(' ')]));
        Assert.Equal("", session.Output);
        Assert.Contains(complaint, session.Errors, StringComparison.Ordinal);
    }

    [Fact]
    [Trait("Renews", "pages")]
    public void The_table_of_the_page_on_scripts_is_the_list_of_faults()
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("faults", "--format", "markdown"));
        string heading = session.OutputLines[0];
        MadePage.Check("hil-scripts/README.md", page =>
        {
            Assert.Equal("\n## Faults\n", page[page.LastIndexOf("\n## ", page.IndexOf(heading, StringComparison.Ordinal), StringComparison.Ordinal)..][..11]);
            return MadePage.Between(page, heading + "\n", "\n## ", session.Output[(heading.Length + 1)..]);
        });
    }

    private static int Cells(string line)
    {
        bool quoted = false;
        return 1 + line.Count(letter =>
        {
            quoted ^= letter == '"';
            return letter == ',' && !quoted;
        });
    }
}
