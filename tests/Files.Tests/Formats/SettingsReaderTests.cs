using System.Linq;
using System.Text;
using LubeController.Core;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;
using LubeController.Files.Tests.Support;
using LubeController.RuleTemplate;
using LubeController.Scripts.ScriptFiles;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Files.Tests.Formats;

public sealed class SettingsReaderTests
{
    [Fact]
    public void Settings_are_read_in_the_cores_units_and_the_rest_stays_preset()
    {
        Settings settings = Read(Reads.Data("plain.settings.yaml")).Values;
        Assert.Equal(1_200_000, settings[SettingField.RestMs]);
        Assert.Equal(30_000, settings.OfSwitch(0, SettingField.SwitchTimeoutMs));
        Assert.Equal(180_000, settings[SettingField.PressureLimitMbar]);
        Assert.Equal(1, settings[SettingField.PressureTransmitterFitted]);
        Assert.Equal(SettingTable.Spec(SettingField.OverdueMs).Preset, settings[SettingField.OverdueMs]);
    }

    [Fact]
    public void Every_setting_of_the_core_can_be_written_at_its_least_its_greatest_and_its_preset()
    {
        using var folder = new TempFolder();
        for (int field = 0; field < SettingField.Count; field++)
        {
            SettingSpec spec = SettingTable.Spec(field);
            foreach (int value in new[] { spec.Minimum, spec.Maximum, spec.Preset })
            {
                string path = folder.Write("one.settings.yaml", $"{spec.Name}: {SettingText.Write(spec, value)}\n");
                var problems = new ProblemList();
                SettingsReader.Read(path, RestRules.All, problems);

                // Other settings may refuse the value beside theirs, but it must have been understood.
                Assert.DoesNotContain(problems.All, problem => problem.Message.Contains("expected") || problem.Message.Contains("outside") || problem.Message.Contains("finer"));
            }
        }
    }

    [Fact]
    public void Every_setting_at_its_preset_is_the_settings_themselves()
    {
        using var folder = new TempFolder();
        var text = new StringBuilder();
        for (int field = 0; field < SettingField.Count; field++)
            text.AppendLine($"{SettingTable.Spec(field).Name}: {SettingText.Write(SettingTable.Spec(field), SettingTable.Spec(field).Preset)}");
        Settings read = Read(folder.Write("all.settings.yaml", text.ToString())).Values;
        var preset = new Settings();
        Assert.Equal(Enumerable.Range(0, SettingField.Count).Select(field => preset[field]), Enumerable.Range(0, SettingField.Count).Select(field => read[field]));
    }

    [Fact]
    public void A_rest_rule_comes_with_settings_of_its_own()
    {
        ChosenRule rule = Read(Reads.Data("rule.settings.yaml")).Rule!;
        Assert.Equal("warm-rest", rule.Kind.Name);
        Assert.Equal([400, 1_500_000, 150], rule.Values);
        IRestRule made = Assert.IsType<WarmRestRule>(rule.Make());
        Assert.NotSame(made, rule.Make());
        made.Begin();
        Assert.Equal(1_500_000, made.RemainingMs(new Inputs { TemperatureDeciC = 400 }));
        Assert.Equal(1_000_000, made.RemainingMs(new Inputs { TemperatureDeciC = 401 }));
    }

    [Theory]
    [InlineData("rest: 20", "rest", "the unit is missing: a time is expected")]
    [InlineData("rest: 25 d", "rest", "a time outside the range of this setting")]
    [InlineData("rest: 1500.5 ms", "rest", "finer than the controller keeps it, in steps of 1 ms")]
    [InlineData("rest-by: moon", "rest-by", "the word is not one of 4 known ones")]
    [InlineData("rest-by: rule\nrest-fallback: 1 h\noverdue-limit: 2 d", "rest-by", "no rest rule is built in")]
    [InlineData("shaft-switch: on", "shaft-switch", "'yes' or 'no' is expected")]
    [InlineData("dose-edges: 3 cm3", "dose-edges", "a whole number without unit is expected")]
    [InlineData("dose-edges: 0", "dose-edges", "the number is outside its range")]
    [InlineData("overdue-limit: 10 min", "overdue-limit", "must be longer than the longest rest by time")]
    [InlineData("dose-ending-switch: 2", "dose-ending-switch", "the dose-ending switch is not fitted")]
    [InlineData("rest-rule: {name: cold-rest}", "rest-rule.name", "the word is not one of 1 known ones")]
    [InlineData("rest-rule: {name: warm-rest, settings: {warm: 1 degC}}", "rest-rule.settings.warm", "the rest rule warm-rest has no field 'warm'")]
    [InlineData("rest-rule: {settings: {}}", "rest-rule.name", "a rest rule needs the field 'name'")]
    [InlineData("rest-rule: {name: warm-rest}", "rest-rule", "a rest rule is chosen, but 'rest-by' is not 'rule', so it would never be asked")]
    [InlineData("switch-1-debouce: 20 ms", "switch-1-debouce", "a settings file has no field 'switch-1-debouce'")]
    public void What_is_wrong_is_told_by_field(string line, string field, string message)
    {
        using var folder = new TempFolder();
        string path = folder.Write("wrong.settings.yaml", $"title: wrong\n{line}\n");
        Problem problem = Reads.Refusal(problems => SettingsReader.Read(path, RestRules.All, problems));
        Assert.Equal((field, message, 2), (problem.Field, problem.Message, problem.Place.Line));
        Assert.NotEqual("", problem.Remedy);
    }

    [Fact]
    public void A_refusal_beside_a_preset_says_so()
    {
        using var folder = new TempFolder();
        string path = folder.Write("long.settings.yaml", "rest: 3 h\n");
        Problem problem = Reads.Refusal(problems => SettingsReader.Read(path, RestRules.All, problems));
        Assert.Equal(("overdue-limit", "2 h (preset)"), (problem.Field, problem.Value));
        Assert.Equal("beside the other settings a value from 10800001 ms to 24 d is accepted", problem.Remedy);
    }

    private static ControlSettings Read(string path)
    {
        var problems = new ProblemList();
        ControlSettings? settings = SettingsReader.Read(path, RestRules.All, problems);
        Assert.Equal("", string.Join('\n', problems.All.Select(problem => problem.ToString())));
        return settings!;
    }
}
