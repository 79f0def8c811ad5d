namespace LubeController.Core;

/// <summary>The state of one alarm as ISA-18.2 and IEC 62682 name it, with latched states of their own.</summary>
public enum AlarmState
{
    /// <summary>The condition is absent and nothing waits.</summary>
    Normal = 0,

    /// <summary>Active and not acknowledged.</summary>
    Unacknowledged = 1,

    /// <summary>Active and acknowledged.</summary>
    Acknowledged = 2,

    /// <summary>Returned to normal and not acknowledged.</summary>
    ReturnedUnacknowledged = 3,

    /// <summary>The condition has ended, the latch has not been reset, and it was not acknowledged.</summary>
    LatchedUnacknowledged = 4,

    /// <summary>The condition has ended, the latch has not been reset, and it was acknowledged.</summary>
    LatchedAcknowledged = 5,

    /// <summary>A person has hidden it for a limited time.</summary>
    Shelved = 6,

    /// <summary>Hidden because it follows from another alarm that is shown.</summary>
    SuppressedByDesign = 7,

    /// <summary>A person has taken it out of service, without a limit.</summary>
    OutOfService = 8,
}
