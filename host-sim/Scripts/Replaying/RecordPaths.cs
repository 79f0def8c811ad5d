using System;
using System.IO;
using System.Linq;

namespace LubeController.Scripts.Replaying;

/// <summary>Where the records of a script stand in a folder of records: under the script's own path, seen from here.</summary>
public static class RecordPaths
{
    /// <summary>Path of a record.</summary>
    /// <param name="folder">Folder of records.</param>
    /// <param name="script">Path of the script.</param>
    /// <param name="extension">Extension with its dot.</param>
    public static string Of(string folder, string script, string extension)
    {
        string seen = Path.GetRelativePath(Directory.GetCurrentDirectory(), Path.GetFullPath(script));
        string[] parts = seen.Split('/', '\\').Select(part => part.Replace(":", "", StringComparison.Ordinal)).Where(part => part.Length > 0 && part is not ("." or "..")).ToArray();
        string last = parts[^1].EndsWith(".yaml", StringComparison.Ordinal) ? parts[^1][..^".yaml".Length] : parts[^1];
        return Path.Combine([folder, .. parts[..^1], last + extension]);
    }
}
