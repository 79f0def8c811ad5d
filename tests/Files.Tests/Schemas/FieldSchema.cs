using System.Collections.Generic;
using System.Linq;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;
using LubeController.Plant.Fields;

namespace LubeController.Files.Tests.Schemas;

/// <summary>Writes the schema of a file from the fields that its description declares.</summary>
internal sealed class FieldSchema
{
    private const string Number = "[+-]?[0-9.]+([eE][+-]?[0-9]+)?";

    private readonly SortedDictionary<string, JsonObject> _definitions = new(System.StringComparer.Ordinal);

    /// <summary>The schema of a file.</summary>
    public static string Of(FieldSet set, string title, string description, string basedOn)
    {
        var schema = new FieldSchema();
        JsonObject properties = schema.Properties(set.Fields, inList: false);
        properties.Insert(1, Inheritance.Key, Described(new JsonObject { ["type"] = "string" }, basedOn));
        var file = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = title,
            ["description"] = description,
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["properties"] = properties,
            ["$defs"] = new JsonObject(schema._definitions.Select(one => KeyValuePair.Create(one.Key, (JsonNode?)one.Value))),
        };
        return file.ToJsonString(new JsonSerializerOptions { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }) + "\n";
    }

    private JsonObject Properties(IEnumerable<Field> fields, bool inList) =>
        new(fields.Select(field => KeyValuePair.Create(field.Key, (JsonNode?)Described(Shape(field, inList), FieldText.Description(field)))));

    private JsonObject Shape(Field field, bool inList) => field switch
    {
        INumberField number => Reference(Slug(number.Measure), Measured(UnitFamily.Of(number.Measure))),
        IWholeField whole => new JsonObject { ["type"] = "integer", ["minimum"] = whole.Least, ["maximum"] = whole.Most },
        IChoiceField choice => new JsonObject { ["enum"] = new JsonArray([.. choice.Words.SelectMany(Word)]) },
        ITextField { Form: TextForm.Name } => Reference("name", Pattern($"^[A-Za-z0-9][A-Za-z0-9-]{{0,{TextForms.LongestName - 1}}}$")),
        ITextField { Form: TextForm.Terminal } => Reference("terminal", Pattern($"^[A-Za-z0-9.:/+-]{{1,{TextForms.LongestTerminal}}}$")),
        ITextField => new JsonObject { ["type"] = "string" },
        IListField list => List(list),
        IGroupField group => Group(group, inList),
        _ => new JsonObject { ["type"] = "array", ["minItems"] = 1, ["items"] = new JsonObject { ["type"] = "string", ["pattern"] = "^[A-Za-z0-9][A-Za-z0-9-]*[LR]$" } },
    };

    private JsonObject List(IListField list)
    {
        var shape = new JsonObject { ["type"] = "array" };
        if (list.Least > 0)
            shape["minItems"] = list.Least;
        shape["maxItems"] = list.Most;
        shape["items"] = Fields(list.Set, inList: true);
        return shape;
    }

    private JsonObject Group(IGroupField group, bool inList)
    {
        if (!group.MayBeYesOrNo)
            return Fields(group.Set, inList);
        JsonObject shape = Fields(group.Set, inList);
        shape["type"] = new JsonArray("string", "object");
        shape["pattern"] = "^(yes|no)$";
        return shape;
    }

    /// <summary>Groups are merged over files that are based on each other, so only items of lists and sourced values must be whole.</summary>
    private JsonObject Fields(FieldSet set, bool inList)
    {
        var shape = new JsonObject { ["type"] = "object", ["additionalProperties"] = false };
        Field[] fields = [.. set.Fields.Where(field => !set.IsFile || FieldKeys.Of(set).Has(field.Key))];
        if ((inList || fields.Any(field => field.Key == "source")) && fields.Any(field => field.Required))
            shape["required"] = new JsonArray([.. fields.Where(field => field.Required).Select(field => (JsonNode)field.Key)]);
        JsonObject properties = Properties(fields, inList);
        if (set.IsFile)
            properties.Insert(0, FieldKeys.File, Described(new JsonObject { ["type"] = "string" }, "The file, relative to the plant file that names it."));
        shape["properties"] = properties;
        return shape;
    }

    private JsonObject Reference(string name, JsonObject definition)
    {
        _definitions.TryAdd(name, definition);
        return new JsonObject { ["$ref"] = $"#/$defs/{name}" };
    }

    private static JsonObject Pattern(string pattern) => new() { ["type"] = new JsonArray("string", "integer"), ["pattern"] = pattern };

    /// <summary>Editors read a plain whole number as a number, and one in quotes as a text.</summary>
    private static IEnumerable<JsonNode> Word(string word) => long.TryParse(word, out long number) && number.ToString() == word ? [number, word] : [word];

    private static JsonObject Measured(UnitFamily family)
    {
        bool mayBePlain = family.Has("1");
        string units = string.Join("|", family.Units.Select(Escaped));
        var shape = new JsonObject { ["type"] = mayBePlain ? new JsonArray("string", "number") : "string" };
        shape["pattern"] = $"^{Number} ?({units}){(mayBePlain ? "?" : "")}$";
        shape["examples"] = new JsonArray(family.Example);
        return shape;
    }

    private static string Escaped(string unit) => unit.Replace(".", "\\.").Replace("^", "\\^");

    private static string Slug(Measure measure) => Regex.Replace(measure.Name, "^an? ", "").Replace(' ', '-');

    private static JsonObject Described(JsonObject shape, string description)
    {
        if (description.Length > 0)
            shape["description"] = description;
        return shape;
    }
}
