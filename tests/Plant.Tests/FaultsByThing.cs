using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Divider;
using LubeController.Plant.Faults;
using LubeController.Plant.Injectors;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;

namespace LubeController.Plant.Tests;

/// <summary>Faults by what they act on.</summary>
internal static class FaultsByThing
{
    /// <summary>Those of a single-line system alone.</summary>
    public static IReadOnlyList<Fault> OfASingleLine { get; } = [InjectorFaults.Stuck, ValveFaults.VentStuckOpen, ValveFaults.VentStuckClosed];

    /// <summary>Those that change what flows.</summary>
    public static IReadOnlyList<Fault> OfTheHydraulics { get; } =
    [
        .. FaultCatalogue.All.Where(fault => new[]
        {
            OutletFaults.Blocked, DividerFaults.InletBlocked, DividerFaults.PistonStuck, InjectorFaults.Stuck, PumpFaults.Worn, ReservoirFaults.Empty,
            ReservoirFaults.SuctionAerated, LubricantFaults.TemperatureOff, LineFaults.Air, LineFaults.Leak, LineFaults.StrainerClogged,
            ValveFaults.CheckValveLeaking, ValveFaults.ReliefStuckOpen, ValveFaults.VentStuckOpen,
        }.Any(known => known.Part == fault.Part)),
    ];

    /// <summary>Those that change what flows in a plant with a divider.</summary>
    public static IEnumerable<Fault> OfADividersHydraulics => OfTheHydraulics.Except(OfASingleLine);
}
