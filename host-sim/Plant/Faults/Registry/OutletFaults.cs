namespace LubeController.Plant.Faults.Registry;

/// <summary>Faults from the divider's outlets to the points.</summary>
internal static class OutletFaults
{
    internal static FaultInfo[] All { get; } =
    [
        new()
        {
            Kind = FaultKind.OutletBlocked,
            Name = "outlet-blocked",
            Part = FaultPart.Outlet,
            Place = "the outlet",
            Manner = FaultManner.Blocked,
            Effect = "The outlet passes nothing, whatever the pressure.",
            Noticed = "The stroke indicator stands still, the gauge climbs to the relief pressure and every point goes dry.",
            Needs = "a piston that would push into the outlet",
        },
        new()
        {
            Kind = FaultKind.OutletRestricted,
            Name = "outlet-restricted",
            Part = FaultPart.Outlet,
            Place = "the outlet",
            Manner = FaultManner.Blocked,
            Parameter = new("remaining", "conductance that remains", "1", 0, 1, 0.1) { Harmless = 1 },
            Effect = "The outlet's line passes less flow under the same pressure.",
            Noticed = "The gauge rises higher whenever that outlet's turn comes, and the strokes before it take longer.",
            Needs = "flow through the outlet, or a piston that would push into it",
        },
        new()
        {
            Kind = FaultKind.OutletLineLeaking,
            Name = "outlet-line-leaking",
            Part = FaultPart.Outlet,
            Place = "the line from outlet to point",
            Manner = FaultManner.Leaking,
            Parameter = new("share", "share that is lost before the point", "1", 0, 1, 0.5) { Harmless = 0 },
            Effect = "Part of what the outlet gets leaves its line before the point.",
            Noticed = "Lubricant drips beside the machine and the point runs warm, while the divider strokes as ever.",
            Needs = "lubricant that leaves through the outlet",
            Healing = FaultHealing.LeavesTraces,
            HealingNote = "The line is tight again; what was lost stays lost.",
        },
        new()
        {
            Kind = FaultKind.OutletBackPressure,
            Name = "outlet-back-pressure",
            Part = FaultPart.Outlet,
            Place = "the point",
            Manner = FaultManner.Wrong,
            Parameter = new("added", "pressure added to the point's own", "Pa", 0, 5e7, 5e6) { Harmless = 0 },
            Effect = "The point holds against a higher pressure before it takes anything.",
            Noticed = "The gauge rises by that much when the outlet's turn comes.",
            Needs = "flow through the outlet, or a piston that would push into it",
        },
    ];
}
