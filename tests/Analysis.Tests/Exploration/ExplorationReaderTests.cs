using System.IO;
using System.Linq;
using System.Text.Json;
using LubeController.Analysis.Exploration;
using LubeController.Files.Reading;
using LubeController.Scripts.ScriptFiles;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Analysis.Tests.Exploration;

/// <summary>Exploration files: what is read, and what is told of bad ones.</summary>
public sealed class ExplorationReaderTests
{
    private const string Settings = "title: t\n";

    [Fact]
    public void Every_combination_is_a_letter_and_the_first_is_quiet()
    {
        ExplorationFile file = Read("""
            exploration: e
            settings: s.yaml
            step: 250 ms
            inputs: { switch-1: [off, on], machine-running: [on, off], pressure: [20 bar, 300 bar, -10 bar] }
            buttons: [reset, start]
            power-cuts: yes
            torn-saves: yes
            """)!;
        Alphabet alphabet = file.Core.Alphabet;
        Assert.Equal(250, file.Core.StepMs);
        Assert.Equal(2 * 2 * 3 * 3 * 3, alphabet.Letters.Count);
        Assert.Equal(alphabet.Letters.Count, alphabet.Letters.Select(letter => (letter.Inputs.Levels, letter.Inputs.PressureMbar, letter.Cut)).Distinct().Count());
        Assert.Equal((false, true, 20_000), (alphabet.Quiet.CycleSwitch(0), alphabet.Quiet.MachineRunning, alphabet.Quiet.PressureMbar));
        Assert.Equal([20_000, 300_000, -10_000], alphabet.Dimensions[2].Values);
    }

    [Fact]
    public void Restarts_with_an_alarm_are_letters_too()
    {
        ExplorationFile file = Read("""
            exploration: e
            settings: s.yaml
            step: 1 s
            inputs: { switch-1: [off] }
            restarts-with: [settings-invalid, logic-fault]
            """)!;
        Assert.Equal([PowerCut.None, PowerCut.SettingsLost, PowerCut.LoopFault], file.Core.Alphabet.Letters.Select(letter => letter.Cut));
    }

    [Theory]
    [InlineData("inputs: { switch-1: [off, maybe] }", "2:", "a level is off or on")]
    [InlineData("inputs: { pressure: [20] }", "2:", "unit")]
    [InlineData("inputs: { level: [off] }", "2:", "level")]
    [InlineData("inputs: { switch-1: [off, off] }", "2:", "twice")]
    [InlineData("inputs: { switch-1: [off] }\nbuttons: [jump]", "3:", "no such button")]
    [InlineData("inputs: { switch-1: [off] }\ntorn-saves: yes", "3:", "power-cuts: yes")]
    [InlineData("inputs: { switch-1: [off] }\nrestarts-with: [logic-fault, divider-stalled]", "3:", "known: logic-fault, storage-corrupt, settings-invalid")]
    [InlineData("inputs: { shaft-pulses: [0,1,2,3,4,5,6,7], pressure: [1 bar,2 bar,3 bar,4 bar,5 bar,6 bar,7 bar,8 bar], supply: [1 V,2 V,3 V,4 V,5 V,6 V,7 V,8 V], temperature: [1 K,2 K,3 K,4 K,5 K,6 K,7 K,8 K], switch-1: [off, on] }", "2:", "too many combinations")]
    public void A_bad_file_is_refused_with_place_and_remedy(string lines, string place, string message)
    {
        var problems = new ProblemList();
        using var folder = new TempFolder();
        folder.Write("s.yaml", Settings);
        string path = folder.Write("e.yaml", "exploration: e\n" + lines + "\nsettings: s.yaml\nstep: 1 s\n");
        Assert.Null(new ExplorationReader(RestRules.All).Read(path, problems));
        string told = string.Join('\n', problems.All);
        Assert.Contains("e.yaml:" + place[..2], told, System.StringComparison.Ordinal);
        Assert.Contains(message, told, System.StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_missing_is_named()
    {
        var problems = new ProblemList();
        using var folder = new TempFolder();
        Assert.Null(new ExplorationReader(RestRules.All).Read(folder.Write("e.yaml", "exploration: e\n"), problems));
        Assert.Equal(3, problems.Count);
    }

    [Fact]
    public void The_schema_knows_the_fields_that_the_reader_knows()
    {
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Root, "hil-scripts", "schema", "exploration.schema.json")));
        JsonElement fields = schema.RootElement.GetProperty("properties");
        Assert.Equal(ExplorationReader.Keys.Keys.Order(), fields.EnumerateObject().Select(field => field.Name).Order());
        Assert.Equal(ExplorationReader.InputKeys.Keys.Order(), fields.GetProperty("inputs").GetProperty("properties").EnumerateObject().Select(field => field.Name).Order());
    }

    private static ExplorationFile? Read(string text)
    {
        var problems = new ProblemList();
        using var folder = new TempFolder();
        folder.Write("s.yaml", Settings);
        ExplorationFile? file = new ExplorationReader(RestRules.All).Read(folder.Write("e.yaml", text), problems);
        Assert.True(file != null, string.Join('\n', problems.All));
        return file;
    }
}
