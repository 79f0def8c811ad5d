using System;
using System.IO;
using Xunit;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>The specification is a second reading of the rules: it must know nothing of the first.</summary>
public sealed class IndependenceTests
{
    [Fact]
    public void The_specification_names_no_other_room()
    {
        string[] files = Directory.GetFiles(Path.Combine(Root(), "host-sim", "Analysis", "Specification"), "*.cs", SearchOption.AllDirectories);

        Assert.True(files.Length > 20);
        Assert.All(files, file => Assert.DoesNotContain(
            "LubeController.", File.ReadAllText(file).Replace("LubeController.Analysis.Specification", "", StringComparison.Ordinal), StringComparison.Ordinal));
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LubeController.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("No folder above the tests holds LubeController.sln.");
    }
}
