using System;
using System.Collections.Generic;

namespace LubeController.Files.Reading;

/// <summary>A piece of a file that remembers where it stands and which field it is.</summary>
public abstract class YamlNode(SourcePlace place, string path)
{
    /// <summary>Where it stands.</summary>
    public SourcePlace Place { get; } = place;

    /// <summary>Dotted path from the top of the file; empty at the top.</summary>
    public string Path { get; } = path;

    /// <summary>What a message shows of it.</summary>
    public abstract string Shown { get; }

    /// <summary>What it is, in words.</summary>
    public abstract string Sort { get; }
}

/// <summary>A single text or number.</summary>
public sealed class ScalarNode(SourcePlace place, string path, string text, bool plain) : YamlNode(place, path)
{
    /// <summary>The text without quotes; never null.</summary>
    public string Text { get; } = text;

    /// <summary>Whether nothing was written: no text, <c>~</c> or <c>null</c> without quotes.</summary>
    public bool IsEmpty { get; } = text.Length == 0 || (plain && text is "~" or "null" or "Null" or "NULL");

    /// <inheritdoc/>
    public override string Shown => Text;

    /// <inheritdoc/>
    public override string Sort => "a single value";
}

/// <summary>A list.</summary>
public sealed class ListNode(SourcePlace place, string path, IReadOnlyList<YamlNode> items) : YamlNode(place, path)
{
    /// <summary>The items in order.</summary>
    public IReadOnlyList<YamlNode> Items { get; } = items;

    /// <inheritdoc/>
    public override string Shown => $"a list of {Items.Count}";

    /// <inheritdoc/>
    public override string Sort => "a list";
}

/// <summary>A key and its value.</summary>
public sealed record MapEntry(string Key, SourcePlace KeyPlace, YamlNode Value);

/// <summary>Keys with values; no key stands twice.</summary>
public sealed class MapNode : YamlNode
{
    private readonly Dictionary<string, MapEntry> _byKey = new(StringComparer.Ordinal);

    /// <summary>Makes a map from entries with distinct keys.</summary>
    public MapNode(SourcePlace place, string path, IReadOnlyList<MapEntry> entries)
        : base(place, path)
    {
        Entries = entries;
        foreach (MapEntry entry in entries)
            _byKey.Add(entry.Key, entry);
    }

    /// <summary>The entries in order of writing.</summary>
    public IReadOnlyList<MapEntry> Entries { get; }

    /// <inheritdoc/>
    public override string Shown => $"a group of {Entries.Count} fields";

    /// <inheritdoc/>
    public override string Sort => "a group of fields";

    /// <summary>The value of a key, or null.</summary>
    public YamlNode? this[string key] => _byKey.TryGetValue(key, out MapEntry? entry) ? entry.Value : null;

    /// <summary>The entry of a key, or null.</summary>
    public MapEntry? Find(string key) => _byKey.GetValueOrDefault(key);
}
