using System;
using System.IO;
using System.Linq;
using LubeController.Analysis.Exploration;
using LubeController.Files.Reading;
using LubeController.Scripts.ScriptFiles;
using LubeController.Tests.Support;

namespace LubeController.Analysis.Tests.Exploration;

/// <summary>The exploration files that ship.</summary>
internal static class ShippedExplorations
{
    private const string Ending = ".exploration.yaml";

    private static string Folder => Path.Combine(Repository.Root, "hil-scripts", "explorations");

    /// <summary>Paths of them all.</summary>
    internal static string[] All() => [.. Directory.GetFiles(Folder, "*" + Ending).Order(StringComparer.Ordinal)];

    /// <summary>The one of a name.</summary>
    internal static ExplorationFile Named(string name) => Read(Path.Combine(Folder, name + Ending));

    /// <summary>Reads one.</summary>
    /// <exception cref="InvalidDataException">It is refused.</exception>
    internal static ExplorationFile Read(string path)
    {
        var problems = new ProblemList();
        return new ExplorationReader(RestRules.All).Read(path, problems) ?? throw new InvalidDataException(string.Join(Environment.NewLine, problems.All));
    }
}
