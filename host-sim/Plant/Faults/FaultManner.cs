namespace LubeController.Plant.Faults;

/// <summary>How a part fails: one vocabulary for every part.</summary>
public enum FaultManner
{
    /// <summary>It does nothing.</summary>
    Off,

    /// <summary>It stays in one state.</summary>
    Stuck,

    /// <summary>It lets pass what it should hold.</summary>
    Leaking,

    /// <summary>It holds, wholly or in part, what it should let pass.</summary>
    Blocked,

    /// <summary>It comes and goes.</summary>
    Intermittent,

    /// <summary>It does what it should, but late or weakly.</summary>
    Slow,

    /// <summary>It shows, gives or takes something other than it should.</summary>
    Wrong,
}
