using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using LubeController.Analysis.Specification;
using Xunit;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>The diagrams say what the tables say, in identifiers that their readers accept.</summary>
public sealed partial class GraphTests
{
    public static TheoryData<string, int, int> Diagrams => new()
    {
        { PhaseGraph.Mermaid(), 7, 27 },
        { PhaseGraph.Dot(), 7, 27 },
        { LifecycleGraph.Mermaid(), 8, 35 },
        { LifecycleGraph.Dot(), 8, 35 },
    };

    [Theory]
    [MemberData(nameof(Diagrams))]
    public void A_diagram_has_every_state_and_every_edge_once(string diagram, int states, int edges)
    {
        (HashSet<string> declared, List<(string From, string To)> drawn) = Read(diagram);

        Assert.Equal(states, declared.Count);
        Assert.Equal(edges, drawn.Count);
        Assert.Equal(edges, drawn.Distinct().Count());
        Assert.All(drawn, edge => Assert.True(declared.Contains(edge.From) && declared.Contains(edge.To), $"{edge}"));
    }

    /// <summary>The rules' table without its words: where each phase may lead.</summary>
    [Fact]
    public void The_phase_diagram_has_exactly_the_edges_of_the_table()
    {
        var leads = new Dictionary<Phase, Phase[]>
        {
            [Phase.Rest] = [Phase.Rest, Phase.Dose, Phase.Prime, Phase.Stopped, Phase.Failed],
            [Phase.Dose] = [Phase.Rest, Phase.RetryPause, Phase.Stopped, Phase.Failed],
            [Phase.RetryPause] = [Phase.Rest, Phase.Dose, Phase.Stopped, Phase.Failed],
            [Phase.Prime] = [Phase.Rest, Phase.Stopped, Phase.Failed],
            [Phase.Stopped] = [Phase.Rest, Phase.Prime, Phase.Stopped, Phase.Failed, Phase.OutputTest],
            [Phase.Failed] = [Phase.Rest, Phase.Dose, Phase.Prime, Phase.Stopped, Phase.Failed],
            [Phase.OutputTest] = [Phase.Stopped],
        };
        HashSet<(string, string)> expected = [.. leads.SelectMany(from => from.Value.Select(to => (from.Key.ToString(), to.ToString())))];

        Assert.Equal(27, expected.Count);
        Assert.Equal(expected, Read(PhaseGraph.Mermaid()).Edges.ToHashSet());
        Assert.Equal(expected, Read(PhaseGraph.Dot()).Edges.ToHashSet());
    }

    [Fact]
    public void Edges_carry_the_words_of_the_rules()
    {
        Assert.Contains("Dose --> RetryPause : pulse timeout, retries left\n", PhaseGraph.Mermaid());
        Assert.Contains("Dose --> Failed : dose counted, or run time over [a pump-stopping failure stands]<br>pulse timeout, none left, any dose-ending alarm<br>interlock alarm<br>power-up after a cut in this phase [a pump-stopping failure stands]\n", PhaseGraph.Mermaid());
        Assert.Contains("Stopped -> Rest [label=\"start pressed [stop off, no pump-stopping failure stands]\"];\n", PhaseGraph.Dot());
        Assert.Contains("Shelved --> Unacknowledged : shelving over [condition or latch present]\n", LifecycleGraph.Mermaid());
    }

    /// <summary>What remains to itself is power-up.</summary>
    [Fact]
    public void Refused_presses_are_not_drawn() =>
        Assert.Equal(["Rest", "Stopped", "Failed"], Read(PhaseGraph.Dot()).Edges.Where(edge => edge.From == edge.To).Select(edge => edge.From));

    private static (HashSet<string> States, List<(string From, string To)> Edges) Read(string diagram)
    {
        bool mermaid = diagram.StartsWith("stateDiagram-v2\n", StringComparison.Ordinal);
        Assert.True(mermaid || (diagram.StartsWith("digraph ", StringComparison.Ordinal) && diagram.EndsWith("}\n", StringComparison.Ordinal)));
        HashSet<string> states = [];
        List<(string, string)> edges = [];
        foreach (string line in diagram.Split('\n').Skip(1).Select(line => line.Trim()))
        {
            Match state = mermaid ? MermaidState().Match(line) : DotState().Match(line);
            Match edge = mermaid ? MermaidEdge().Match(line) : DotEdge().Match(line);
            if (state.Success)
                Assert.True(states.Add(state.Groups[1].Value), line);
            else if (edge.Success)
                edges.Add((edge.Groups[1].Value, edge.Groups[2].Value));
            else
                Assert.Matches(@"^(|\}|\[\*\] --> \w+|start -> \w+;|start \[.*\];|rankdir=LR;|node \[.*\];)$", line);
        }

        return (states, edges);
    }

    [GeneratedRegex(@"^state ""[a-z ]+"" as ([A-Z][A-Za-z]*)$")]
    private static partial Regex MermaidState();

    [GeneratedRegex(@"^([A-Z][A-Za-z]*) --> ([A-Z][A-Za-z]*) : [^:;""]+$")]
    private static partial Regex MermaidEdge();

    [GeneratedRegex(@"^([A-Z][A-Za-z]*) \[label=""[a-z ]+""\];$")]
    private static partial Regex DotState();

    [GeneratedRegex(@"^([A-Z][A-Za-z]*) -> ([A-Z][A-Za-z]*) \[label=""[^""]+""\];$")]
    private static partial Regex DotEdge();
}
