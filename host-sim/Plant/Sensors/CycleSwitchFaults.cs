using LubeController.Plant.Faults;

namespace LubeController.Plant.Sensors;

/// <summary>Faults of a cycle switch's contact and of its wire.</summary>
public static class CycleSwitchFaults
{
    private const string AnotherLevel = "a level other than the sound one";

    internal static readonly FaultPart<CycleSwitch> Switch = new("cycle switch");

    /// <summary>A cycle switch reads on for ever.</summary>
    public static Fault StuckOn { get; } = new PlantFault<CycleSwitch>(Switch)
    {
        Name = "cycle-switch-stuck-on",
        Place = "the cycle switch",
        Manner = FaultManner.Stuck,
        Effect = "The cycle switch reads on, wherever its piston is.",
        Noticed = "Its lamp stays on while the stroke indicator moves.",
        Needs = AnotherLevel,
        Change = (cycle, fault) => cycle.StuckOn = fault.On,
        Differs = (cycle, _) => cycle.IsWrong && cycle.On,
    };

    /// <summary>A cycle switch reads off for ever.</summary>
    public static Fault StuckOff { get; } = new PlantFault<CycleSwitch>(Switch)
    {
        Name = "cycle-switch-stuck-off",
        Place = "the cycle switch",
        Manner = FaultManner.Stuck,
        Effect = "The cycle switch reads off, wherever its piston is.",
        Noticed = "Its lamp stays off while the stroke indicator moves.",
        Needs = AnotherLevel,
        Change = (cycle, fault) => cycle.StuckOff = fault.On,
        Differs = (cycle, _) => cycle.IsWrong && !cycle.StuckOn,
    };

    /// <summary>A cycle switch toggles at irregular, seeded intervals.</summary>
    public static Fault Chattering { get; } = new PlantFault<CycleSwitch>(Switch)
    {
        Name = "cycle-switch-chattering",
        Place = "the cycle switch",
        Manner = FaultManner.Intermittent,
        Parameter = new("period", "mean time between changes", "s", 1e-4, 60, 0.2),
        Effect = "The cycle switch toggles at irregular intervals, wherever its piston is.",
        Noticed = "Its lamp flickers, with the piston at rest too.",
        Needs = AnotherLevel,
        Change = (cycle, fault) => cycle.Chatter(fault.On, fault.Value, fault.NowUs),
        Differs = (cycle, _) => cycle.IsWrong && cycle.IsWired && !cycle.Sticks,
    };

    /// <summary>A cycle switch's wire is broken: off, whatever its contact.</summary>
    public static Fault WireBroken { get; } = new PlantFault<CycleSwitch>(Switch)
    {
        Name = "cycle-switch-wire-broken",
        Place = "the cycle switch's wire",
        Manner = FaultManner.Off,
        Effect = "No current reaches the far end of the wire: it reads off, whatever the contact does.",
        Noticed = "The lamp at the cabinet stays off while the stroke indicator moves.",
        Needs = AnotherLevel,
        Change = (cycle, fault) => cycle.WireBroken = fault.On,
        Differs = (cycle, _) => cycle.IsWrong,
    };

    /// <summary>A cycle switch's wire comes and goes at irregular, seeded intervals.</summary>
    public static Fault WireLoose { get; } = new PlantFault<CycleSwitch>(Switch)
    {
        Name = "cycle-switch-wire-loose",
        Place = "the cycle switch's wire",
        Manner = FaultManner.Intermittent,
        Parameter = new("off-time", "mean time for which it is interrupted", "s", 1e-4, 3600, 0.05),
        Second = new("on-time", "mean time for which it is whole", "s", 1e-4, 3600, 2),
        Effect = "The wire is interrupted and whole again at irregular intervals, as under vibration.",
        Noticed = "The lamp at the cabinet flickers while the machine shakes, though the switch itself is steady.",
        Needs = AnotherLevel,
        Change = (cycle, fault) => cycle.LoosenWire(fault.On, fault.Value, fault.Second, fault.NowUs),
        Differs = (cycle, _) => cycle.IsWrong && cycle.WireInterrupted,
    };
}
