namespace LubeController.Core;

/// <summary>What a saved state is for.</summary>
public enum StateUse
{
    /// <summary>To be kept: sealed with a check value, and refused where that does not agree.</summary>
    Keep = 0,

    /// <summary>To go on from within the same program, as if no time had passed: not sealed, and not refused.</summary>
    Step = 1,

    /// <summary>To be compared with others: what can still change an output, and nothing else. It cannot be restored.</summary>
    Compare = 2,
}
