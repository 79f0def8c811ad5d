namespace LubeController.Analysis.Specification;

/// <summary>What can happen to an alarm, in the order of the rows of the lifecycle table.</summary>
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

/// <summary>The conditions that the cells of the lifecycle table name.</summary>
public enum LifecycleGuard
{
    /// <summary>No condition.</summary>
    Always,

    /// <summary>The condition is present.</summary>
    Active,

    /// <summary>The condition is gone and only the latch holds the alarm.</summary>
    LatchOnly,

    /// <summary>The latch holds the alarm.</summary>
    Latched,

    /// <summary>No latch holds the alarm.</summary>
    NotLatched,

    /// <summary>The condition is present, the latch of a latching alarm being its present condition.</summary>
    Stands,

    /// <summary>Neither condition nor latch.</summary>
    Gone,
}
