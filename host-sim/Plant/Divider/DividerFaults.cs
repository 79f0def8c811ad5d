using LubeController.Plant.Faults;

namespace LubeController.Plant.Divider;

/// <summary>Faults of a divider's inlet and of its pistons.</summary>
public static class DividerFaults
{
    internal static readonly FaultPart<DividerPart> Inlet = new();
    internal static readonly FaultPart<DividerPart> Piston = new("section");

    /// <summary>The divider's inlet passes nothing.</summary>
    public static Fault InletBlocked { get; } = new PlantFault<DividerPart>(Inlet)
    {
        Name = "inlet-blocked",
        Place = "the divider's inlet",
        Manner = FaultManner.Blocked,
        Effect = "The divider's inlet passes nothing.",
        Noticed = "The gauge at the pump climbs to the relief pressure, the stroke indicator stands still.",
        Needs = "a pump that pushes lubricant towards the divider",
        Change = (inlet, fault) => inlet.Divider.InletBlocked = fault.On,
        Differs = (inlet, _) => inlet.AnyWouldMove,
    };

    /// <summary>A piston needs more pressure before it moves.</summary>
    public static Fault PistonStiff { get; } = new PlantFault<DividerPart>(Piston)
    {
        Name = "piston-stiff",
        Place = "the section's piston",
        Manner = FaultManner.Slow,
        Parameter = new("added", "pressure added to the piston's breakaway", "Pa", 0, 5e7, 2e6) { Harmless = 0 },
        Effect = "The piston needs more pressure before it breaks away.",
        Noticed = "The gauge kicks once in each half cycle, always at the same piston.",
        Needs = "that piston's turn to move",
        Change = (piston, fault) => piston.Divider.Stiffen(piston.Index, fault.Value),
        Differs = (piston, _) => piston.IsPushed,
    };

    /// <summary>Lubricant passes by a piston.</summary>
    public static Fault PistonWorn { get; } = new PlantFault<DividerPart>(Piston)
    {
        Name = "piston-worn",
        Place = "the section's piston and bore",
        Manner = FaultManner.Leaking,
        Parameter = new("leakage", "leakage past the piston at reference viscosity", "m3/s/Pa", 0, 1e-9, 1e-13) { Harmless = 0 },
        Effect = "Lubricant passes by the piston from gallery to outlet without moving it.",
        Noticed = "Strokes become slower when the lubricant is warm, and pressure does not hold after the pump stops.",
        Needs = "pressure across that piston",
        Change = (piston, fault) => piston.Divider.Wear(piston.Index, fault.Value),
        Differs = (piston, _) => piston.IsBypassed,
    };

    /// <summary>A piston does not move.</summary>
    public static Fault PistonStuck { get; } = new PlantFault<DividerPart>(Piston)
    {
        Name = "piston-stuck",
        Place = "the section's piston",
        Manner = FaultManner.Stuck,
        Effect = "The piston does not move, whatever the pressure.",
        Noticed = "The stroke indicator stands still and the gauge climbs to the relief pressure, with no outlet blocked.",
        Needs = "that piston's turn to move, with pressure enough",
        Change = (piston, fault) => piston.Divider.Stick(piston.Index, fault.On),
        Differs = (piston, _) => piston.IsPushed,
    };
}
