using System;
using System.Collections.Generic;
using LubeController.Plant.Description;

namespace LubeController.Plant.Faults;

/// <summary>Every kind of fault that the plant knows.</summary>
public static class FaultCatalogue
{
    /// <summary>All kinds, in the order of <see cref="FaultKind"/>.</summary>
    public static IReadOnlyList<FaultInfo> All { get; } =
    [
        new(FaultKind.OutletBlocked, "outlet-blocked", FaultPart.Outlet, null),
        new(FaultKind.InletBlocked, "inlet-blocked", FaultPart.None, null),
        new(FaultKind.SuctionBlocked, "suction-blocked", FaultPart.None, null),
        new(FaultKind.PumpOff, "pump-off", FaultPart.None, null),
        new(FaultKind.PumpWorn, "pump-worn", FaultPart.None, new("remaining", "1", 0, 1, 0.5)),
        new(FaultKind.AirInLine, "air-in-line", FaultPart.None, new("air", "m3", 0, 1, 1e-5)),
        new(FaultKind.LineLeak, "line-leak", FaultPart.None, new("flow", "m3/s", 0, 1e-2, 1e-6)),
        new(FaultKind.ReliefStuckOpen, "relief-stuck-open", FaultPart.None, new("pressure", "Pa", 0, 1e8, 1e5)),
        new(FaultKind.ReservoirEmpty, "reservoir-empty", FaultPart.None, new("rest", "m3", 0, 10, 0)),
        new(FaultKind.LevelSwitchStuckOn, "level-switch-stuck-on", FaultPart.LevelSwitch, null),
        new(FaultKind.LevelSwitchStuckOff, "level-switch-stuck-off", FaultPart.LevelSwitch, null),
        new(FaultKind.PumpContactWelded, "pump-contact-welded", FaultPart.None, null),
        new(FaultKind.CycleSwitchStuckOn, "cycle-switch-stuck-on", FaultPart.CycleSwitch, null),
        new(FaultKind.CycleSwitchStuckOff, "cycle-switch-stuck-off", FaultPart.CycleSwitch, null),
        new(FaultKind.CycleSwitchChattering, "cycle-switch-chattering", FaultPart.CycleSwitch, new("period", "s", 1e-4, 60, 0.2)),
        new(FaultKind.CycleSwitchWireBroken, "cycle-switch-wire-broken", FaultPart.CycleSwitch, null),
        new(FaultKind.ShaftSwitchLost, "shaft-switch-lost", FaultPart.Shaft, null),
        new(FaultKind.PressureSwitchStuckOn, "pressure-switch-stuck-on", FaultPart.PressureSwitch, null),
        new(FaultKind.PressureSwitchStuckOff, "pressure-switch-stuck-off", FaultPart.PressureSwitch, null),
    ];

    /// <summary>What is known of a kind.</summary>
    public static FaultInfo Of(FaultKind kind) => All[(int)kind];

    /// <summary>The kind of a name, or null.</summary>
    public static FaultInfo? Find(string name)
    {
        foreach (FaultInfo fault in All)
        {
            if (string.Equals(fault.Name, name, StringComparison.Ordinal))
                return fault;
        }

        return null;
    }

    /// <summary>
    /// The part names that a kind accepts in a plant; one empty name where there is nothing to choose, none where the plant
    /// has no such part.
    /// </summary>
    public static IReadOnlyList<string> PartNames(FaultKind kind, PlantDescription plant)
    {
        ArgumentNullException.ThrowIfNull(plant);
        var names = new List<string>();
        switch (Of(kind).Part)
        {
            case FaultPart.Outlet:
                foreach (OutletDescription outlet in plant.Outlets)
                    names.Add(outlet.Name);
                break;
            case FaultPart.CycleSwitch:
                foreach (CycleSwitchDescription cycle in plant.CycleSwitches)
                    names.Add(cycle.Name);
                break;
            case FaultPart.LevelSwitch:
                names.AddRange(["low", "empty"]);
                break;
            case FaultPart.PressureSwitch when plant.PressureSwitch is null:
            case FaultPart.Shaft when plant.Shaft is null:
                break;
            default:
                names.Add("");
                break;
        }

        return names;
    }
}
