using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;
using LubeController.Plant.Checking;
using LubeController.Plant.Fields;

namespace LubeController.Files.Fields;

/// <summary>A group of a YAML file as the source of the fields that a description declares.</summary>
/// <param name="group">The group.</param>
public sealed class MapSource(MapReader group) : IFieldSource
{
    /// <inheritdoc/>
    public int ProblemCount => group.Problems.Count;

    /// <inheritdoc/>
    public bool Has(string key) => group.Has(key);

    /// <inheritdoc/>
    public bool HoldsGroup(string key) => group.Map[key] is MapNode;

    /// <inheritdoc/>
    public void Missing(Field field) => group.Missing(field.Key, field.Remedy ?? field switch
    {
        INumberField number => $"write for instance '{field.Key}: {number.Measure.Example}'",
        ITextField { Form: TextForm.Terminal } terminal => $"write the name of a terminal, for instance '{field.Key}: {terminal.Example}'",
        ITextField text => $"write for instance '{field.Key}: {text.Example}'",
        IChoiceField choice => $"write one of: {string.Join(", ", choice.Words)}",
        IGroupField part => $"write it with {NearestName.Some(FieldKeys.Of(part.Set).Keys)}",
        _ => "add it",
    });

    /// <inheritdoc/>
    public void Refuse(string key, string message, string remedy)
    {
        MapEntry entry = group.Map.Find(key)!;
        group.Problems.Add(new Problem(entry.KeyPlace, group.Field(key), entry.Value.Shown, message, remedy));
    }

    /// <inheritdoc/>
    public void Refuse(PlantFinding finding, string verdict) => group.Problems.Add(FindingPlaces.Problem(group.Map, finding, verdict));

    /// <inheritdoc/>
    public void RefuseForeign(FieldSet own)
    {
        string[] keys = [.. own.Keys];
        string[] shown = group.Keys.Has(Inheritance.Key) ? [keys[0], Inheritance.Key, .. keys[1..]] : keys;
        foreach (MapEntry entry in group.Map.Entries.Where(entry => group.Keys.Has(entry.Key) && !shown.Contains(entry.Key)))
            Refuse(entry.Key, $"{own.Name} has no '{entry.Key}'", $"its fields are {NearestName.Some(shown)}");
    }

    /// <inheritdoc/>
    public double? Number(INumberField field) => group.Quantity(field.Key, QuantityRange.Of(field))?.Si;

    /// <inheritdoc/>
    public long? Microseconds(INumberField field) => group.Quantity(field.Key, QuantityRange.Of(field)) is { } time ? Quantities.Microseconds.Of(time) : null;

    /// <inheritdoc/>
    public int? Whole(string key, int least, int most) => (int?)group.Whole(key, least, most);

    /// <inheritdoc/>
    public int? Choice(string key, IReadOnlyList<string> words) => group.Choice(key, words);

    /// <inheritdoc/>
    public bool? Either(string key, string whenTrue, string whenFalse) => group.Either(key, whenTrue, whenFalse);

    /// <inheritdoc/>
    public string? Text(ITextField field)
    {
        if (group.Single(field.Key) is not { } node)
            return null;
        switch (field.Form)
        {
            case TextForm.Name when !TextForms.IsName(node.Text):
                group.Problems.Add(node, $"a name has letters, digits and hyphens, at most {TextForms.LongestName}", $"write for instance '{field.Example}'");
                return null;
            case TextForm.Terminal when !TextForms.IsTerminal(node.Text):
                group.Problems.Add(node, $"a terminal has letters, digits and - + . : /, at most {TextForms.LongestTerminal}", $"write for instance '{field.Example}'");
                return null;
            default:
                return node.Text;
        }
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> Texts(Field field, int most, Func<string, bool> fits, string message, string remedy)
    {
        var texts = new List<string>();
        foreach (YamlNode item in group.List(field.Key, most))
        {
            if (item is ScalarNode scalar && fits(scalar.Text))
                texts.Add(scalar.Text);
            else
                group.Problems.Add(item, message, remedy);
        }

        return texts;
    }

    /// <inheritdoc/>
    public IFieldSource? Group(string key, FieldSet set)
    {
        if (group.Group(key, FieldKeys.Of(set)) is not { } below)
            return null;
        return !set.IsFile ? new MapSource(below) : NamedFile.Read(below) is { } file ? new MapSource(file) : null;
    }

    /// <inheritdoc/>
    public IEnumerable<IFieldSource> Items(string key, FieldSet set, int most) => group.Groups(key, FieldKeys.Of(set), most).Select(item => new MapSource(item));
}
