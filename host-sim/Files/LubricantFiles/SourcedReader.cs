using System.Collections.Generic;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant.Lubricant;

namespace LubeController.Files.LubricantFiles;

/// <summary>Reads a value together with its source and how far it can be relied on; none of the three may be missing.</summary>
internal static class SourcedReader
{
    /// <summary>The words for confidence, by value.</summary>
    public static IReadOnlyList<string> ConfidenceWords { get; } = ["standard", "published", "measured", "from-memory", "assumed"];

    /// <summary>A value that must be there; null where a problem was added.</summary>
    public static SourcedValue? Need(MapReader group, string key, QuantityRange range)
    {
        if (!group.Has(key))
            group.Missing(key, $"write it with value, for instance '{range.Family.Example}', confidence and source");
        return Maybe(group, key, range);
    }

    /// <summary>A value that may be left out.</summary>
    public static SourcedValue? Maybe(MapReader group, string key, QuantityRange range) =>
        group.Group(key, LubricantKeys.Sourced) is { } sourced ? Of(sourced, range) : null;

    /// <summary>The value of a group, or null where a problem was added.</summary>
    public static SourcedValue? Of(MapReader sourced, QuantityRange range)
    {
        if (!sourced.Has("value"))
            sourced.Missing("value", $"write for instance 'value: {range.Family.Example}'");
        if (!sourced.Has("confidence"))
            sourced.Missing("confidence", $"write one of: {string.Join(", ", ConfidenceWords)}");
        if (!sourced.Has("source"))
            sourced.Missing("source", "write the standard, the book, the data sheet, or why the value was assumed");
        Quantity? quantity = sourced.Quantity("value", range);
        int? confidence = sourced.Choice("confidence", ConfidenceWords);
        string? source = sourced.Text("source");
        return quantity == null || confidence == null || source == null ? null
            : new SourcedValue(quantity.Value.Si, source, (Confidence)confidence.Value);
    }
}
