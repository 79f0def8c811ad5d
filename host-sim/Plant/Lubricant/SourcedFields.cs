using System;
using System.Collections.Generic;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Lubricant;

/// <summary>Fields whose value is written with its source and how far it can be relied on.</summary>
internal static class SourcedFields
{
    /// <summary>A value of which nothing was written.</summary>
    internal static SourcedValue Blank { get; } = new(double.NaN, "", Confidence.Assumed);

    private static IReadOnlyList<Choice<Confidence>> Confidences { get; } =
    [
        new("standard", Confidence.Standard), new("published", Confidence.Published), new("measured", Confidence.Measured),
        new("from-memory", Confidence.FromMemory), new("assumed", Confidence.Assumed),
    ];

    /// <summary>A group of value, confidence and source.</summary>
    internal static GroupField<T, SourcedValue> Group<T>(string key, string meaning, Measure measure, string unit, double least, double most, Func<T, SourcedValue?> get, Func<T, SourcedValue, T> with, bool required = false, string? absent = null) =>
        new(key, meaning, new FieldSet<SourcedValue>("a sourced value", Blank, Of<SourcedValue>(measure, unit, least, most, value => value, (_, value) => value)), get, with)
        {
            Required = required,
            Absent = absent,
            Remedy = $"write it with value, for instance '{measure.Example}', confidence and source",
        };

    /// <summary>The three fields of such a value.</summary>
    internal static IReadOnlyList<Field<T>> Of<T>(Measure measure, string unit, double least, double most, Func<T, SourcedValue> get, Func<T, SourcedValue, T> with) =>
    [
        new NumberField<T>("value", "", measure, unit, least, most, item => get(item).Value, (item, v) => with(item, get(item) with { Value = v })) { Required = true },
        new ChoiceField<T, Confidence>("confidence", "How far the value can be relied on; from-memory and assumed are shown with every result.", Confidences, item => get(item).Confidence, (item, v) => with(item, get(item) with { Confidence = v })) { Required = true },
        new TextField<T>("source", "The standard, the book, the data sheet, or why the value was assumed.", TextForm.Free, "", item => get(item).Source, (item, v) => with(item, get(item) with { Source = v })) { Required = true, Remedy = "write the standard, the book, the data sheet, or why the value was assumed" },
    ];
}
