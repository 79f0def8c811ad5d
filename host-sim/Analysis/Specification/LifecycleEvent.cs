namespace LubeController.Analysis.Specification;

/// <summary>What can happen to an alarm.</summary>
public enum LifecycleEvent
{
    /// <summary>The condition began, its delay on included.</summary>
    ConditionBegins,

    /// <summary>The condition ended, its delay off included.</summary>
    ConditionEnds,

    /// <summary>Acknowledge pressed.</summary>
    Acknowledge,

    /// <summary>Reset has cleared the latch.</summary>
    Reset,

    /// <summary>Shelved by a person.</summary>
    Shelve,

    /// <summary>The shelving time is over, or a person has ended it.</summary>
    ShelvingOver,

    /// <summary>An alarm that causes this one stands.</summary>
    CauseStands,

    /// <summary>No alarm that causes this one stands any more.</summary>
    CauseGone,

    /// <summary>Taken out of service by a person.</summary>
    TakeOutOfService,

    /// <summary>Returned to service by a person.</summary>
    ReturnToService,
}
