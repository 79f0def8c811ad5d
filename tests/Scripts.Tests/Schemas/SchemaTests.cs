using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;
using LubeController.Files.Sorts;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Schemas;

public sealed class SchemaTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Schema");

    [Fact]
    [Trait("Renews", "pages")]
    public void The_settings_schema_is_that_of_the_cores_settings() => MadePage.Check("hil-scripts/schema/settings.schema.json", _ => SettingsSchema.Text());

    [Fact]
    [Trait("Renews", "pages")]
    public void What_the_script_schema_says_of_faults_is_what_the_registry_says()
    {
        MadePage.Check("hil-scripts/schema/script.schema.json", FaultSchema.Into);
        string schema = File.ReadAllText(Path.Combine(Repository.Root, "hil-scripts", "schema", "script.schema.json"));
        Assert.All(BenchFaults.All, fault => Assert.Contains($"\"const\":\"{fault.Name}\"", schema, StringComparison.Ordinal));
    }

    [Fact]
    public void The_script_schema_knows_the_fields_that_the_reader_knows() => AssertKeys("script.schema.json", ScriptKeys.ByPlace);

    [Fact]
    public void The_settings_schema_knows_the_fields_that_the_reader_knows() => AssertKeys(
        "settings.schema.json",
        new Dictionary<string, KeySet> { [""] = FileKeys.Settings, ["rest-rule"] = SettingsReader.RuleKeys });

    [Theory]
    [MemberData(nameof(Samples))]
    public void Every_sample_fits_its_schema(string file)
    {
        JsonElement sample = Convert(Path.Combine(AppContext.BaseDirectory, file));
        EvaluationResults results = Load(SchemaOf(file)).Evaluate(sample, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(results.IsValid, string.Join('\n', (results.Details ?? []).Where(detail => detail.Errors != null).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))));
    }

    [Theory]
    [InlineData("script.schema.json", "script: x\nstep: []\n")]
    [InlineData("script.schema.json", "duration: 5 bananas\n")]
    [InlineData("script.schema.json", "steps:\n  - at: 5 s\n    after: x\n")]
    [InlineData("script.schema.json", "expect:\n  - name: x\n    always: phase is rest\n    never: phase is dose\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: 5 s, fault: outlet-bloked, part: a}\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: 5 s, fault: outlet-blocked, part: a, magnitude: 5 %}\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: 5 s, fault: pump-off, part: a}\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: 5 s, fault: pump-worn, magnitude: 5 bar}\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: 5 s, fault: line-leak, magnitude: 5}\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: 5 s, fault: pump-off, over: 5 s}\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: 5 s, fault: pump-worn, magnitude: {from: 5 %}}\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: 5 s, fault: pump-worn, magnitude: {from: 5 %, to: 6 bar}}\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: 5 s, fault: pump-worn, magnitude: {from: 5 %, to: 6 %, spread: wide}}\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: {from: 5 s, to: 6 bar}, fault: pump-worn}\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: 5 s, fault: cycle-switch-chattering, part: a, with: {on-time: 2 s}}\n")]
    [InlineData("script.schema.json", "steps:\n  - {at: 5 s, fault: cycle-switch-wire-loose, part: a, with: {on-time: 2}}\n")]
    [InlineData("plant.schema.json", "reservoir:\n  capacity: 4 bar\n")]
    [InlineData("plant.schema.json", "pump:\n  kind: gear\n")]
    [InlineData("plant.schema.json", "lubricant:\n  kind: grease\n")]
    [InlineData("lubricant.schema.json", "kind: water\n")]
    [InlineData("lubricant.schema.json", "iso-viscosity-grade: 230\n")]
    [InlineData("lubricant.schema.json", "nlgi-grade: 7\n")]
    [InlineData("lubricant.schema.json", "yield-stress: 189 Pa\n")]
    [InlineData("lubricant.schema.json", "yield-stress:\n  value: 189 Pa\n  source: a book\n")]
    [InlineData("lubricant.schema.json", "consistency:\n  value: 4 Pa\n  source: a book\n  confidence: published\n")]
    [InlineData("settings.schema.json", "rest: 20\n")]
    [InlineData("settings.schema.json", "rest-by: moon\n")]
    public void What_the_reader_refuses_by_form_the_schema_refuses_too(string schema, string text)
    {
        var problems = new ProblemList();
        MapNode top = YamlTree.Parse("f.yaml", text, problems)!;
        Assert.False(Load(schema).Evaluate(Element(Json(top))).IsValid);
    }

    [Theory]
    [InlineData("{at: 5 s, fault: pump-worn, magnitude: 0.5}")]
    [InlineData("{at: 5 s, fault: pump-worn, magnitude: 50 %, over: 10 min}")]
    [InlineData("{at: {from: 5 min, to: 1 h, spread: log}, fault: pump-worn, magnitude: {from: 20 %, to: 60 %, spread: even}}")]
    [InlineData("{at: 5 s, fault: outlet-blocked, part: any}")]
    [InlineData("{at: 5 s, heal: outlet-blocked, part: any}")]
    [InlineData("{at: 5 s, fault: cycle-switch-wire-loose, part: a, magnitude: 50 ms, with: {on-time: 2 s}}")]
    [InlineData("{at: 5 s, press: reset}")]
    public void What_the_reader_accepts_of_faults_the_schema_accepts_too(string step)
    {
        var problems = new ProblemList();
        MapNode top = YamlTree.Parse("f.yaml", $"steps:\n  - {step}\n", problems)!;
        Assert.True(Load("script.schema.json").Evaluate(Element(Json(top))).IsValid);
    }

    public static TheoryData<string> Samples()
    {
        var data = new TheoryData<string>();
        foreach (string folder in (string[])["Data", "hil-scripts"])
        {
            string root = Path.Combine(AppContext.BaseDirectory, folder);
            if (!Directory.Exists(root))
                continue;
            foreach (string file in Directory.EnumerateFiles(root, "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
                data.Add(Path.GetRelativePath(AppContext.BaseDirectory, file));
        }

        return data;
    }

    private static string SchemaOf(string file) =>
        file.EndsWith(".plant.yaml", StringComparison.Ordinal) ? "plant.schema.json"
        : file.EndsWith(".lubricant.yaml", StringComparison.Ordinal) ? "lubricant.schema.json"
        : file.EndsWith(".exploration.yaml", StringComparison.Ordinal) ? "exploration.schema.json"
        : file.EndsWith(".settings.yaml", StringComparison.Ordinal) ? "settings.schema.json"
        : "script.schema.json";

    private static JsonSchema Load(string name) => JsonSchema.FromText(File.ReadAllText(Path.Combine(Folder, name)), new BuildOptions { SchemaRegistry = new SchemaRegistry() });

    private static void AssertKeys(string schema, IReadOnlyDictionary<string, KeySet> byPlace)
    {
        JsonObject root = JsonNode.Parse(File.ReadAllText(Path.Combine(Folder, schema)))!.AsObject();
        var reached = new HashSet<JsonObject>(ReferenceEqualityComparer.Instance);
        foreach ((string place, KeySet keys) in byPlace)
        {
            JsonObject properties = PropertiesAt(root, place);
            Assert.Equal(keys.Keys.Order(StringComparer.Ordinal), properties.Select(property => property.Key).Order(StringComparer.Ordinal));
            reached.Add(properties);
        }

        Assert.Equal(reached.Count + (schema.StartsWith("settings", StringComparison.Ordinal) ? 1 : 0), CountGroups(root));
    }

    private static JsonObject PropertiesAt(JsonObject root, string place)
    {
        JsonObject at = root;
        foreach (string part in place.Split('.', StringSplitOptions.RemoveEmptyEntries))
        {
            at = Definition(root, at["properties"]![part.Replace("[]", "")]!.AsObject());
            if (part.EndsWith("[]", StringComparison.Ordinal))
                at = at["items"]!.AsObject();
        }

        Assert.False(at["additionalProperties"]!.GetValue<bool>());
        return at["properties"]!.AsObject();
    }

    /// <summary>What a reference to a definition of the same schema stands for; anything else is itself.</summary>
    private static JsonObject Definition(JsonObject root, JsonObject node) =>
        node["$ref"] is { } reference ? root["$defs"]![reference.GetValue<string>().Split('/')[^1]]!.AsObject() : node;

    private static int CountGroups(JsonNode? node) => node switch
    {
        JsonObject group => (group.ContainsKey("properties") && group.ContainsKey("additionalProperties") ? 1 : 0) + group.Sum(entry => CountGroups(entry.Value)),
        JsonArray list => list.Sum(CountGroups),
        _ => 0,
    };

    private static JsonElement Convert(string path)
    {
        var problems = new ProblemList();
        MapNode? top = YamlTree.Read(path, problems);
        Assert.Empty(problems.All);
        return Element(Json(top!));
    }

    private static JsonElement Element(JsonNode? node) => JsonSerializer.SerializeToElement(node);

    /// <summary>As an editor with YAML 1.2 sees it: plain whole numbers are numbers, everything else written here is text.</summary>
    private static JsonNode? Json(YamlNode node) => node switch
    {
        MapNode map => new JsonObject(map.Entries.Select(entry => KeyValuePair.Create(entry.Key, Json(entry.Value)))),
        ListNode list => new JsonArray(list.Items.Select(Json).ToArray()),
        ScalarNode scalar => long.TryParse(scalar.Text, out long number) ? number : scalar.Text,
        _ => throw new ArgumentException("an unknown sort of node", nameof(node)),
    };
}
