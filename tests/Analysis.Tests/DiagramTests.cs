using LubeController.Analysis.Specification;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Analysis.Tests;

/// <summary>The diagrams on the pages are those that the specification draws.</summary>
[Trait("Renews", "pages")]
public sealed class DiagramTests
{
    private const string Start = "\n```mermaid\n";
    private const string End = "\n```\n";

    [Fact]
    public void The_readme_shows_the_phases() => AssertShown("README.md", PhaseGraph.Mermaid());

    [Fact]
    public void The_page_for_contributors_shows_the_lifecycle() => AssertShown("DEVELOPERS.md", LifecycleGraph.Mermaid());

    private static void AssertShown(string path, string diagram) => MadePage.Check(path, page =>
    {
        Assert.Equal(2, page.Split(Start).Length);
        return MadePage.Between(page, Start, End, diagram.ReplaceLineEndings("\n").TrimEnd());
    });
}
