using System.Collections.Generic;

namespace LubeController.Analysis.Specification;

/// <summary>The tables that a specification obeys; others than its own are given to it to see that the difference is found.</summary>
/// <param name="Phases">The phase table.</param>
/// <param name="Lifecycle">The lifecycle of an alarm.</param>
/// <param name="Alarms">The alarms, in the order of <see cref="AlarmId"/>.</param>
internal sealed record SpecTables(
    TransitionTable<Phase, PhaseEvent, PhaseGuard> Phases,
    TransitionTable<Lifecycle, LifecycleEvent, LifecycleGuard> Lifecycle,
    IReadOnlyList<AlarmRule> Alarms)
{
    /// <summary>Its own.</summary>
    internal static SpecTables Own { get; } = new(PhaseTable.Rules, LifecycleTable.Rules, AlarmTable.All);
}
