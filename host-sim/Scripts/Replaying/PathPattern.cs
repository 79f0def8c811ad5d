using System;
using System.Collections.Generic;
using System.IO;
using System.IO.Enumeration;
using System.Linq;

namespace LubeController.Scripts.Replaying;

/// <summary>Patterns of paths with <c>*</c>, <c>?</c> and <c>**</c>, for shells that leave them to the program.</summary>
internal static class PathPattern
{
    /// <summary>Whether a path is a pattern.</summary>
    public static bool Is(string path) => path.AsSpan().ContainsAny('*', '?');

    /// <summary>The files that match, in order of their paths.</summary>
    public static IEnumerable<string> Files(string pattern)
    {
        string[] parts = pattern.Replace('\\', '/').Split('/', StringSplitOptions.RemoveEmptyEntries);
        string root = pattern.StartsWith('/') ? "/" : "";
        return Match(root, parts).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);
    }

    private static IEnumerable<string> Match(string folder, ReadOnlyMemory<string> parts)
    {
        string part = parts.Span[0];
        ReadOnlyMemory<string> rest = parts[1..];
        if (part == "**")
        {
            ReadOnlyMemory<string> below = rest.Length == 0 ? new[] { "*" } : rest;
            return Folders(folder).SelectMany(inner => Match(inner, parts)).Concat(Match(folder, below));
        }

        if (rest.Length == 0)
            return Entries(folder, part, Directory.EnumerateFiles).Where(File.Exists);
        return Entries(folder, part, Directory.EnumerateDirectories).SelectMany(inner => Match(inner, rest));
    }

    private static IEnumerable<string> Folders(string folder) => Entries(folder, "*", Directory.EnumerateDirectories);

    private static IEnumerable<string> Entries(string folder, string part, Func<string, IEnumerable<string>> list)
    {
        if (!Is(part))
            return [Path.Combine(folder, part)];
        string where = folder.Length == 0 ? "." : folder;
        return !Directory.Exists(where) ? [] : list(where).Select(path => Path.GetFileName(path)!)
            .Where(name => FileSystemName.MatchesSimpleExpression(part, name, ignoreCase: false))
            .Select(name => Path.Combine(folder, name));
    }
}
