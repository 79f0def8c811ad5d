using System.Linq;
using System.Text.Json;
using System.Text.Json.Nodes;
using LubeController.Core;
using LubeController.Files.Quantities;
using LubeController.Files.SettingsFiles;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Scripts.Tests.Schemas;

/// <summary>Writes the schema of settings files from the core's own table of settings.</summary>
internal static class SettingsSchema
{
    private const string Number = "[+-]?[0-9.]+([eE][+-]?[0-9]+)?";

    public static string Text()
    {
        var properties = new JsonObject
        {
            ["title"] = Described(new JsonObject { ["type"] = "string" }, "What these settings are for."),
            ["based-on"] = Described(new JsonObject { ["type"] = "string" }, "Another settings file, relative to this one, whose fields this one overrides."),
            ["rest-rule"] = Rule(),
        };
        for (int field = 0; field < SettingField.Count; field++)
            properties[SettingTable.Spec(field).Name] = Setting(SettingTable.Spec(field));
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "Settings file of lubebench",
            ["description"] = "The controller's settings. What is not written stays at its preset.",
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["properties"] = properties,
        };
        return schema.ToJsonString(new JsonSerializerOptions { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }) + "\n";
    }

    private static JsonObject Rule()
    {
        var own = new JsonObject();
        foreach (RestRuleKind kind in RestRules.All)
        {
            IRestRule rule = kind.Make();
            for (int index = 0; index < rule.SettingCount; index++)
                own[rule.Setting(index).Name] = Setting(rule.Setting(index));
        }

        return Described(
            new JsonObject
            {
                ["type"] = "object",
                ["additionalProperties"] = false,
                ["required"] = new JsonArray("name"),
                ["properties"] = new JsonObject
                {
                    ["name"] = new JsonObject { ["enum"] = new JsonArray(RestRules.All.Select(kind => (JsonNode)kind.Name).ToArray()) },
                    ["settings"] = new JsonObject { ["type"] = "object", ["additionalProperties"] = false, ["properties"] = own },
                },
            },
            "A user's own rule that ends the rest, with settings of its own; needs 'rest-by: rule'.");
    }

    private static JsonObject Setting(SettingSpec spec)
    {
        string range = $"{spec.Meaning} From {SettingText.Write(spec, spec.Minimum)} to {SettingText.Write(spec, spec.Maximum)}; {SettingText.Write(spec, spec.Preset)} if not written.";
        switch (spec.Unit)
        {
            case SettingUnit.Flag:
                return Described(new JsonObject { ["enum"] = new JsonArray("yes", "no") }, $"{spec.Meaning} {SettingText.Write(spec, spec.Preset)} if not written.");
            case SettingUnit.Choice:
                return Described(new JsonObject { ["enum"] = new JsonArray(spec.Choices.Select(choice => (JsonNode)choice).ToArray()) }, $"{spec.Meaning} {SettingText.Write(spec, spec.Preset)} if not written.");
            case SettingUnit.Count:
                return Described(new JsonObject { ["type"] = "integer", ["minimum"] = spec.Minimum, ["maximum"] = spec.Maximum }, range);
            default:
                UnitFamily family = SettingText.UnitOf(spec.Unit).Family;
                string units = string.Join('|', family.Units);
                return Described(new JsonObject { ["type"] = "string", ["pattern"] = $"^{Number} ?({units})$" }, range);
        }
    }

    private static JsonObject Described(JsonObject schema, string description)
    {
        schema["description"] = description;
        return schema;
    }
}
