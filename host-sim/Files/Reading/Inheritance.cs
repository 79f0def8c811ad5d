using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace LubeController.Files.Reading;

/// <summary>
/// Follows <c>based-on</c>: a file takes over what another one says and overrides it field by field. Groups are merged,
/// lists and single values are replaced as a whole, and so is a group that names another <c>kind</c>.
/// </summary>
public static class Inheritance
{
    /// <summary>The field that names the other file, relative to the file that names it.</summary>
    public const string Key = "based-on";

    private const string KindKey = "kind";

    /// <summary>Longest chain of files followed.</summary>
    public const int Longest = 8;

    /// <summary>The merged fields of a file and of all it is based on, or null where a problem was added.</summary>
    public static MapNode? Read(string path, ProblemList problems) => Read(path, problems, []);

    /// <summary>A path written in a file, relative to that file, as the program may open it.</summary>
    public static string Resolve(ScalarNode written) => Beside(written.Place.File, written.Text);

    private static MapNode? Read(string path, ProblemList problems, List<string> chain)
    {
        MapNode? own = YamlTree.Read(path, problems);
        if (own == null || own[Key] is not { } named)
            return own;
        chain.Add(path);
        if (named is not ScalarNode { IsEmpty: false } other)
        {
            problems.Add(named, "the name of one file is expected", "write a path relative to this file");
            return null;
        }

        string next = Resolve(other);
        int seen = chain.FindIndex(link => Same(link, next));
        if (seen >= 0)
        {
            string ring = string.Join(" -> ", chain.Skip(seen).Append(next).Select(Path.GetFileName));
            problems.Add(other, $"the files are based on each other in a ring: {ring}", "let one of them stand alone");
            return null;
        }

        if (chain.Count >= Longest)
        {
            problems.Add(other, $"more than {Longest} files are based on each other in a row", "shorten the chain");
            return null;
        }

        if (!File.Exists(next))
        {
            problems.Add(other, $"the file it is based on is missing; looked for {Path.GetFullPath(next)}", "correct the path, which is relative to this file");
            return null;
        }

        MapNode? basis = Read(next, problems, chain);
        return basis == null ? null : Merge(basis, own);
    }

    private static MapNode Merge(MapNode basis, MapNode own)
    {
        var merged = new List<MapEntry>();
        foreach (MapEntry entry in basis.Entries)
        {
            if (entry.Key == Key && basis.Path.Length == 0)
                continue;
            MapEntry? over = own.Find(entry.Key);
            merged.Add(over == null ? entry
                : entry.Value is MapNode below && over.Value is MapNode above && !IsOtherKind(below, above) ? over with { Value = Merge(below, above) }
                : over);
        }

        merged.AddRange(own.Entries.Where(entry => basis.Find(entry.Key) == null));
        return new MapNode(own.Place, own.Path, merged);
    }

    private static bool IsOtherKind(MapNode below, MapNode above) =>
        below[KindKey] is ScalarNode old && above[KindKey] is ScalarNode own && old.Text != own.Text;

    private static string Beside(string file, string relative)
    {
        string joined = Path.Combine(Path.GetDirectoryName(file) ?? "", relative);
        return Path.IsPathRooted(joined) ? Path.GetFullPath(joined) : Path.GetRelativePath(Directory.GetCurrentDirectory(), Path.GetFullPath(joined)).Replace('\\', '/');
    }

    private static bool Same(string first, string second) =>
        string.Equals(Path.GetFullPath(first), Path.GetFullPath(second), StringComparison.Ordinal);
}
