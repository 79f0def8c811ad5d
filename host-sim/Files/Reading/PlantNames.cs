using System.Linq;

namespace LubeController.Files.Reading;

/// <summary>Names of sections, outlets and switches, which become parts of signal names.</summary>
public static class PlantNames
{
    private const int Longest = 40;

    /// <summary>A name that must be there; empty where a problem was added.</summary>
    public static string Need(MapReader group, string key, string example)
    {
        if (!group.Has(key))
            group.Missing(key, $"write for instance '{key}: {example}'");
        if (group.Single(key) is not { } node)
            return "";
        if (IsName(node.Text))
            return node.Text;
        group.Problems.Add(node, $"a name has letters, digits and hyphens, at most {Longest}", $"write for instance '{example}'");
        return "";
    }

    /// <summary>Whether a text may be a name.</summary>
    public static bool IsName(string text) =>
        text.Length is > 0 and <= Longest && char.IsAsciiLetterOrDigit(text[0]) && text.All(character => char.IsAsciiLetterOrDigit(character) || character == '-');
}
