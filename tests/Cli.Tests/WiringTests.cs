using System;
using System.IO;
using System.Linq;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Cli.Tests;

public sealed class WiringTests
{
    private static readonly string Wired = Path.Combine(Repository.Root, "hil-scripts", "wiring", "salt-works-brine-pump.wired.plant.yaml");

    [Fact]
    public void The_matrix_is_printed_with_what_nobody_can_detect_and_the_cautions()
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("wiring", Wired));
        Assert.Equal("", session.Errors);
        Assert.StartsWith("Salt works, brine pump, wired: ", session.OutputLines[0], StringComparison.Ordinal);
        Assert.Contains("    lost, nobody can detect it: wire-open W3-warning; in health healthy on, warning off; in alarm healthy on, warning off; would be seen with: normally closed contact or end-of-line resistor or heartbeat", session.OutputLines);
        Assert.Equal("A simulated pass does not replace the test on the machine.", session.OutputLines[^1]);
    }

    [Fact]
    public void Csv_and_page_are_written_whole_and_the_same_each_time()
    {
        using var session = new Session();
        string csv = session.At("wiring.csv");
        string html = session.At("wiring.html");
        Assert.Equal(0, session.Run("wiring", Wired, "--csv", csv, "--html", html));
        string first = File.ReadAllText(csv);
        Assert.StartsWith("alarm,category,fault,part,", first, StringComparison.Ordinal);
        Assert.EndsWith("</html>\n", File.ReadAllText(html), StringComparison.Ordinal);
        Assert.Equal(0, session.Run("wiring", Wired, "--csv", csv));
        Assert.Equal(first, File.ReadAllText(csv));
        Assert.DoesNotContain(Directory.GetFiles(session.Folder.Root), path => path.EndsWith(".part", StringComparison.Ordinal));
    }

    [Fact]
    public void With_settings_alarms_out_of_reach_are_left_out()
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("wiring", Wired, "--settings", session.At("plain.settings.yaml")));
        Assert.DoesNotContain("rule-fault", session.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("line-not-vented", session.Output, StringComparison.Ordinal);
        Assert.Contains("divider-stalled", session.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("missing.plant.yaml", "", "PLANT 'missing.plant.yaml' is missing; looked for ")]
    [InlineData("salt.plant.yaml", "", "field 'wiring' is '': the plant has no wiring; add 'wiring' with supplies, wires, contacts and inputs")]
    [InlineData("plain.settings.yaml", "", "a plant file is expected here")]
    [InlineData("WIRED", "--settings salt.plant.yaml", "is expected here")]
    [InlineData("WIRED", "--settings nowhere.yaml", "--settings 'nowhere.yaml' is missing; looked for ")]
    [InlineData("WIRED", "--csv .", "--csv '.' is a folder; name a file")]
    [InlineData("WIRED", "--csv a --html a", "--csv and --html name the same file 'a'; give each its own")]
    [InlineData("salt.plant.yaml", "--csv salt.plant.yaml", "would be written over what is read; name another file")]
    [InlineData("WIRED", "--csv FILE/none/x.csv", "--csv: 'FILE/none/x.csv' cannot be written: ")]
    [InlineData("WIRED", "--html FILE/none/x.html", "; name a place where you may write")]
    [InlineData("WIRED", "--colour", "'lubebench wiring --help' lists what is known.")]
    public void Bad_input_exits_2_says_what_is_wrong_and_writes_nothing(string plant, string options, string complaint)
    {
        using var session = new Session();
        string[] before = Files(session);
        string file = session.At("plain.settings.yaml");
        string[] arguments = [.. options.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => word.Replace("FILE", file)).Select(word => File.Exists(session.At(word)) ? session.At(word) : word)];
        string path = plant == "WIRED" ? Wired : File.Exists(session.At(plant)) ? session.At(plant) : plant;
        Assert.Equal(2, session.Run(["wiring", path, .. arguments]));
        Assert.Contains(complaint.Replace("FILE", file), session.Errors, StringComparison.Ordinal);
        Assert.Equal("", session.Output);
        Assert.Equal(before, Files(session));
    }

    private static string[] Files(Session session) => [.. Directory.GetFiles(session.Folder.Root).Order(StringComparer.Ordinal)];
}
