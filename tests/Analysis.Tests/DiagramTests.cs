using System;
using System.IO;
using LubeController.Analysis.Specification;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Analysis.Tests;

/// <summary>The diagrams on the pages are those that the specification draws: <c>lubebench graph</c> writes them anew.</summary>
public sealed class DiagramTests
{
    [Fact]
    public void The_readme_shows_the_phases() => AssertShown("README.md", PhaseGraph.Mermaid());

    [Fact]
    public void The_page_for_contributors_shows_the_lifecycle() => AssertShown("DEVELOPERS.md", LifecycleGraph.Mermaid());

    private static void AssertShown(string page, string diagram) => Assert.Contains(
        "```mermaid\n" + diagram.ReplaceLineEndings("\n").TrimEnd() + "\n```",
        File.ReadAllText(Path.Combine(Repository.Root, page)).ReplaceLineEndings("\n"),
        StringComparison.Ordinal);
}
