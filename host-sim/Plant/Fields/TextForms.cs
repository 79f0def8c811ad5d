using System.Linq;

namespace LubeController.Plant.Fields;

/// <summary>What texts of each form may hold.</summary>
public static class TextForms
{
    /// <summary>Longest name.</summary>
    public const int LongestName = 40;

    /// <summary>Longest name of a terminal.</summary>
    public const int LongestTerminal = 20;

    /// <summary>Whether a text may be a name, which becomes part of signal names.</summary>
    public static bool IsName(string text) =>
        text.Length is > 0 and <= LongestName && char.IsAsciiLetterOrDigit(text[0]) && text.All(character => char.IsAsciiLetterOrDigit(character) || character == '-');

    /// <summary>Whether a text may be a terminal.</summary>
    public static bool IsTerminal(string text) =>
        text.Length is > 0 and <= LongestTerminal && text.All(character => char.IsAsciiLetterOrDigit(character) || character is '-' or '+' or '.' or ':' or '/');
}
