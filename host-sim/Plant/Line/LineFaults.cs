using System;
using LubeController.Plant.Faults;

namespace LubeController.Plant.Line;

/// <summary>Faults of line and strainer.</summary>
public static class LineFaults
{
    // A leak or burst is stated by its flow at this pressure.
    private const double LeakReferencePa = 1e7;

    // A strainer that passes nothing at all is a blocked line; what is left of a clogged one is at least this.
    private const double LeastOpen = 1e-6;

    internal static readonly FaultPart<LineAir> AirPart = new();
    internal static readonly FaultPart<LineDrains> Drains = new();
    internal static readonly FaultPart<LineLayout> Strainer = new();

    /// <summary>More air is in the line.</summary>
    public static Fault Air { get; } = new PlantFault<LineAir>(AirPart)
    {
        Name = "air-in-line",
        Place = "the line",
        Manner = FaultManner.Wrong,
        Parameter = new("air", "air at atmosphere", "m3", 0, 1, 1e-5) { Harmless = 0 },
        Effect = "More air is in the line, so that pressure takes more volume to build.",
        Noticed = "The gauge climbs slowly, and strokes go on for a while after the pump stops.",
        Needs = "more air than the line held before",
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The air is bled, and the lubricant that its pressure held goes with it.",
        Change = (air, fault) => air.Add(fault.Value),
        Differs = (_, _) => true,
    };

    /// <summary>A joint at the end of the line seeps in proportion to the pressure.</summary>
    public static Fault Leak { get; } = new PlantFault<LineDrains>(Drains)
    {
        Name = "line-leak",
        Place = "the line",
        Manner = FaultManner.Leaking,
        Parameter = new("flow", "flow lost at 100 bar and reference viscosity", "m3/s", 0, 1e-2, 1e-6) { Harmless = 0 },
        Effect = "A joint at the end of the line seeps in proportion to the pressure, less the thicker the lubricant is.",
        Noticed = "Lubricant on the floor, doses that take longer, pressure that does not hold.",
        Needs = "lubricant lost",
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The line is tight again; what was lost stays lost.",
        Change = (line, fault) => line.LeakM3PerSPa = fault.Value / LeakReferencePa,
        Differs = (_, plant) => plant.LeakedStepM3 > 0,
    };

    /// <summary>The line has an opening: what it loses grows with the pressure.</summary>
    public static Fault Burst { get; } = new PlantFault<LineDrains>(Drains)
    {
        Name = "line-burst",
        Place = "the line",
        Manner = FaultManner.Leaking,
        Parameter = new("flow", "flow lost at 100 bar", "m3/s", 0, 1e-2, 1e-4) { Harmless = 0 },
        Effect = "The line has an opening at the pump: it loses flow in proportion to the pressure, however thick the lubricant is.",
        Noticed = "Lubricant sprays or runs out, the gauge stays low, the divider stands still or nearly so.",
        Needs = "lubricant lost",
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The line is tight again; what was lost stays lost.",
        Change = (line, fault) => line.BurstM3PerSPa = fault.Value / LeakReferencePa,
        Differs = (_, plant) => plant.LeakedStepM3 > 0,
    };

    /// <summary>The strainer passes less than it should under the same pressure.</summary>
    public static Fault StrainerClogged { get; } = new PlantFault<LineLayout>(Strainer)
    {
        Name = "strainer-clogged",
        Place = "the strainer",
        Manner = FaultManner.Blocked,
        Parameter = new("remaining", "conductance that remains", "1", 0, 1, 0.1) { Harmless = 1 },
        Effect = "The strainer passes less flow under the same pressure.",
        Noticed = "The gauge before it stands high while strokes are slow, worse when cold.",
        Needs = "flow through the strainer",
        Change = (layout, fault) => layout.StrainerOpen = Math.Max(LeastOpen, fault.Value),
        Differs = (_, plant) => plant.PumpedStepM3 > 0,
    };
}
