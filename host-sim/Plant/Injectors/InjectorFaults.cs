using LubeController.Plant.Faults;

namespace LubeController.Plant.Injectors;

/// <summary>Faults of a single-line system's injectors.</summary>
public static class InjectorFaults
{
    internal static readonly FaultPart<InjectorInPlace> Injector = new("injector");

    /// <summary>An injector does not move.</summary>
    public static Fault Stuck { get; } = new PlantFault<InjectorInPlace>(Injector)
    {
        Name = "injector-stuck",
        Place = "the injector",
        Manner = FaultManner.Stuck,
        Effect = "The injector's piston neither discharges nor recharges.",
        Noticed = "Its indicator pin stands still and its point goes dry, while the others work.",
        Needs = "line pressure that would move the injector",
        Change = (place, fault) => place.Injector.Stuck = fault.On,
        Differs = (place, _) => place.Injector.WouldMove(place.Network),
    };
}
