using LubeController.Plant.Checking;

namespace LubeController.Plant.Fields;

/// <summary>
/// One field of a description, declared once: reading it from a file, checking it, the place of a finding, the JSON Schema and
/// the reference page all follow from this declaration.
/// </summary>
/// <param name="key">Its name in files, lower case with hyphens.</param>
/// <param name="meaning">What it is, one or more sentences; empty where the key says all.</param>
public abstract class Field(string key, string meaning)
{
    /// <summary>Its name in files.</summary>
    public string Key { get; } = key;

    /// <summary>What it is; may be empty.</summary>
    public string Meaning { get; } = meaning;

    /// <summary>Whether a file must have it.</summary>
    public bool Required { get; init; }

    /// <summary>What to write where it is missing; null for what its kind of field says.</summary>
    public string? Remedy { get; init; }

    /// <summary>What holds where it is not written and the description has no value for it; null where it has one.</summary>
    public string? Absent { get; init; }

    /// <summary>The path of this field below the path of its group; an empty path is the top of a file.</summary>
    public string Below(string group) => group.Length == 0 ? Key : $"{group}.{Key}";
}

/// <summary>A field of one kind of description.</summary>
/// <typeparam name="T">The description.</typeparam>
public abstract class Field<T>(string key, string meaning) : Field(key, meaning)
{
    /// <summary>Takes the value from what is written; a value that is absent or was refused leaves the description as it is.</summary>
    public abstract T Read(IFieldSource source, T into);

    /// <summary>Adds what the value may not be.</summary>
    /// <param name="findings">Takes it.</param>
    /// <param name="group">Path of the group.</param>
    /// <param name="item">The description.</param>
    internal abstract void Check(Findings findings, string group, T item);

    /// <summary>The value as a finding shows it, in SI.</summary>
    internal abstract string Shown(T item);

    /// <summary>Learns the presets from a description in which nothing was written.</summary>
    internal virtual void Learn(T blank)
    {
    }
}
