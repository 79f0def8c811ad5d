using System.Linq;
using LubeController.Files.Fields;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;
using LubeController.Plant.Checking;
using LubeController.Plant.Description;

namespace LubeController.Files.PlantFiles;

/// <summary>Reads a plant file: one lubrication system with units, then judged as a whole by the plant's own check.</summary>
public static class PlantReader
{
    /// <summary>Reads a plant file, or returns null where a problem was added.</summary>
    /// <param name="path">Path as the program may open it.</param>
    /// <param name="problems">Takes what is wrong.</param>
    public static LoadedPlant? Read(string path, ProblemList problems)
    {
        MapNode? top = Inheritance.Read(path, problems);
        if (top == null || FileSort.IsOther(top, FileKeys.Plant, problems))
            return null;
        int before = problems.Count;
        PlantDescription? plant = PlantFields.All.Read(new MapSource(new MapReader(top, FileKeys.Plant, problems)));
        if (plant == null || problems.Count > before)
            return null;
        ILookup<bool, Problem> findings = PlantCheck.Of(plant).ToLookup(finding => finding.IsRefusal, finding => Tell(top, finding));
        foreach (Problem refusal in findings[true])
            problems.Add(refusal);
        return findings[true].Any() ? null : new LoadedPlant(plant, [.. findings[false]]);
    }

    private static Problem Tell(MapNode top, PlantFinding finding) =>
        FindingPlaces.Problem(top, finding, finding.IsRefusal ? "the plant cannot be built so" : "the plant can be built, but this is unusual");
}
