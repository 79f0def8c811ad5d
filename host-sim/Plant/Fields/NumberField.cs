using System;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Fields;

/// <summary>A number with a unit and a range.</summary>
public interface INumberField
{
    /// <summary>Its name in files.</summary>
    string Key { get; }

    /// <summary>What it measures.</summary>
    Measure Measure { get; }

    /// <summary>The unit in which its range is told to users.</summary>
    string Unit { get; }

    /// <summary>Smallest value accepted, SI.</summary>
    double Least { get; }

    /// <summary>Greatest value accepted, SI.</summary>
    double Most { get; }

    /// <summary>The value where none is written, SI; null or infinite where there is none, not-a-number where one must be written.</summary>
    double? Preset { get; }
}

/// <summary>A number that a description holds in SI. A value equal to its preset is accepted even outside the range: none fitted.</summary>
/// <param name="key">Its name in files.</param>
/// <param name="meaning">What it is.</param>
/// <param name="measure">What it measures.</param>
/// <param name="unit">The unit in which its range is told to users.</param>
/// <param name="least">Smallest value accepted, SI.</param>
/// <param name="most">Greatest value accepted, SI.</param>
/// <param name="get">The value of a description; null where it has none.</param>
/// <param name="with">The description with another value.</param>
public class NumberField<T>(string key, string meaning, Measure measure, string unit, double least, double most, Func<T, double?> get, Func<T, double, T> with)
    : Field<T>(key, meaning), INumberField
{
    /// <inheritdoc/>
    public Measure Measure { get; } = measure;

    /// <inheritdoc/>
    public string Unit { get; } = unit;

    /// <inheritdoc/>
    public double Least { get; } = least;

    /// <inheritdoc/>
    public double Most { get; } = most;

    /// <inheritdoc/>
    public double? Preset { get; private set; }

    /// <inheritdoc/>
    public override T Read(IFieldSource source, T into)
    {
        if (Required && !source.Has(Key))
            source.Missing(this);
        return Value(source) is { } value ? with(into, value) : into;
    }

    /// <summary>The value written, as the description holds it.</summary>
    protected virtual double? Value(IFieldSource source) => source.Number(this);

    internal override void Check(Findings findings, string group, T item)
    {
        if (get(item) is not { } value || value.Equals(Preset) && !double.IsNaN(value))
            return;
        // Written so that not-a-number is refused too.
        if (!(value >= Least && value <= Most))
            findings.Refuse(Below(group), Findings.Show(value), $"{Findings.Show(Least)} to {Findings.Show(Most)} {Measure.SiUnit}");
    }

    internal override string Shown(T item) => get(item) is { } value ? Findings.Show(value) : "none";

    internal override void Learn(T blank) => Preset = get(blank);
}

/// <summary>A time that a description holds in whole microseconds.</summary>
public sealed class MicrosecondsField<T>(string key, string meaning, string unit, double leastS, double mostS, Func<T, long> get, Func<T, long, T> with)
    : NumberField<T>(key, meaning, Measure.Time, unit, leastS, mostS, item => get(item) / 1e6, (item, us) => with(item, (long)us))
{
    /// <inheritdoc/>
    protected override double? Value(IFieldSource source) => source.Microseconds(this);
}

/// <summary>A whole number without unit.</summary>
public interface IWholeField
{
    /// <summary>Smallest value accepted.</summary>
    int Least { get; }

    /// <summary>Greatest value accepted.</summary>
    int Most { get; }

    /// <summary>The value where none is written.</summary>
    int Preset { get; }
}

/// <summary>A whole number without unit that a description holds.</summary>
public sealed class WholeField<T>(string key, string meaning, int least, int most, Func<T, int> get, Func<T, int, T> with) : Field<T>(key, meaning), IWholeField
{
    /// <inheritdoc/>
    public int Least { get; } = least;

    /// <inheritdoc/>
    public int Most { get; } = most;

    /// <inheritdoc/>
    public int Preset { get; private set; }

    /// <inheritdoc/>
    public override T Read(IFieldSource source, T into) => source.Whole(Key, Least, Most) is { } value ? with(into, value) : into;

    internal override void Check(Findings findings, string group, T item)
    {
        if (get(item) < Least || get(item) > Most)
            findings.Refuse(Below(group), Shown(item), $"{Findings.Show(Least)} to {Findings.Show(Most)}");
    }

    internal override string Shown(T item) => Findings.Show(get(item));

    internal override void Learn(T blank) => Preset = get(blank);
}
