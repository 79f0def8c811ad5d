using LubeController.Plant.Faults;

namespace LubeController.Plant.Sensors;

/// <summary>Faults of the pressure switch.</summary>
public static class PressureSwitchFaults
{
    private const string AnotherLevel = "a level other than the sound one";

    internal static readonly FaultPart<PressureSwitch> Switch = new();

    /// <summary>The pressure switch reads on for ever.</summary>
    public static Fault StuckOn { get; } = new PlantFault<PressureSwitch>(Switch)
    {
        Name = "pressure-switch-stuck-on",
        Place = "the pressure switch",
        Manner = FaultManner.Stuck,
        Effect = "The pressure switch reads on, whatever the pressure.",
        Noticed = "Its lamp is on while the gauge stands at zero.",
        Needs = AnotherLevel,
        Change = (pressure, fault) => pressure.StuckOn = fault.On,
        Differs = (pressure, _) => pressure.Differs(stuckOn: true),
    };

    /// <summary>The pressure switch reads off for ever.</summary>
    public static Fault StuckOff { get; } = new PlantFault<PressureSwitch>(Switch)
    {
        Name = "pressure-switch-stuck-off",
        Place = "the pressure switch",
        Manner = FaultManner.Stuck,
        Effect = "The pressure switch reads off, whatever the pressure.",
        Noticed = "Its lamp stays off while the gauge stands high.",
        Needs = AnotherLevel,
        Change = (pressure, fault) => pressure.StuckOff = fault.On,
        Differs = (pressure, _) => pressure.Differs(stuckOn: false),
    };
}
