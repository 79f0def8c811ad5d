namespace LubeController.Analysis.Specification;

/// <summary>The states of an alarm's lifecycle (ISA-18.2 and IEC 62682, states A to I, with the two latched states as one).</summary>
public enum Lifecycle
{
    /// <summary>Nothing to tell.</summary>
    Normal,

    /// <summary>The alarm is present and nobody has seen it.</summary>
    Unacknowledged,

    /// <summary>The alarm is present and has been seen.</summary>
    Acknowledged,

    /// <summary>The condition has ended before anybody saw the alarm; one that latches may still stand.</summary>
    ReturnedUnacknowledged,

    /// <summary>The condition has ended and the alarm has been seen; it stands until reset.</summary>
    Latched,

    /// <summary>A person has silenced it for a limited time.</summary>
    Shelved,

    /// <summary>It is a consequence of another alarm that stands.</summary>
    SuppressedByDesign,

    /// <summary>A person has taken it out of service.</summary>
    OutOfService,
}
