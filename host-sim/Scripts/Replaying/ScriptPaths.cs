using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Files.Reading;

namespace LubeController.Scripts.Replaying;

/// <summary>
/// Finds the scripts that files, folders and patterns name. In folders and patterns, files that end in
/// <c>.plant.yaml</c>, <c>.lubricant.yaml</c>, <c>.settings.yaml</c>, <c>.exploration.yaml</c> and <c>.base.yaml</c> are not scripts by themselves; every other
/// <c>.yaml</c> must be one, so that a broken script is never passed over.
/// </summary>
public static class ScriptPaths
{
    private static readonly string[] NotScripts = [".plant.yaml", ".lubricant.yaml", ".settings.yaml", ".exploration.yaml", ".base.yaml"];

    /// <summary>The scripts, each once, in the order of the paths and then of their names.</summary>
    /// <param name="paths">Files, folders and patterns.</param>
    /// <param name="complaints">Takes one sentence for each path that names no script.</param>
    public static IReadOnlyList<string> Find(IReadOnlyList<string> paths, ICollection<string> complaints)
    {
        ArgumentNullException.ThrowIfNull(paths);
        ArgumentNullException.ThrowIfNull(complaints);
        var found = new List<string>();
        var known = new HashSet<string>(StringComparer.Ordinal);
        foreach (string path in paths)
        {
            foreach (string script in Under(path, complaints))
            {
                if (known.Add(Path.GetFullPath(script)))
                    found.Add(script.Replace('\\', '/'));
            }
        }

        return found;
    }

    private static IEnumerable<string> Under(string path, ICollection<string> complaints)
    {
        if (string.IsNullOrWhiteSpace(path) || path.Contains('\0'))
        {
            complaints.Add($"'{ShortText.Of(path)}' is no path; name a file, a folder or a pattern");
            return [];
        }

        if (File.Exists(path))
            return [path];
        if (Directory.Exists(path))
        {
            string[] inside = Directory.EnumerateFiles(path, "*.yaml", SearchOption.AllDirectories).Where(IsScript).Order(StringComparer.Ordinal).ToArray();
            if (inside.Length == 0)
                complaints.Add($"the folder '{path}' holds no script; scripts end in .yaml, but not in {string.Join(", ", NotScripts)}");
            return inside;
        }

        if (!PathPattern.Is(path))
        {
            complaints.Add($"there is no file or folder '{path}' ({Path.GetFullPath(path)}); correct the path");
            return [];
        }

        string[] matching = PathPattern.Files(path).Where(IsScript).ToArray();
        if (matching.Length == 0)
            complaints.Add($"the pattern '{path}' matches no script; it was looked for from {Directory.GetCurrentDirectory()}");
        return matching;
    }

    private static bool IsScript(string path) =>
        path.EndsWith(".yaml", StringComparison.Ordinal) && !NotScripts.Any(end => path.EndsWith(end, StringComparison.Ordinal));
}
