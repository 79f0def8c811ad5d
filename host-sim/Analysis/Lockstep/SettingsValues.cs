using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Analysis.Lockstep;

/// <summary>
/// Values of all settings of a core, by the index of the setting, in a form that no build of the core owns. Not changed once
/// made.
/// </summary>
public sealed class SettingsValues : IEquatable<SettingsValues>
{
    private readonly int[] _values;

    /// <summary>Takes the values over.</summary>
    /// <param name="values">As many as the core has settings, in the units of its table.</param>
    public SettingsValues(IEnumerable<int> values)
    {
        _values = [.. values];
    }

    /// <summary>How many there are.</summary>
    public int Count => _values.Length;

    /// <summary>Value of a setting.</summary>
    /// <param name="field">0 to <see cref="Count"/> - 1.</param>
    public int this[int field] => _values[field];

    /// <summary>The same with one value changed.</summary>
    /// <param name="field">0 to <see cref="Count"/> - 1.</param>
    /// <param name="value">Its new value.</param>
    public SettingsValues With(int field, int value)
    {
        int[] changed = [.. _values];
        changed[field] = value;
        return new SettingsValues(changed);
    }

    /// <inheritdoc/>
    public bool Equals(SettingsValues? other) => other is not null && _values.AsSpan().SequenceEqual(other._values);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as SettingsValues);

    /// <inheritdoc/>
    public override int GetHashCode() => _values.Aggregate(17, (hash, value) => unchecked((hash * 31) + value));
}
