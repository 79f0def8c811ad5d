using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Files.Reading;

/// <summary>The fields that one group may have. The JSON Schemas are checked against these sets.</summary>
/// <param name="name">What the group is, in words, for instance <c>a step</c>.</param>
/// <param name="keys">Every field.</param>
public sealed class KeySet(string name, params IEnumerable<string> keys)
{
    private readonly HashSet<string> _known = new(keys, StringComparer.Ordinal);

    /// <summary>What the group is, in words.</summary>
    public string Name { get; } = name;

    /// <summary>Every field, in order of explanation.</summary>
    public IReadOnlyList<string> Keys { get; } = keys.ToArray();

    /// <summary>Where every field is told, for sets of which an error names only some; else empty.</summary>
    public string ListedIn { get; init; } = "";

    /// <summary>Whether the group has the field.</summary>
    public bool Has(string key) => _known.Contains(key);
}
