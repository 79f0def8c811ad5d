using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Fields;

/// <summary>The fields of one group.</summary>
/// <param name="name">What the group is, in words, for instance <c>a reservoir</c>.</param>
public abstract class FieldSet(string name)
{
    /// <summary>What the group is, in words.</summary>
    public string Name { get; } = name;

    /// <summary>Every field, in order of explanation; those of all kinds where there are several.</summary>
    public abstract IReadOnlyList<Field> Fields { get; }

    /// <summary>The kinds of the group with their fields; none where all have the same.</summary>
    public virtual IReadOnlyList<(string Word, FieldSet Set)> Kinds => [];

    /// <summary>The names of the fields.</summary>
    public IReadOnlyList<string> Keys => [.. Fields.Select(one => one.Key)];

    /// <summary>
    /// What a finding makes of the group as soon as it is read, for instance <c>the wiring cannot be so</c>; null where it is
    /// judged with what it is part of.
    /// </summary>
    public string? Verdict { get; init; }

    /// <summary>Whether the group is a file of its own, which the group in another file names and overrides field by field.</summary>
    public bool IsFile { get; init; }
}

/// <summary>The fields of one kind of description.</summary>
public class FieldSet<T> : FieldSet
    where T : class
{
    private readonly IReadOnlyList<Field<T>> _fields;

    /// <summary>Declares the fields of a group.</summary>
    /// <param name="name">What the group is, in words.</param>
    /// <param name="blank">A description in which nothing was written: presets, and not-a-number or nothing where a value is required.</param>
    /// <param name="fields">The fields.</param>
    public FieldSet(string name, T blank, params IReadOnlyList<Field<T>> fields)
        : base(name)
    {
        Blank = blank;
        _fields = fields;
        foreach (Field<T> field in fields)
            field.Learn(blank);
    }

    /// <summary>A description in which nothing was written.</summary>
    public T Blank { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<Field> Fields => _fields;

    /// <summary>What must hold between fields.</summary>
    public IReadOnlyList<Rule<T>> Rules { get; init; } = [];

    /// <summary>What must hold in the group as a whole: takes the findings, the path of the group and the description.</summary>
    internal Action<Findings, string, T>? Whole { get; init; }

    /// <summary>Reads a description; null where its kind is not known. What is wrong is reported by the source.</summary>
    public virtual T? Read(IFieldSource source)
    {
        int before = source.ProblemCount;
        T item = Blank;
        foreach (Field<T> field in _fields)
            item = field.Read(source, item);
        if (Verdict is not null && source.ProblemCount == before)
        {
            foreach (PlantFinding finding in FindingsOf(item))
                source.Refuse(finding, Verdict);
        }

        return item;
    }

    /// <summary>Everything that is wrong with a description; paths begin below it.</summary>
    public IReadOnlyList<PlantFinding> FindingsOf(T item)
    {
        var findings = new Findings();
        Check(findings, "", item);
        return findings.All;
    }

    internal virtual void Check(Findings findings, string path, T item)
    {
        foreach (Field<T> field in _fields)
        {
            int before = findings.All.Count;
            field.Check(findings, path, item);
            if (findings.All.Count > before)
                continue;
            foreach (Rule<T> rule in Rules.Where(rule => rule.Place == field && !rule.Holds(item)))
                findings.Add(new PlantFinding(!rule.IsWarning, rule.PathIn(path), rule.Found?.Invoke(item) ?? field.Shown(item), rule.Accepted(item)));
        }

        Whole?.Invoke(findings, path, item);
    }
}

/// <summary>What must hold between fields of one description. It is looked at where the field alone is acceptable.</summary>
/// <param name="Place">The field that a finding names.</param>
/// <param name="Holds">Whether it holds.</param>
/// <param name="Accepted">What would be accepted, in words, SI.</param>
public sealed record Rule<T>(Field<T> Place, Func<T, bool> Holds, Func<T, string> Accepted)
{
    /// <summary>Whether a description that breaks it is only unusual.</summary>
    public bool IsWarning { get; init; }

    /// <summary>What a finding shows in place of the field's value.</summary>
    public Func<T, string>? Found { get; init; }

    /// <summary>The field of the group in <see cref="Place"/> that a finding names; null for the group itself.</summary>
    public string? Below { get; init; }

    internal string PathIn(string group) => Below is null ? Place.Below(group) : $"{Place.Below(group)}.{Below}";
}
