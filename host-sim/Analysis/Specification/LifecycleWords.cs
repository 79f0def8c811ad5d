using System;

namespace LubeController.Analysis.Specification;

/// <summary>The words a person reads for an alarm's lifecycle.</summary>
public static class LifecycleWords
{
    /// <summary>The state's name.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such state.</exception>
    public static string NameOf(Lifecycle state) => state switch
    {
        Lifecycle.Normal => "normal",
        Lifecycle.Unacknowledged => "unacknowledged",
        Lifecycle.Acknowledged => "acknowledged",
        Lifecycle.ReturnedUnacknowledged => "returned unacknowledged",
        Lifecycle.Latched => "latched",
        Lifecycle.Shelved => "shelved",
        Lifecycle.SuppressedByDesign => "suppressed by design",
        Lifecycle.OutOfService => "out of service",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Not a state of the lifecycle."),
    };

    /// <summary>The event's words.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such event.</exception>
    public static string NameOf(LifecycleEvent happening) => happening switch
    {
        LifecycleEvent.ConditionBegins => "condition begins",
        LifecycleEvent.ConditionEnds => "condition ends",
        LifecycleEvent.Acknowledge => "acknowledge",
        LifecycleEvent.Reset => "reset clears the latch",
        LifecycleEvent.Shelve => "shelve",
        LifecycleEvent.ShelvingOver => "shelving over",
        LifecycleEvent.CauseStands => "its cause stands",
        LifecycleEvent.CauseGone => "its cause is gone",
        LifecycleEvent.TakeOutOfService => "take out of service",
        LifecycleEvent.ReturnToService => "return to service",
        _ => throw new ArgumentOutOfRangeException(nameof(happening), happening, "Not an event."),
    };
}
