namespace LubeController.Files.Reading;

/// <summary>One thing wrong with a file, told so that a person can mend it.</summary>
/// <param name="Place">File, line and column.</param>
/// <param name="Field">Dotted path of the field, for instance <c>steps[2].at</c> (lists count from 0), or <see cref="WholeFile"/>.</param>
/// <param name="Value">The value found; shortened when printed.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Remedy">What would be accepted.</param>
public sealed record Problem(SourcePlace Place, string Field, string Value, string Message, string Remedy)
{
    /// <summary>Stands for a field where the file as a whole is at fault.</summary>
    public const string WholeFile = "(whole file)";

    /// <summary>Whether there is no text to point at: the file is missing, or is a folder.</summary>
    public bool IsOfPath { get; init; }

    /// <summary>One line: <c>file:line:column: field 'steps[2].at' is '5 bananas': what is wrong; what would do</c>; of a path only <c>file: what is wrong; what would do</c>.</summary>
    public override string ToString() =>
        IsOfPath ? $"{Place.File}: {Message.TrimEnd('.')}; {Remedy}"
        : $"{Place}: field '{(Field.Length == 0 ? WholeFile : Field)}' is '{ShortText.Of(Value)}': {Message.TrimEnd('.')}; {Remedy}";
}
