using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using LubeController.Files.Quantities;
using LubeController.Plant.Faults;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.Tests.Schemas;

/// <summary>Writes what the schema of scripts says of faults from the registry; the rest of the schema is written by hand.</summary>
internal static class FaultSchema
{
    private const string WithLine = "          \"with\": {";
    private const string FirstLine = "    \"fault\": {";
    private const string Number = "[+-]?[0-9.]+([eE][+-]?[0-9]+)?";

    private static readonly JsonSerializerOptions Compact = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A schema with its parts on faults written anew.</summary>
    public static string Into(string schema)
    {
        var lines = new List<string>();
        foreach (string line in schema.ReplaceLineEndings("\n").Split('\n'))
        {
            if (line.StartsWith(FirstLine, StringComparison.Ordinal))
                break;
            lines.Add(line.StartsWith(WithLine, StringComparison.Ordinal) ? With() : line);
        }

        lines.Add(FirstLine + " \"oneOf\": [");
        lines.AddRange(Listed(BenchFaults.All.Select(Name)));
        lines.Add("    ] },");
        lines.Add("    \"fault-numbers\": { \"allOf\": [");
        lines.AddRange(Listed(Rules()));
        lines.AddRange(["    ] }", "  }", "}", ""]);
        return string.Join('\n', lines);
    }

    private static IEnumerable<string> Listed(IEnumerable<JsonNode> nodes)
    {
        string[] texts = [.. nodes.Select(node => "      " + node.ToJsonString(Compact))];
        return texts.Select((text, index) => index < texts.Length - 1 ? text + "," : text);
    }

    private static JsonObject Name(Fault fault) => new()
    {
        ["const"] = fault.Name,
        ["description"] = $"{fault.Effect} Noticed: {fault.Noticed}{string.Concat(fault.Parameters.Select((parameter, index) => $" {(index == 0 ? "Magnitude" : "With " + parameter.Name)}: {parameter.Meaning}, {BenchFaults.RangeOf(parameter)}."))}",
    };

    private static string With()
    {
        var own = new JsonObject();
        foreach (FaultParameter second in BenchFaults.All.Where(fault => fault.Second != null).Select(fault => fault.Second!))
            own[second.Name] = new JsonObject { ["type"] = Type(BenchFaults.FamilyOf(second)), ["pattern"] = Pattern(BenchFaults.FamilyOf(second)), ["description"] = $"{second.Meaning}, {BenchFaults.RangeOf(second)}" };
        var with = new JsonObject { ["type"] = "object", ["description"] = "Second number of a fault.", ["additionalProperties"] = false, ["properties"] = own };
        return $"          \"with\": {with.ToJsonString(Compact)},";
    }

    private static IEnumerable<JsonNode> Rules()
    {
        yield return Never("part", fault => !fault.Part.IsNamed);
        yield return Never("magnitude", fault => fault.Parameter == null);
        yield return Never("with", fault => fault.Second == null);
        yield return Never("over", fault => !fault.Gradual);
        foreach (IGrouping<UnitFamily, Fault> group in BenchFaults.All.Where(fault => fault.Parameter != null).GroupBy(fault => BenchFaults.FamilyOf(fault.Parameter!)))
            yield return Rule(group, "magnitude", Magnitude(group.Key));
    }

    private static JsonObject Never(string key, Func<Fault, bool> which) => Rule(BenchFaults.All.Where(which), key, JsonValue.Create(false));

    private static JsonObject Rule(IEnumerable<Fault> faults, string key, JsonNode then) => new()
    {
        ["if"] = new JsonObject
        {
            ["required"] = new JsonArray("fault"),
            ["properties"] = new JsonObject { ["fault"] = new JsonObject { ["enum"] = new JsonArray([.. faults.Select(fault => (JsonNode)fault.Name)]) } },
        },
        ["then"] = new JsonObject { ["properties"] = new JsonObject { [key] = then } },
    };

    /// <summary>A quantity of the family, or a range of two; a number without unit only where the family allows it.</summary>
    private static JsonObject Magnitude(UnitFamily family)
    {
        JsonArray Types(params string[] more) => new([.. (family.Has("1") ? (string[])["string", "number"] : ["string"]).Concat(more).Select(type => (JsonNode)type)]);
        JsonObject End() => new() { ["type"] = Types(), ["pattern"] = Pattern(family) };
        return new JsonObject
        {
            ["type"] = Types("object"),
            ["pattern"] = Pattern(family),
            ["properties"] = new JsonObject { ["from"] = End(), ["to"] = End() },
        };
    }

    private static JsonNode Type(UnitFamily family) => family.Has("1") ? new JsonArray("string", "number") : JsonValue.Create("string");

    private static string Pattern(UnitFamily family) => $"^{Number} ?({string.Join('|', family.Units)}){(family.Has("1") ? "?" : "")}$";
}
