namespace LubeController.Plant.Faults.Registry;

/// <summary>Faults of the divider and of a single-line system's injectors.</summary>
internal static class DividerFaults
{
    internal static FaultInfo[] All { get; } =
    [
        new()
        {
            Kind = FaultKind.InletBlocked,
            Name = "inlet-blocked",
            Part = FaultPart.None,
            Place = "the divider's inlet",
            Manner = FaultManner.Blocked,
            Effect = "The divider's inlet passes nothing.",
            Noticed = "The gauge at the pump climbs to the relief pressure, the stroke indicator stands still.",
            Needs = "a pump that pushes lubricant towards the divider",
        },
        new()
        {
            Kind = FaultKind.PistonStiff,
            Name = "piston-stiff",
            Part = FaultPart.Section,
            Place = "the section's piston",
            Manner = FaultManner.Slow,
            Parameter = new("added", "pressure added to the piston's breakaway", "Pa", 0, 5e7, 2e6) { Harmless = 0 },
            Effect = "The piston needs more pressure before it breaks away.",
            Noticed = "The gauge kicks once in each half cycle, always at the same piston.",
            Needs = "that piston's turn to move",
        },
        new()
        {
            Kind = FaultKind.PistonWorn,
            Name = "piston-worn",
            Part = FaultPart.Section,
            Place = "the section's piston and bore",
            Manner = FaultManner.Leaking,
            Parameter = new("leakage", "leakage past the piston at reference viscosity", "m3/s/Pa", 0, 1e-9, 1e-13) { Harmless = 0 },
            Effect = "Lubricant passes by the piston from gallery to outlet without moving it.",
            Noticed = "Strokes become slower when the lubricant is warm, and pressure does not hold after the pump stops.",
            Needs = "pressure across that piston",
        },
        new()
        {
            Kind = FaultKind.PistonStuck,
            Name = "piston-stuck",
            Part = FaultPart.Section,
            Place = "the section's piston",
            Manner = FaultManner.Stuck,
            Effect = "The piston does not move, whatever the pressure.",
            Noticed = "The stroke indicator stands still and the gauge climbs to the relief pressure, with no outlet blocked.",
            Needs = "that piston's turn to move, with pressure enough",
        },
        new()
        {
            Kind = FaultKind.InjectorStuck,
            Name = "injector-stuck",
            Part = FaultPart.Injector,
            Place = "the injector",
            Manner = FaultManner.Stuck,
            Effect = "The injector's piston neither discharges nor recharges.",
            Noticed = "Its indicator pin stands still and its point goes dry, while the others work.",
            Needs = "line pressure that would move the injector",
        },
    ];
}
