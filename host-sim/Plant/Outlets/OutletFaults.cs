using LubeController.Plant.Faults;

namespace LubeController.Plant.Outlets;

/// <summary>Faults from an outlet to its point.</summary>
public static class OutletFaults
{
    internal static readonly FaultPart<OutletInPlace> Outlet = new("outlet");

    /// <summary>An outlet passes nothing.</summary>
    public static Fault Blocked { get; } = new PlantFault<OutletInPlace>(Outlet)
    {
        Name = "outlet-blocked",
        Place = "the outlet",
        Manner = FaultManner.Blocked,
        Effect = "The outlet passes nothing, whatever the pressure.",
        Noticed = "The stroke indicator stands still, the gauge climbs to the relief pressure and every point goes dry.",
        Needs = "a piston that would push into the outlet",
        Change = (outlet, fault) => outlet.Line.Blocked = fault.On,
        Differs = (outlet, _) => outlet.IsPushedInto(),
    };

    /// <summary>An outlet passes less than it should under the same pressure.</summary>
    public static Fault Restricted { get; } = new PlantFault<OutletInPlace>(Outlet)
    {
        Name = "outlet-restricted",
        Place = "the outlet",
        Manner = FaultManner.Blocked,
        Parameter = new("remaining", "conductance that remains", "1", 0, 1, 0.1) { Harmless = 1 },
        Effect = "The outlet's line passes less flow under the same pressure.",
        Noticed = "The gauge rises higher whenever that outlet's turn comes, and the strokes before it take longer.",
        Needs = "flow through the outlet, or a piston that would push into it",
        Change = (outlet, fault) => outlet.Line.Open = fault.Value,
        Differs = (outlet, _) => outlet.Flows || outlet.IsPushedInto(),
    };

    /// <summary>Part of what an outlet gets is lost before the point.</summary>
    public static Fault LineLeaking { get; } = new PlantFault<OutletInPlace>(Outlet)
    {
        Name = "outlet-line-leaking",
        Place = "the line from outlet to point",
        Manner = FaultManner.Leaking,
        Parameter = new("share", "share that is lost before the point", "1", 0, 1, 0.5) { Harmless = 0 },
        Effect = "Part of what the outlet gets leaves its line before the point.",
        Noticed = "Lubricant drips beside the machine and the point runs warm, while the divider strokes as ever.",
        Needs = "lubricant that leaves through the outlet",
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The line is tight again; what was lost stays lost.",
        Change = (outlet, fault) => outlet.Line.LostShare = fault.Value,
        Differs = (outlet, _) => outlet.Flows,
    };

    /// <summary>A point resists more than it should.</summary>
    public static Fault BackPressure { get; } = new PlantFault<OutletInPlace>(Outlet)
    {
        Name = "outlet-back-pressure",
        Place = "the point",
        Manner = FaultManner.Wrong,
        Parameter = new("added", "pressure added to the point's own", "Pa", 0, 5e7, 5e6) { Harmless = 0 },
        Effect = "The point holds against a higher pressure before it takes anything.",
        Noticed = "The gauge rises by that much when the outlet's turn comes.",
        Needs = "flow through the outlet, or a piston that would push into it",
        Change = (outlet, fault) => outlet.Line.AddedBackPressurePa = fault.Value,
        Differs = (outlet, _) => outlet.Flows || outlet.IsPushedInto(),
    };
}
