using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Fields;

/// <summary>A group of fields below a field.</summary>
public interface IGroupField
{
    /// <summary>The fields of the group.</summary>
    FieldSet Set { get; }

    /// <summary>Whether <c>yes</c> may stand for a group in which nothing is written, and <c>no</c> for none.</summary>
    bool MayBeYesOrNo { get; }
}

/// <summary>A part of a description, or several of its own values that a file writes as a group.</summary>
/// <param name="key">Its name in files.</param>
/// <param name="meaning">What it is.</param>
/// <param name="set">The fields of the group.</param>
/// <param name="get">The part of a description; null where it has none.</param>
/// <param name="with">The description with another part.</param>
public sealed class GroupField<T, TPart>(string key, string meaning, FieldSet<TPart> set, Func<T, TPart?> get, Func<T, TPart, T> with) : Field<T>(key, meaning), IGroupField
    where TPart : class
{
    /// <inheritdoc/>
    public FieldSet Set => set;

    /// <inheritdoc/>
    public bool MayBeYesOrNo { get; init; }

    /// <summary>Whether it must be written, for groups that others may stand in for; else <see cref="Field.Required"/> decides.</summary>
    public Func<IFieldSource, bool>? RequiredWhere { get; init; }

    /// <summary>Fields that may not stand beside the group, and what the whole is that has the group in their place.</summary>
    public (IReadOnlyList<string> Keys, string Name)? InPlaceOf { get; init; }

    /// <inheritdoc/>
    public override T Read(IFieldSource source, T into)
    {
        if (InPlaceOf is { } others && source.Has(Key))
        {
            foreach (string other in others.Keys.Where(source.Has))
                source.Refuse(other, $"{others.Name} has no '{other}'", $"delete it, or delete '{Key}'");
        }

        if ((RequiredWhere?.Invoke(source) ?? Required) && !source.Has(Key))
            source.Missing(this);
        if (MayBeYesOrNo && !source.HoldsGroup(Key))
            return source.Either(Key, "yes", "no") ?? false ? with(into, set.Blank) : into;
        return source.Group(Key, set) is { } group && set.Read(group) is { } part ? with(into, part) : into;
    }

    internal override void Check(Findings findings, string group, T item)
    {
        if (get(item) is { } part)
            set.Check(findings, Below(group), part);
    }

    internal override string Shown(T item) => get(item) is null ? "none" : "a group";
}

/// <summary>A list of groups below a field.</summary>
public interface IListField
{
    /// <summary>The fields of an item.</summary>
    FieldSet Set { get; }

    /// <summary>Least number of items.</summary>
    int Least { get; }

    /// <summary>Greatest number of items.</summary>
    int Most { get; }
}
