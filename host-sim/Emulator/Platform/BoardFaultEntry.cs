namespace LubeController.Emulator.Platform;

/// <summary>One application of a fault of the board: when it came, whether it took effect, when it went.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Part">Name of the part, empty where there is nothing to choose.</param>
/// <param name="AppliedUs">When it was applied, us.</param>
public readonly record struct BoardFaultEntry(BoardFaultKind Kind, string Part, long AppliedUs)
{
    /// <summary>Whether the board ever did something otherwise because of it.</summary>
    public bool TookEffect { get; init; }

    /// <summary>When it was healed or replaced by another magnitude, us; -1 if it is still in place.</summary>
    public long EndedUs { get; init; } = -1;
}
