using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Files.LubricantFiles;
using LubeController.Files.Reading;
using LubeController.Plant.Lubricant;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>The lubricants that plants of the repository use.</summary>
internal static class LubricantFiles
{
    /// <summary>All of them, so that no test of all passes where there are none.</summary>
    internal static IReadOnlyList<LubricantDescription> All { get; } = ReadAll();

    private static LubricantDescription[] ReadAll()
    {
        LubricantDescription[] all = [.. Directory.GetFiles(Path.Combine(Repository.Root, "hil-scripts", "lubricants"), "*.lubricant.yaml").Order(System.StringComparer.Ordinal).Select(Read)];
        Assert.NotEmpty(all);
        return all;
    }

    internal static LubricantDescription Named(string name) => All.Single(lubricant => lubricant.Name == name);

    private static LubricantDescription Read(string path)
    {
        var problems = new ProblemList();
        LubricantDescription? lubricant = LubricantReader.Read(path, problems);
        Assert.Empty(problems.All.Select(problem => problem.ToString()));
        return lubricant!;
    }
}
