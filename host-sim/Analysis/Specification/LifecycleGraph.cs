namespace LubeController.Analysis.Specification;

/// <summary>Diagrams of the alarm lifecycle, generated from the machine itself; the same text on every run.</summary>
public static class LifecycleGraph
{
    /// <summary>As a Mermaid state diagram.</summary>
    public static string Mermaid() => Graph().Mermaid();

    /// <summary>In the DOT language.</summary>
    public static string Dot() => Graph().Dot();

    private static StateGraph Graph() => StateGraph.FromMachine<Lifecycle, LifecycleEvent>(
        "lifecycle", LifecycleMachine.Build(new AlarmState()).GetInfo(), LifecycleWords.NameOf, LifecycleWords.NameOf);
}
