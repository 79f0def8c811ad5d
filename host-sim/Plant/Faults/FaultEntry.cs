namespace LubeController.Plant.Faults;

/// <summary>One application of a fault: when it came, whether it took effect, when it went.</summary>
/// <param name="Fault">The fault.</param>
/// <param name="Part">Name of the part, empty where there is nothing to choose.</param>
/// <param name="AppliedUs">When it was applied, us.</param>
public readonly record struct FaultEntry(Fault Fault, string Part, long AppliedUs)
{
    /// <summary>When it was first seen to make a difference, us; -1 if it never did.</summary>
    public long EffectUs { get; init; } = -1;

    /// <summary>When it was healed or replaced by another magnitude, us; -1 if it is still in place.</summary>
    public long EndedUs { get; init; } = -1;

    /// <summary>Whether it ever made a difference.</summary>
    public bool TookEffect => EffectUs >= 0;
}
