using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Fields;

/// <summary>The word that chooses the kind of a group. Each kind's fields have it; what it chooses, <see cref="KindSet{T}"/> reads.</summary>
public sealed class KindField<T>(params IReadOnlyList<string> words) : Field<T>("kind", ""), IChoiceField
{
    /// <inheritdoc/>
    public IReadOnlyList<string> Words { get; } = words;

    /// <inheritdoc/>
    public string? PresetWord => null;

    /// <inheritdoc/>
    public override T Read(IFieldSource source, T into) => into;

    internal override void Check(Findings findings, string group, T item)
    {
    }

    internal override string Shown(T item) => $"{item}";
}

/// <summary>One kind of a group.</summary>
public sealed class FieldKind<T>
    where T : class
{
    private FieldKind(string word, FieldSet set, Func<IFieldSource, T?> read, Func<Findings, string, T, bool> check) =>
        (Word, Set, Read, Check) = (word, set, read, check);

    /// <summary>The word that chooses it.</summary>
    public string Word { get; }

    /// <summary>Its fields.</summary>
    public FieldSet Set { get; }

    internal Func<IFieldSource, T?> Read { get; }

    /// <summary>Checks a description of this kind; false for one of another.</summary>
    internal Func<Findings, string, T, bool> Check { get; }

    /// <summary>Declares a kind.</summary>
    public static FieldKind<T> Of<TKind>(string word, FieldSet<TKind> set)
        where TKind : class, T => new(word, set, set.Read, (findings, path, item) =>
    {
        if (item is not TKind own)
            return false;
        set.Check(findings, path, own);
        return true;
    });
}

/// <summary>A group whose fields depend on its <c>kind</c>.</summary>
/// <param name="name">What the group is, in words.</param>
/// <param name="kinds">The kinds.</param>
public sealed class KindSet<T>(string name, params IReadOnlyList<FieldKind<T>> kinds) : FieldSet<T>(name, null!)
    where T : class
{
    /// <inheritdoc/>
    public override IReadOnlyList<Field> Fields { get; } = [.. kinds.SelectMany(kind => kind.Set.Fields).DistinctBy(field => field.Key)];

    /// <inheritdoc/>
    public override IReadOnlyList<(string Word, FieldSet Set)> Kinds { get; } = [.. kinds.Select(kind => (kind.Word, kind.Set))];

    /// <inheritdoc/>
    public override T? Read(IFieldSource source)
    {
        Field word = Fields.First(field => field.Key == "kind");
        if (!source.Has(word.Key))
            source.Missing(word);
        if (source.Choice(word.Key, ((IChoiceField)word).Words) is not { } chosen)
            return null;
        source.RefuseForeign(kinds[chosen].Set);
        return kinds[chosen].Read(source);
    }

    internal override void Check(Findings findings, string path, T item)
    {
        if (!kinds.Any(kind => kind.Check(findings, path, item)))
            findings.Refuse(path, item.GetType().Name, $"one of the kinds {string.Join(", ", kinds.Select(kind => kind.Word))}");
    }
}
