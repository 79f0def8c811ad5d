using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace LubeController.Files.Reading;

/// <summary>
/// Reads the fields of one group. Whatever does not fit is added to the problems and stands as absent, so that the rest
/// of the file can still be judged.
/// </summary>
public sealed class MapReader
{
    private readonly KeySet _keys;

    /// <summary>Begins to read a group; unknown fields are refused at once.</summary>
    public MapReader(MapNode map, KeySet keys, ProblemList problems)
    {
        Map = map;
        _keys = keys;
        Problems = problems;
        foreach (MapEntry entry in map.Entries)
        {
            if (!keys.Has(entry.Key))
                problems.Add(new Problem(entry.KeyPlace, Field(entry.Key), entry.Value.Shown, $"{keys.Name} has no field '{ShortText.Of(entry.Key)}'", NearestName.Remedy(entry.Key, keys.Keys, keys.ListedIn)));
        }
    }

    /// <summary>The group being read.</summary>
    public MapNode Map { get; }

    /// <summary>Takes what is wrong.</summary>
    public ProblemList Problems { get; }

    /// <summary>Whether a field stands in the group.</summary>
    public bool Has(string key) => Map[key] != null;

    /// <summary>Path of a field of the group.</summary>
    public string Field(string key) => Map.Path.Length == 0 ? key : $"{Map.Path}.{key}";

    /// <summary>Adds a problem of the group for a field that is missing.</summary>
    public void Missing(string key, string remedy) =>
        Problems.Add(new Problem(Map.Place, Field(key), "", $"{_keys.Name} needs the field '{key}'", remedy));

    /// <summary>The single value of a field, or null.</summary>
    public ScalarNode? Single(string key)
    {
        switch (Node(key))
        {
            case null:
                return null;
            case ScalarNode { IsEmpty: false } scalar:
                return scalar;
            case ScalarNode empty:
                Problems.Add(empty, "nothing is written here", "write a value or delete the field");
                return null;
            case { } other:
                Problems.Add(other, $"a single value is expected, but {other.Sort} stands here", "write one value on the line of the field");
                return null;
        }
    }

    /// <summary>The text of a field, or null.</summary>
    public string? Text(string key) => Single(key)?.Text;

    /// <summary>The group under a field, or null.</summary>
    public MapReader? Group(string key, KeySet keys)
    {
        switch (Node(key))
        {
            case null:
                return null;
            case MapNode map:
                return new MapReader(map, keys, Problems);
            case { } other:
                Problems.Add(other, $"{keys.Name} is expected, but {other.Sort} stands here", $"write fields below it, indented: {NearestName.Some(keys.Keys)}");
                return null;
        }
    }

    /// <summary>The items of the list under a field; empty where the field is absent.</summary>
    /// <param name="key">The field.</param>
    /// <param name="most">Most items read.</param>
    public IReadOnlyList<YamlNode> List(string key, int most)
    {
        switch (Node(key))
        {
            case null:
                return [];
            case ListNode list when list.Items.Count <= most:
                return list.Items;
            case ListNode list:
                Problems.Add(list, $"the list has {list.Items.Count} items, at most {most} are read", "split the file");
                return [];
            case { } other:
                Problems.Add(other, $"a list is expected, but {other.Sort} stands here", "begin each item with '- ' on a line of its own");
                return [];
        }
    }

    /// <summary>The groups of the list under a field; items of another sort are refused.</summary>
    public IEnumerable<MapReader> Groups(string key, KeySet keys, int most)
    {
        foreach (YamlNode item in List(key, most))
        {
            if (item is MapNode map)
                yield return new MapReader(map, keys, Problems);
            else
                Problems.Add(item, $"{keys.Name} is expected, but {item.Sort} stands here", $"write its fields: {NearestName.Some(keys.Keys)}");
        }
    }

    /// <summary>The whole number of a field within a range, or null.</summary>
    public long? Whole(string key, long minimum, long maximum)
    {
        if (Single(key) is not { } node)
            return null;
        if (!long.TryParse(node.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long number))
        {
            Problems.Add(node, "a whole number without unit is expected", $"write a number from {minimum} to {maximum}");
            return null;
        }

        if (number >= minimum && number <= maximum)
            return number;
        Problems.Add(node, "the number is outside its range", string.Create(CultureInfo.InvariantCulture, $"write a number from {minimum} to {maximum}"));
        return null;
    }

    /// <summary>The index of a field's word among the words allowed, or null.</summary>
    public int? Choice(string key, IReadOnlyList<string> words)
    {
        if (Single(key) is not { } node)
            return null;
        for (int index = 0; index < words.Count; index++)
        {
            if (string.Equals(words[index], node.Text, StringComparison.Ordinal))
                return index;
        }

        string? nearest = NearestName.Of(node.Text, words);
        Problems.Add(node, $"the word is not one of {words.Count} known ones", (nearest != null ? $"did you mean '{nearest}'? " : "") + $"known: {string.Join(", ", words)}");
        return null;
    }

    /// <summary>A field of two words, for instance on and off: whether the first one stands there, or null.</summary>
    public bool? Either(string key, string whenTrue, string whenFalse)
    {
        if (Single(key) is not { } node)
            return null;
        if (node.Text == whenTrue)
            return true;
        if (node.Text == whenFalse)
            return false;
        Problems.Add(node, $"'{whenTrue}' or '{whenFalse}' is expected", $"write '{whenTrue}' or '{whenFalse}'");
        return null;
    }

    /// <summary>The one field of several that is present, or null where a problem was added.</summary>
    public string? ExactlyOne(IReadOnlyList<string> keys)
    {
        string[] present = keys.Where(Has).ToArray();
        if (present.Length == 1)
            return present[0];
        string all = string.Join(", ", keys);
        if (present.Length == 0)
            Problems.Add(new Problem(Map.Place, Map.Path, Map.Shown, $"{_keys.Name} needs one of the fields {all}", "add one of them"));
        else
            Problems.Add(new Problem(Map.Find(present[1])!.KeyPlace, Field(present[1]), Map[present[1]]!.Shown, $"{_keys.Name} has '{present[0]}' and '{present[1]}', but only one of {all} may stand in it", "make two of it"));
        return null;
    }

    private YamlNode? Node(string key)
    {
        if (!_keys.Has(key))
            throw new ArgumentException($"the reader asks for '{key}', which {_keys.Name} does not list", nameof(key));
        return Map[key];
    }
}
