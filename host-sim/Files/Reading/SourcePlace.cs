using System.Globalization;

namespace LubeController.Files.Reading;

/// <summary>Where in a file a text stands.</summary>
/// <param name="File">Path as the user gave it; never null.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
public readonly record struct SourcePlace(string File, int Line, int Column)
{
    /// <summary><c>file:line:column</c>, which terminals and editors make a link of.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}");
}
