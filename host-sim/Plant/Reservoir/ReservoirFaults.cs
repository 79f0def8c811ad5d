using LubeController.Plant.Faults;

namespace LubeController.Plant.Reservoir;

/// <summary>Faults of the reservoir and of what is drawn from it.</summary>
public static class ReservoirFaults
{
    internal static readonly FaultPart<LubricantReservoir> Content = new();
    internal static readonly FaultPart<LubricantReservoir> Suction = new();

    /// <summary>The reservoir's content is gone but for a rest; healing refills it to its content at the start.</summary>
    public static Fault Empty { get; } = new PlantFault<LubricantReservoir>(Content)
    {
        Name = "reservoir-empty",
        Place = "the reservoir",
        Manner = FaultManner.Wrong,
        Parameter = new("rest", "content that is left", "m3", 0, 10, 0),
        Effect = "The reservoir's content is gone but for a rest.",
        Noticed = "The follower plate or sight glass stands at the bottom.",
        Needs = "a reservoir that holds more than the rest",
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "The reservoir is filled to its content at the start; what was removed stays removed.",
        Change = (reservoir, fault) => reservoir.Drain(fault.On, fault.Value),
        Differs = (_, _) => true,
    };

    /// <summary>The pump draws air with the lubricant.</summary>
    public static Fault SuctionAerated { get; } = new PlantFault<LubricantReservoir>(Suction)
    {
        Name = "suction-aerated",
        Place = "the pump's suction",
        Manner = FaultManner.Wrong,
        Parameter = new("share", "air in what is drawn", "1", 0, 1, 0.2) { Harmless = 0 },
        Effect = "The pump draws air together with lubricant.",
        Noticed = "The gauge trembles and climbs slowly, points spit, and strokes go on after the pump stops.",
        Needs = "a pump that delivers",
        Healing = FaultHealing.LeavesTraces,
        HealingNote = "No more air is drawn; what is in the line leaves with the lubricant.",
        Change = (reservoir, fault) => reservoir.SuctionAir = fault.Value,
        Differs = (_, plant) => plant.IngestedStepM3 > 0,
    };
}
