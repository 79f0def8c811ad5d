using LubeController.Plant.Faults;

namespace LubeController.Plant.Sensors;

/// <summary>Faults of a level switch.</summary>
public static class LevelSwitchFaults
{
    private const string AnotherLevel = "a level other than the sound one";

    internal static readonly FaultPart<LevelSwitch> Switch = new("low or empty");

    /// <summary>A level switch reads on for ever.</summary>
    public static Fault StuckOn { get; } = new PlantFault<LevelSwitch>(Switch)
    {
        Name = "level-switch-stuck-on",
        Place = "the level switch",
        Manner = FaultManner.Stuck,
        Effect = "The level switch reads on, whatever the content.",
        Noticed = "Its lamp is on although the sight glass shows another level.",
        Needs = AnotherLevel,
        Change = (level, fault) => level.StuckOn = fault.On,
        Differs = (level, _) => level.Differs(stuckOn: true),
    };

    /// <summary>A level switch reads off for ever.</summary>
    public static Fault StuckOff { get; } = new PlantFault<LevelSwitch>(Switch)
    {
        Name = "level-switch-stuck-off",
        Place = "the level switch",
        Manner = FaultManner.Stuck,
        Effect = "The level switch reads off, whatever the content.",
        Noticed = "Nothing, until the reservoir is found low or empty without a word.",
        Needs = AnotherLevel,
        Change = (level, fault) => level.StuckOff = fault.On,
        Differs = (level, _) => level.Differs(stuckOn: false),
    };
}
