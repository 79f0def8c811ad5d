using System.Collections.Generic;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Fields;

/// <summary>
/// What is written of one group of fields. Whatever does not fit its field is reported by the source, with file and line, and
/// reads as absent.
/// </summary>
public interface IFieldSource
{
    /// <summary>Problems reported so far by this source and all others of the same file.</summary>
    int ProblemCount { get; }

    /// <summary>Whether a field is written.</summary>
    bool Has(string key);

    /// <summary>Whether a group of fields, not a single value, is written below a field.</summary>
    bool HoldsGroup(string key);

    /// <summary>Reports that a field which must be written is missing.</summary>
    void Missing(Field field);

    /// <summary>Reports a field that may not be written here.</summary>
    void Refuse(string key, string message, string remedy);

    /// <summary>Reports what the check of a whole group found.</summary>
    /// <param name="finding">The finding; its path begins at this group.</param>
    /// <param name="verdict">What that makes of the group, for instance <c>the wiring cannot be so</c>.</param>
    void Refuse(PlantFinding finding, string verdict);

    /// <summary>Reports every written field that only other kinds of the group have.</summary>
    void RefuseForeign(FieldSet own);

    /// <summary>A number in SI, within the field's range.</summary>
    double? Number(INumberField field);

    /// <summary>A time in whole microseconds, within the field's range.</summary>
    long? Microseconds(INumberField field);

    /// <summary>A whole number without unit.</summary>
    int? Whole(string key, int least, int most);

    /// <summary>The index of one of several words.</summary>
    int? Choice(string key, IReadOnlyList<string> words);

    /// <summary>One of two words: whether it is the first.</summary>
    bool? Either(string key, string whenTrue, string whenFalse);

    /// <summary>A text of a form.</summary>
    string? Text(ITextField field);

    /// <summary>The texts of a list.</summary>
    /// <param name="field">The list.</param>
    /// <param name="most">Most items read.</param>
    /// <param name="fits">Whether an item is accepted.</param>
    /// <param name="message">What an item must be.</param>
    /// <param name="remedy">What to write.</param>
    IReadOnlyList<string> Texts(Field field, int most, System.Func<string, bool> fits, string message, string remedy);

    /// <summary>The group below a field.</summary>
    IFieldSource? Group(string key, FieldSet set);

    /// <summary>The groups of a list below a field.</summary>
    IEnumerable<IFieldSource> Items(string key, FieldSet set, int most);
}
