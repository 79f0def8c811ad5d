using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;

namespace LubeController.Files.Fields;

/// <summary>The lubricant of a plant: the file that it names, with single values replaced by those in the plant file.</summary>
internal static class NamedFile
{
    /// <summary>The merged fields, or null where a problem was added.</summary>
    /// <param name="group">The group that names the file.</param>
    public static MapReader? Read(MapReader group)
    {
        if (!group.Has(FieldKeys.File))
            group.Missing(FieldKeys.File, "write the path of a lubricant file, relative to this one, for instance '../lubricants/nlgi-1.lubricant.yaml'");
        if (group.Single(FieldKeys.File) is not { } named)
            return null;
        string path = Inheritance.Resolve(named);
        if (!File.Exists(path))
        {
            group.Problems.Add(named, $"the lubricant file is missing; looked for {Path.GetFullPath(path)}", "correct the path, which is relative to the file that names it");
            return null;
        }

        MapNode? file = Inheritance.Read(path, group.Problems);
        if (file == null || FileSort.IsOther(file, FileKeys.Lubricant, group.Problems))
            return null;
        MapEntry[] own = group.Map.Entries.Where(entry => group.Keys.Has(entry.Key) && entry.Key != FieldKeys.File).ToArray();
        IEnumerable<MapEntry> kept = file.Entries.Where(entry => !own.Any(over => over.Key == entry.Key));
        return new MapReader(new MapNode(file.Place, file.Path, [.. kept, .. own]), FileKeys.Lubricant, group.Problems);
    }
}
