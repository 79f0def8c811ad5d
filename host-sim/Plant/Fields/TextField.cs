using System;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Fields;

/// <summary>What a text may hold.</summary>
public enum TextForm
{
    /// <summary>Anything.</summary>
    Free,

    /// <summary>A name that becomes part of signal names: letters, digits and hyphens.</summary>
    Name,

    /// <summary>A terminal of a circuit.</summary>
    Terminal,
}

/// <summary>A text.</summary>
public interface ITextField
{
    /// <summary>Its name in files.</summary>
    string Key { get; }

    /// <summary>What it may hold.</summary>
    TextForm Form { get; }

    /// <summary>Something acceptable.</summary>
    string Example { get; }

    /// <summary>The text where none is written; empty where one must be written, null where there is none.</summary>
    string? Preset { get; }
}

/// <summary>A text that a description holds; never empty, null where the description has none.</summary>
/// <param name="key">Its name in files.</param>
/// <param name="meaning">What it is.</param>
/// <param name="form">What it may hold.</param>
/// <param name="example">Something acceptable.</param>
/// <param name="get">The text of a description.</param>
/// <param name="with">The description with another text.</param>
public sealed class TextField<T>(string key, string meaning, TextForm form, string example, Func<T, string?> get, Func<T, string, T> with)
    : Field<T>(key, meaning), ITextField
{
    /// <inheritdoc/>
    public TextForm Form { get; } = form;

    /// <inheritdoc/>
    public string Example { get; } = example;

    /// <inheritdoc/>
    public string? Preset { get; private set; }

    /// <inheritdoc/>
    public override T Read(IFieldSource source, T into)
    {
        if (Required && !source.Has(Key))
            source.Missing(this);
        return source.Text(this) is { } text ? with(into, text) : into;
    }

    internal override void Check(Findings findings, string group, T item)
    {
        if (get(item) is { } text && string.IsNullOrWhiteSpace(text))
            findings.Refuse(Below(group), "''", "a text that is not empty");
    }

    internal override string Shown(T item) => get(item) is { } text ? $"'{text}'" : "none";

    internal override void Learn(T blank) => Preset = get(blank);
}
