using System;

namespace LubeController.Files.Reading;

/// <summary>Tabs in the indentation, which YAML forbids and editors hide.</summary>
internal static class TabIndent
{
    /// <summary>Whether a tab indents a line; a problem is added for the first one.</summary>
    public static bool Refused(string file, string text, ProblemList problems)
    {
        int number = 0;
        foreach (ReadOnlySpan<char> line in text.AsSpan().EnumerateLines())
        {
            number++;
            ReadOnlySpan<char> content = line.TrimStart();
            int tab = line[..(line.Length - content.Length)].IndexOf('\t');
            if (tab < 0 || content.Length == 0 || content[0] == '#')
                continue;
            int colon = content.IndexOf(':');
            string field = colon > 0 ? content[..colon].TrimStart("- ").ToString() : Problem.WholeFile;
            problems.Add(new Problem(new SourcePlace(file, number, tab + 1), field, content.ToString(), "a tab indents this line", "indent with spaces"));
            return true;
        }

        return false;
    }
}
