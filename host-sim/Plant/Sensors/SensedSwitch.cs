namespace LubeController.Plant.Sensors;

/// <summary>A cycle switch whose loop is described, and the cores of its cable that are meant.</summary>
/// <param name="Switch">The switch.</param>
/// <param name="Core">The core, or the first of two.</param>
/// <param name="Other">The other of two.</param>
internal sealed record SensedSwitch(CycleSwitch Switch, CableCore Core = default, CableCore Other = default)
{
    /// <summary>Whether the level is other than the sound loop's, and no contact that sticks gives it.</summary>
    internal bool IsWrong => Switch.IsWrong && !Switch.Sticks;

    /// <summary>Its loop, brought up to a time.</summary>
    internal SensedLevel At(long nowUs)
    {
        Switch.Follow(nowUs);
        return Switch.Sensed!;
    }
}
