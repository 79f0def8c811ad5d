using System.Collections.Generic;
using System.Linq;
using System.Text;
using LubeController.Plant.Fields;

namespace LubeController.Files.Tests.Schemas;

/// <summary>Writes the reference page of plant and lubricant files from the fields that their descriptions declare.</summary>
internal sealed class FieldPage
{
    private readonly StringBuilder _text = new();

    public static string Of(params IReadOnlyList<(string Title, FieldSet Set)> files)
    {
        var page = new FieldPage();
        page._text.Append("# Fields of plant and lubricant files\n\nMade from the declarations in `host-sim/Plant`; a test holds it to them, `tests/renew` renews it.\nA range is told in the usual unit; any unit of the same measure may be written. **Bold** fields must be written.\n");
        foreach ((string title, FieldSet set) in files)
        {
            page._text.Append($"\n## {title}\n");
            page.Group("", set, [.. Groups(set)]);
        }

        return page._text.ToString();
    }

    private void Group(string path, FieldSet set, IReadOnlyList<(string Path, FieldSet Set)> groups)
    {
        if (set.Kinds.Count == 0)
            Table(path.Length == 0 ? "" : $"### `{path}`", set);
        foreach ((string word, FieldSet kind) in set.Kinds)
            Table(path.Length == 0 ? $"### kind `{word}`" : $"### `{path}`, kind `{word}`", kind);
        foreach ((string below, FieldSet part) in groups)
        {
            string full = path.Length == 0 ? below : $"{path}.{below}";
            Group(full, part, [.. Groups(part)]);
        }
    }

    /// <summary>Groups that deserve a table of their own; sourced values are alike everywhere.</summary>
    private static IEnumerable<(string Path, FieldSet Set)> Groups(FieldSet set) => set.Fields
        .Select(field => field switch
        {
            IGroupField { Set: { IsFile: false } } group when !group.Set.Keys.Contains("source") => (field.Key, group.Set),
            IListField list => ($"{field.Key}[]", list.Set),
            _ => ("", set),
        })
        .Where(part => part.Item1.Length > 0);

    private void Table(string heading, FieldSet set)
    {
        if (heading.Length > 0)
            _text.Append($"\n{heading}\n");
        _text.Append("\n| field | meaning | range | if not written |\n|---|---|---|---|\n");
        foreach (Field field in set.Fields)
            _text.Append($"| {(field.Required ? $"**`{field.Key}`**" : $"`{field.Key}`")} | {field.Meaning} | {Range(field)} | {FieldText.Preset(field)} |\n");
    }

    private static string Range(Field field) => field is IGroupField group && group.Set.Fields.FirstOrDefault(one => one.Key == "value") is { } value
        ? $"{FieldText.Range(value)}, with confidence and source"
        : FieldText.Range(field);
}
