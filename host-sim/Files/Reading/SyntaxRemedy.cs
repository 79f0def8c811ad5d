using System;
using YamlDotNet.Core;

namespace LubeController.Files.Reading;

/// <summary>Says what to do about the parser's complaints, which name only what it did not find.</summary>
internal static class SyntaxRemedy
{
    private const string General = "compare the line with a script that ships in hil-scripts";

    private static readonly (string Sign, string Remedy)[] Known =
    [
        ("quoted scalar", "close the quotation mark on the same line"),
        ("did not find expected ',' or ']'", "separate the items by commas and close the list with ']'"),
        ("did not find expected ',' or '}'", "separate the fields by commas and close the group with '}'"),
        ("could not find expected ':'", "write a colon and a space after the field's name"),
        ("did not find expected key", "give the fields of one group the same indentation"),
        ("did not find expected '-' indicator", "begin each item of the list with '- ' at the same indentation"),
        ("cannot start any token", "put quotes around a value that begins with '@', '`' or '%'"),
        ("mapping values are not allowed", "put quotes around a value that holds ': ', or begin a new line"),
        ("tab", "use spaces"),
        ("block sequence entries are not allowed", "begin a list on a line of its own"),
        ("escape", "inside double quotes write a backslash twice"),
        ("directive", "delete the line that begins with '%'"),
        ("node content", "write a value here"),
    ];

    /// <summary>The parser's own words, without its capital and stop.</summary>
    public static string Message(YamlException reason)
    {
        string words = reason.Message.Trim().TrimEnd('.');
        return words.Length == 0 ? "not readable as YAML" : "not readable as YAML: " + char.ToLowerInvariant(words[0]) + words[1..];
    }

    /// <summary>What to do; never null.</summary>
    public static string For(YamlException reason)
    {
        foreach ((string sign, string remedy) in Known)
        {
            if (reason.Message.Contains(sign, StringComparison.OrdinalIgnoreCase))
                return remedy;
        }

        return General;
    }
}
