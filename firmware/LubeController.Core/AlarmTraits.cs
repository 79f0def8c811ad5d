using System;

namespace LubeController.Core;

/// <summary>What else is fixed of an alarm, one bit each, below bit 8.</summary>
[Flags]
internal enum AlarmTraits
{
    None = 0,

    /// <summary>It stands until reset after its condition has ended.</summary>
    Latches = 1,

    /// <summary>A delay before it is raised may be set.</summary>
    TakesDelayOn = 2,

    /// <summary>Its condition ends as soon as it has come.</summary>
    Momentary = 4,

    /// <summary>It may escalate to a failure.</summary>
    BecomesFailure = 8,

    /// <summary>Escalated, it also ends a dose.</summary>
    BecomesDoseEnding = 16,
}
