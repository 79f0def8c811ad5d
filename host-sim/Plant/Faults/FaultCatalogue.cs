using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Faults.Registry;

namespace LubeController.Plant.Faults;

/// <summary>
/// The registry: every kind of fault. What is listed, what scripts may write and what the documentation says of faults is
/// made from it.
/// </summary>
public static class FaultCatalogue
{
    /// <summary>All kinds, in the order of <see cref="FaultKind"/>.</summary>
    public static IReadOnlyList<FaultInfo> All { get; } = InOrder();

    /// <summary>
    /// Kinds that stand in the registry while the plant does not act on them: no part of a plant can have them, and
    /// listing, schema and documentation pass over them.
    /// </summary>
    public static IReadOnlySet<FaultKind> NotActedOn { get; } = new HashSet<FaultKind>
    {
        FaultKind.OutletRestricted,
        FaultKind.OutletLineLeaking,
        FaultKind.OutletBackPressure,
        FaultKind.StrainerClogged,
        FaultKind.PistonStiff,
        FaultKind.PistonWorn,
        FaultKind.PistonStuck,
        FaultKind.CheckValveLeaking,
        FaultKind.ReliefStuckClosed,
        FaultKind.PumpSlow,
        FaultKind.SuctionAerated,
        FaultKind.FillingPoor,
        FaultKind.LineBurst,
        FaultKind.LubricantTemperatureOff,
        FaultKind.MotorSupplyLow,
        FaultKind.GaugeWrong,
        FaultKind.TransmitterWrong,
        FaultKind.TransmitterLagging,
        FaultKind.VentValveStuckOpen,
        FaultKind.VentValveStuckClosed,
        FaultKind.InjectorStuck,
    };

    /// <summary>The kinds that the plant acts on, in the same order.</summary>
    public static IReadOnlyList<FaultInfo> Known { get; } = All.Where(fault => !NotActedOn.Contains(fault.Kind)).ToArray();

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
        if (NotActedOn.Contains(kind))
            return names;
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
            case FaultPart.Section:
                foreach (SectionDescription section in plant.Divider.Sections)
                    names.Add(section.Name);
                break;
            case FaultPart.Transmitter when !plant.HasPressureTransmitter:
            case FaultPart.PressureSwitch when plant.PressureSwitch is null:
            case FaultPart.Shaft when plant.Shaft is null:
                break;
            default:
                names.Add("");
                break;
        }

        return names;
    }

    private static FaultInfo[] InOrder() =>
    [
        .. OutletFaults.All.Concat(DividerFaults.All).Concat(PumpFaults.All).Concat(LineFaults.All).Concat(SensorFaults.All)
            .OrderBy(fault => fault.Kind),
    ];
}
