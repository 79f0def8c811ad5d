namespace LubeController.Analysis.Specification;

/// <summary>Diagrams of the phase machine, generated from the machine itself; the same text on every run.</summary>
public static class PhaseGraph
{
    /// <summary>As a Mermaid state diagram.</summary>
    public static string Mermaid() => Graph().Mermaid();

    /// <summary>In the DOT language.</summary>
    public static string Dot() => Graph().Dot();

    private static StateGraph Graph() => StateGraph.FromMachine<Phase, PhaseEvent>(
        "phases", new LubricationSpecification(new SpecSettings()).PhaseInfo, PhaseWords.NameOf, PhaseWords.NameOf);
}
