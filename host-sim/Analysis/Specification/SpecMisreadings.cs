using System;
using System.Collections.Generic;

namespace LubeController.Analysis.Specification;

/// <summary>
/// Readings other than the specification's own, given to it to see that the lockstep finds the difference: what a machine hears in
/// place of what happens in a state (null: nothing), and the alarm table.
/// </summary>
/// <param name="Phases">What the phase machine hears.</param>
/// <param name="Lifecycle">What an alarm's lifecycle hears.</param>
/// <param name="Alarms">The alarms, in the order of <see cref="AlarmId"/>.</param>
internal sealed record SpecMisreadings(
    Func<Phase, PhaseEvent, PhaseEvent?> Phases,
    Func<Lifecycle, LifecycleEvent, LifecycleEvent?> Lifecycle,
    IReadOnlyList<AlarmRule> Alarms)
{
    /// <summary>None: everything is heard as it happens.</summary>
    internal static SpecMisreadings None { get; } = new((_, happening) => happening, (_, happening) => happening, AlarmTable.All);
}
