using System;

namespace LubeController.Scripts.Records;

/// <summary>A cell of comma-separated values, by RFC 4180.</summary>
public static class CsvCell
{
    /// <summary>The text as it stands in a line: in quotes where a comma, a quote or an end of line in it would be read as more than text.</summary>
    public static string Quoted(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.AsSpan().IndexOfAny(",\"\n\r") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
