using System.Linq;
using LubeController.Files.Reading;

namespace LubeController.Files.Sorts;

/// <summary>Tells a plant, a lubricant, a settings file and a script apart, so that one in place of another is told in one line.</summary>
public static class FileSort
{
    /// <summary>Whether a file is plainly of another sort than expected; then a problem is added.</summary>
    /// <param name="top">The file.</param>
    /// <param name="expected">Fields of the sort expected.</param>
    /// <param name="problems">Takes the problem.</param>
    public static bool IsOther(MapNode top, KeySet expected, ProblemList problems)
    {
        KeySet[] sorts = [FileKeys.Script, FileKeys.Plant, FileKeys.Settings, FileKeys.Lubricant];
        KeySet likeliest = sorts.MaxBy(sort => Known(top, sort))!;
        if (Known(top, likeliest) == 0 || Known(top, expected) * 2 > Known(top, likeliest))
            return false;
        problems.Add(new Problem(top.Place, Problem.WholeFile, top.Place.File, $"this is {likeliest.Name}, but {expected.Name} is expected here", "name the right file"));
        return true;
    }

    private static int Known(MapNode top, KeySet sort) => top.Entries.Count(entry => entry.Key != Inheritance.Key && sort.Has(entry.Key));
}
