namespace LubeController.Plant.Faults.Registry;

/// <summary>Faults of strainer, line, relief valve and vent valve.</summary>
internal static class LineFaults
{
    internal static FaultInfo[] All { get; } =
    [
        new()
        {
            Kind = FaultKind.AirInLine,
            Name = "air-in-line",
            Part = FaultPart.None,
            Place = "the line",
            Manner = FaultManner.Wrong,
            Parameter = new("air", "air at atmosphere", "m3", 0, 1, 1e-5) { Harmless = 0 },
            Effect = "More air is in the line, so that pressure takes more volume to build.",
            Noticed = "The gauge climbs slowly, and strokes go on for a while after the pump stops.",
            Needs = "more air than the line held before",
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The air is bled, and the lubricant that its pressure held goes with it.",
        },
        new()
        {
            Kind = FaultKind.LineLeak,
            Name = "line-leak",
            Part = FaultPart.None,
            Place = "the line",
            Manner = FaultManner.Leaking,
            Parameter = new("flow", "flow lost at 100 bar and reference viscosity", "m3/s", 0, 1e-2, 1e-6) { Harmless = 0 },
            Effect = "A joint at the end of the line seeps in proportion to the pressure, less the thicker the lubricant is.",
            Noticed = "Lubricant on the floor, doses that take longer, pressure that does not hold.",
            Needs = "lubricant lost",
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The line is tight again; what was lost stays lost.",
        },
        new()
        {
            Kind = FaultKind.ReliefStuckOpen,
            Name = "relief-stuck-open",
            Part = FaultPart.None,
            Place = "the relief valve",
            Manner = FaultManner.Stuck,
            Parameter = new("pressure", "pressure at which it opens", "Pa", 0, 1e8, 1e5),
            Effect = "The relief valve opens at a low pressure.",
            Noticed = "The pump runs and the gauge stays low, while lubricant returns to the reservoir.",
            Needs = "lubricant relieved below the valve's own opening pressure",
        },
        new()
        {
            Kind = FaultKind.StrainerClogged,
            Name = "strainer-clogged",
            Part = FaultPart.None,
            Place = "the strainer",
            Manner = FaultManner.Blocked,
            Parameter = new("remaining", "conductance that remains", "1", 0, 1, 0.1) { Harmless = 1 },
            Effect = "The strainer passes less flow under the same pressure.",
            Noticed = "The gauge before it stands high while strokes are slow, worse when cold.",
            Needs = "flow through the strainer",
        },
        new()
        {
            Kind = FaultKind.ReliefStuckClosed,
            Name = "relief-stuck-closed",
            Part = FaultPart.None,
            Place = "the relief valve",
            Manner = FaultManner.Stuck,
            Effect = "The relief valve never opens.",
            Noticed = "Nothing, until something blocks: then the gauge climbs beyond the relief pressure.",
            Needs = "a pressure at which the sound valve would open",
        },
        new()
        {
            Kind = FaultKind.LineBurst,
            Name = "line-burst",
            Part = FaultPart.None,
            Place = "the line",
            Manner = FaultManner.Leaking,
            Parameter = new("flow", "flow lost at 100 bar", "m3/s", 0, 1e-2, 1e-4) { Harmless = 0 },
            Effect = "The line has an opening at the pump: it loses flow in proportion to the pressure, however thick the lubricant is.",
            Noticed = "Lubricant sprays or runs out, the gauge stays low, the divider stands still or nearly so.",
            Needs = "lubricant lost",
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The line is tight again; what was lost stays lost.",
        },
        new()
        {
            Kind = FaultKind.VentValveStuckOpen,
            Name = "vent-valve-stuck-open",
            Part = FaultPart.VentValve,
            Place = "the vent valve",
            Manner = FaultManner.Stuck,
            Effect = "The vent valve lets the line back to the reservoir all the time.",
            Noticed = "The pump runs, the gauge stays low and no injector moves.",
            Needs = "a time at which the valve should be closed",
        },
        new()
        {
            Kind = FaultKind.VentValveStuckClosed,
            Name = "vent-valve-stuck-closed",
            Part = FaultPart.VentValve,
            Place = "the vent valve",
            Manner = FaultManner.Stuck,
            Effect = "The vent valve never lets the line back to the reservoir.",
            Noticed = "Pressure stands after the pump stops, and injectors do not recharge: the next dose gives nothing.",
            Needs = "a time at which the valve should be open",
        },
    ];
}
