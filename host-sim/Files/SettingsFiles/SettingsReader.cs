using System.Collections.Generic;
using System.Linq;
using LubeController.Core;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;

namespace LubeController.Files.SettingsFiles;

/// <summary>
/// Reads a settings file: one field for each setting of the core, with units, beside the chosen rest rule. What is not
/// written stays at its preset. The whole is judged by the core's own check, whose refusals are told by file and line.
/// </summary>
public static class SettingsReader
{
    /// <summary>The field that chooses a rest rule.</summary>
    public const string RuleKey = "rest-rule";

    /// <summary>Fields of the chosen rest rule.</summary>
    public static KeySet RuleKeys { get; } = new("a rest rule", "name", "settings");

    /// <summary>Reads a settings file, or returns null where a problem was added.</summary>
    /// <param name="path">Path as the program may open it.</param>
    /// <param name="rules">The rest rules that are compiled in.</param>
    /// <param name="problems">Takes what is wrong.</param>
    /// <param name="judged">Whether the whole is judged by the core's own check; if not, each value must still be one that can be written.</param>
    public static ControlSettings? Read(string path, IReadOnlyList<RestRuleKind> rules, ProblemList problems, bool judged = true)
    {
        int before = problems.Count;
        MapNode? top = Inheritance.Read(path, problems);
        if (top == null || FileSort.IsOther(top, FileKeys.Settings, problems))
            return null;
        var fields = new MapReader(top, FileKeys.Settings, problems);
        fields.Text("title");
        var settings = new Settings();
        for (int field = 0; field < SettingField.Count; field++)
        {
            SettingSpec spec = SettingTable.Spec(field);
            settings[field] = SettingText.Read(fields, spec.Name, spec) ?? settings[field];
        }

        ChosenRule? rule = ReadRule(fields, rules);
        if (judged && problems.Count == before)
            Judge(fields, settings, rule);
        return problems.Count == before ? new ControlSettings(settings, rule) : null;
    }

    private static void Judge(MapReader fields, Settings settings, ChosenRule? rule)
    {
        if (rule != null && settings.RestMode != RestMode.Rule)
            fields.Problems.Add(fields.Map[RuleKey]!, "a rest rule is chosen, but 'rest-by' is not 'rule', so it would never be asked", "write 'rest-by: rule', or delete the rest rule");
        var check = new SettingsCheck();
        check.Accepts(settings, rule != null);
        for (int index = 0; index < check.Count; index++)
        {
            SettingsRefusal refusal = check[index];
            SettingSpec spec = SettingTable.Spec(refusal.Field);
            YamlNode? written = fields.Map[spec.Name];
            string value = written?.Shown ?? SettingText.Write(spec, refusal.Value) + " (preset)";
            fields.Problems.Add(new Problem(written?.Place ?? fields.Map.Place, spec.Name, value, refusal.Reason, Remedy(spec, refusal)));
        }
    }

    private static string Remedy(SettingSpec spec, SettingsRefusal refusal)
    {
        string low = SettingText.Write(spec, refusal.Minimum);
        string high = SettingText.Write(spec, refusal.Maximum);
        if (refusal.Minimum > refusal.Maximum)
            return "no value fits beside the other settings: change those";
        return spec.Unit == SettingUnit.Choice ? $"write one of: {string.Join(", ", spec.Choices.Skip(refusal.Minimum).Take(refusal.Maximum - refusal.Minimum + 1))}"
            : low == high ? $"beside the other settings only '{low}' is accepted"
            : $"beside the other settings a value from {low} to {high} is accepted";
    }

    private static ChosenRule? ReadRule(MapReader fields, IReadOnlyList<RestRuleKind> rules)
    {
        if (fields.Group(RuleKey, RuleKeys) is not { } group)
            return null;
        if (!group.Has("name"))
            group.Missing("name", $"known: {string.Join(", ", rules.Select(rule => rule.Name))}");
        if (group.Choice("name", rules.Select(rule => rule.Name).ToArray()) is not { } chosen)
            return null;
        RestRuleKind kind = rules[chosen];
        IRestRule made = kind.Make();
        SettingSpec[] specs = Enumerable.Range(0, made.SettingCount).Select(made.Setting).ToArray();
        var keys = new KeySet($"the rest rule {kind.Name}", specs.Select(spec => spec.Name));
        MapReader? own = group.Group("settings", keys);
        int[] values = specs.Select(spec => (own == null ? null : SettingText.Read(own, spec.Name, spec)) ?? spec.Preset).ToArray();
        return new ChosenRule(kind, values);
    }
}
