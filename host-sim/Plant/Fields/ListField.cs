using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Fields;

/// <summary>Parts of a description in order.</summary>
/// <param name="key">Its name in files.</param>
/// <param name="meaning">What it is.</param>
/// <param name="set">The fields of an item.</param>
/// <param name="get">The parts of a description.</param>
/// <param name="with">The description with other parts.</param>
public sealed class ListField<T, TPart>(string key, string meaning, FieldSet<TPart> set, Func<T, IReadOnlyList<TPart>> get, Func<T, IReadOnlyList<TPart>, T> with)
    : Field<T>(key, meaning), IListField
    where TPart : class
{
    /// <inheritdoc/>
    public FieldSet Set => set;

    /// <inheritdoc/>
    public int Least { get; init; }

    /// <inheritdoc/>
    public int Most { get; init; }

    /// <inheritdoc/>
    public override T Read(IFieldSource source, T into)
    {
        if (Required && !source.Has(Key))
            source.Missing(this);
        return source.Has(Key) ? with(into, [.. source.Items(Key, set, Most).Select(set.Read).OfType<TPart>()]) : into;
    }

    internal override void Check(Findings findings, string group, T item)
    {
        IReadOnlyList<TPart> parts = get(item);
        if (parts.Count < Least || parts.Count > Most)
            findings.Refuse(Below(group), Findings.Show(parts.Count), $"{Least} to {Most} {Key}");
        for (int index = 0; index < parts.Count; index++)
            set.Check(findings, $"{Below(group)}[{index}]", parts[index]);
    }

    internal override string Shown(T item) => Findings.Show(get(item).Count);
}
