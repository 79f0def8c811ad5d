using LubeController.Plant.Contacts;

namespace LubeController.Plant.Reservoir;

/// <summary>The reservoir and its two level switches. Volumes in m3.</summary>
public sealed record ReservoirDescription
{
    /// <summary>Volume that it holds when full, m3, 1e-5 to 10.</summary>
    public required double CapacityM3 { get; init; }

    /// <summary>Content at the start, m3, 0 to <see cref="CapacityM3"/>.</summary>
    public required double ContentM3 { get; init; }

    /// <summary>The low switch is actuated at and below this content, m3; at least <see cref="EmptyLevelM3"/>, at most <see cref="CapacityM3"/>.</summary>
    public required double LowLevelM3 { get; init; }

    /// <summary>The empty switch is actuated at and below this content, m3, 0 to <see cref="LowLevelM3"/>.</summary>
    public required double EmptyLevelM3 { get; init; }

    /// <summary>A level switch releases when the content has risen by this much above its level, m3; 0 up to half the capacity. Default 0.</summary>
    public double LevelHysteresisM3 { get; init; }

    /// <summary>
    /// Below this content the pump draws air too: none at it, all air at nothing, m3, 0 to <see cref="CapacityM3"/>. Default 0:
    /// air only with the last 10 mm3.
    /// </summary>
    public double AeratesBelowM3 { get; init; }

    /// <summary>Air finely spread in the lubricant, fraction of its volume at atmosphere, 0 to 0.2. Default 0.</summary>
    public double EntrainedAir { get; init; }

    /// <summary>Contact of the low switch.</summary>
    public SwitchContact LowContact { get; init; } = SwitchContact.NormallyOpen;

    /// <summary>Contact of the empty switch.</summary>
    public SwitchContact EmptyContact { get; init; } = SwitchContact.NormallyOpen;
}
