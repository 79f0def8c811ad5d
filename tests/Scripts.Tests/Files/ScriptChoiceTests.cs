using System.IO;
using System.Linq;
using LubeController.Core;
using LubeController.Files.Reading;
using LubeController.Plant.Inputs;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Tests.Support;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Files;

/// <summary>What a script chooses for its whole run: what inputs make of their undefined zone, and who judges the settings.</summary>
public sealed class ScriptChoiceTests
{
    private static readonly string Hil = Path.Combine(Repository.Root, "hil-scripts");

    private static readonly string Head = $"""
        script: x
        plant: {Hil}/wiring/salt-works-brine-pump.wired.plant.yaml
        settings: {Hil}/plants/salt-works-brine-pump.settings.yaml
        duration: 1 h

        """;

    [Theory]
    [InlineData("low", UndefinedPolicy.Low)]
    [InlineData("high", UndefinedPolicy.High)]
    [InlineData("hold", UndefinedPolicy.Hold)]
    [InlineData("seeded", UndefinedPolicy.Seeded)]
    public void Undefined_inputs_of_sensors_and_wiring_are_resolved_as_the_script_says(string word, UndefinedPolicy policy)
    {
        BenchScript script = Read(Head + $"undefined-inputs: {word}\n")!;
        Assert.Equal([policy], script.Plant.Wiring!.Inputs.Select(input => input.Undefined).Distinct());
        Assert.Equal([policy], script.Plant.CycleSwitches.Select(cycle => cycle.Sensor!.Undefined).Distinct());
    }

    [Fact]
    public void Where_a_script_says_nothing_the_plant_file_decides()
    {
        BenchScript script = Read(Head.Replace("salt-works-brine-pump", "brick-press"))!;
        Assert.Equal([UndefinedPolicy.High, UndefinedPolicy.High, UndefinedPolicy.Hold], script.Plant.Wiring!.Inputs.Select(input => input.Undefined));
    }

    [Fact]
    public void Settings_that_the_board_is_to_refuse_reach_it_as_they_are()
    {
        using var folder = new TempFolder();
        BenchScript script = Read(folder, "settings-check: board\n")!;
        Assert.Equal((1_200_000, 900_000), (script.Settings.Values[SettingField.RestMs], script.Settings.Values[SettingField.OverdueMs]));
        Assert.False(new SettingsCheck().Accepts(script.Settings.Values, hasRule: false));
    }

    [Fact]
    public void Left_to_the_bench_the_same_settings_are_refused_when_they_are_read()
    {
        using var folder = new TempFolder();
        foreach (string rest in (string[])["", "settings-check: bench\n"])
            Assert.Equal("overdue-limit", Reads.Refusal(problems => Read(folder, rest, problems)).Field);
    }

    [Theory]
    [InlineData("settings-check: board\n", "settings-check", "the board accepts these settings, so that nothing is refused")]
    [InlineData("settings-check: nobody\n", "settings-check", "the word is not one of 2 known ones")]
    [InlineData("undefined-inputs: maybe\n", "undefined-inputs", "the word is not one of 4 known ones")]
    public void A_choice_without_a_meaning_is_refused(string rest, string field, string message)
    {
        Problem problem = Reads.Refusal(problems => Read(Head + rest, problems));
        Assert.Equal((field, message), (problem.Field, problem.Message));
        Assert.NotEqual("", problem.Remedy);
    }

    [Fact]
    public void A_plant_without_such_inputs_leaves_nothing_to_choose()
    {
        Problem problem = Reads.Refusal(problems => Read(Head.Replace("wiring/", "plants/").Replace(".wired", "") + "undefined-inputs: low\n", problems));
        Assert.Equal(("undefined-inputs", "no input of the plant has an undefined zone: it has neither a sensor nor a supervisory input by IEC 61131-2"), (problem.Field, problem.Message));
    }

    private static BenchScript? Read(TempFolder folder, string rest, ProblemList? problems = null)
    {
        folder.Write("refused.settings.yaml", $"based-on: {Hil}/plants/salt-works-brine-pump.settings.yaml\nrest: 20 min\noverdue-limit: 15 min\n");
        return Read(Head.Replace($"{Hil}/plants/salt-works-brine-pump.settings", folder.At("refused.settings")) + rest, problems);
    }

    private static BenchScript? Read(string text, ProblemList? problems = null)
    {
        using var folder = new TempFolder();
        string path = folder.Write("own.yaml", text);
        return problems == null ? Reads.Script(path) : new ScriptReader(SampleBench.Make(), RestRules.All).Read(path, problems);
    }
}
