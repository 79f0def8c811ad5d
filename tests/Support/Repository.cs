using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Plant.Description;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Tests.Support;

/// <summary>The files of the repository that tests and benchmarks run.</summary>
public static class Repository
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Bench scripts below a folder of <c>hil-scripts</c>, as paths from the root.</summary>
    public static IEnumerable<string> Scripts(string folder) =>
        Directory.GetFiles(Path.Combine(Root, "hil-scripts", folder), "*.yaml")
            .Select(path => Path.GetRelativePath(Root, path))
            .Order(StringComparer.Ordinal);

    /// <summary>Bench scripts of the wiring, where plants and settings lie beside them, as paths from the root.</summary>
    public static IEnumerable<string> WiringScripts => Scripts("wiring").Where(path =>
        !path.EndsWith(".plant.yaml", StringComparison.Ordinal) && !path.EndsWith(".settings.yaml", StringComparison.Ordinal));

    /// <summary>Reads a script, or fails with everything that is wrong with it.</summary>
    public static BenchScript Read(string script)
    {
        var problems = new ProblemList();
        BenchScript? read = new ScriptReader(new EmulatedBench(), RestRules.All).Read(Path.Combine(Root, script), problems);
        return read ?? throw new InvalidDataException(string.Join(Environment.NewLine, problems.All));
    }

    /// <summary>Reads a plant file, or fails with everything that is wrong with it.</summary>
    public static PlantDescription ReadPlant(string plant)
    {
        var problems = new ProblemList();
        LoadedPlant? read = PlantReader.Read(Path.Combine(Root, plant), problems);
        return read?.Plant ?? throw new InvalidDataException(string.Join(Environment.NewLine, problems.All));
    }

    private static string FindRoot()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder != null && !File.Exists(Path.Combine(folder, "LubeController.sln")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new DirectoryNotFoundException("no LubeController.sln above " + AppContext.BaseDirectory);
    }
}
