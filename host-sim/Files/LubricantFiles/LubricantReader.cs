using LubeController.Files.Fields;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;
using LubeController.Plant.Lubricant;

namespace LubeController.Files.LubricantFiles;

/// <summary>Reads a lubricant file: an oil or a grease, each value with its source, judged by the plant's own check.</summary>
public static class LubricantReader
{
    /// <summary>Reads a lubricant file, or returns null where a problem was added.</summary>
    /// <param name="path">Path as the program may open it.</param>
    /// <param name="problems">Takes what is wrong.</param>
    public static LubricantDescription? Read(string path, ProblemList problems)
    {
        MapNode? top = Inheritance.Read(path, problems);
        if (top == null || FileSort.IsOther(top, FileKeys.Lubricant, problems))
            return null;
        int before = problems.Count;
        LubricantDescription? lubricant = LubricantFields.All.Read(new MapSource(new MapReader(top, FileKeys.Lubricant, problems)));
        return problems.Count == before ? lubricant : null;
    }
}
