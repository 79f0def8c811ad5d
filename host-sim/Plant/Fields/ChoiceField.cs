using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Fields;

/// <summary>One of several words.</summary>
public interface IChoiceField
{
    /// <summary>The words.</summary>
    IReadOnlyList<string> Words { get; }

    /// <summary>The word that holds where none is written; null where one must be written.</summary>
    string? PresetWord { get; }
}

/// <summary>One of several words, each of which stands for a value.</summary>
/// <param name="key">Its name in files.</param>
/// <param name="meaning">What it is.</param>
/// <param name="choices">Each word with its value.</param>
/// <param name="get">The value of a description; null where it has none.</param>
/// <param name="with">The description with another value.</param>
public sealed class ChoiceField<T, TValue>(string key, string meaning, IReadOnlyList<Choice<TValue>> choices, Func<T, TValue> get, Func<T, TValue, T> with)
    : Field<T>(key, meaning), IChoiceField
{
    /// <inheritdoc/>
    public IReadOnlyList<string> Words { get; } = [.. choices.Select(choice => choice.Word)];

    /// <inheritdoc/>
    public string? PresetWord { get; private set; }

    /// <summary>Whether a description made in code may hold values that have no word.</summary>
    public bool TakesOthers { get; init; }

    /// <inheritdoc/>
    public override T Read(IFieldSource source, T into)
    {
        if (Required && !source.Has(Key))
            source.Missing(this);
        int? chosen = choices is IReadOnlyList<Choice<bool>>
            ? source.Either(Key, Words[0], Words[1]) switch { null => null, true => 0, false => 1 }
            : source.Choice(Key, Words);
        return chosen is { } index ? with(into, choices[index].Value) : into;
    }

    internal override void Check(Findings findings, string group, T item)
    {
        if (!TakesOthers && get(item) is not null && Word(item) is null)
            findings.Refuse(Below(group), Shown(item), string.Join(" or ", Words));
    }

    internal override string Shown(T item) => Word(item) ?? $"{get(item)}";

    internal override void Learn(T blank) => PresetWord = Required ? null : Word(blank);

    private string? Word(T item) => choices.FirstOrDefault(choice => EqualityComparer<TValue>.Default.Equals(choice.Value, get(item)))?.Word;
}

/// <summary>A word and the value it stands for.</summary>
/// <param name="Word">Lower case with hyphens.</param>
/// <param name="Value">The value.</param>
public sealed record Choice<TValue>(string Word, TValue Value);
