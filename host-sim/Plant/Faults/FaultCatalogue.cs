using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Faults.Registry;
using LubeController.Plant.Injectors;
using LubeController.Plant.Outlets;
using LubeController.Plant.Sensors;
using LubeController.Plant.Wiring;

namespace LubeController.Plant.Faults;

/// <summary>
/// The registry: every kind of fault. What is listed, what scripts may write and what the documentation says of faults is
/// made from it.
/// </summary>
public static class FaultCatalogue
{
    /// <summary>All kinds, in the order of <see cref="FaultKind"/>.</summary>
    public static IReadOnlyList<FaultInfo> All { get; } = InOrder();

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
            case FaultPart.Sensor or FaultPart.SensorCore or FaultPart.SensorCorePair:
                foreach (CycleSwitchDescription cycle in plant.CycleSwitches)
                {
                    if (cycle.Sensor != null)
                        AddSensorParts(names, Of(kind).Part, cycle.Name);
                }

                break;
            case FaultPart.LevelSwitch:
                names.AddRange(["low", "empty"]);
                break;
            case FaultPart.Section:
                foreach (SectionDescription section in plant.AllSections)
                    names.Add(section.Name);
                break;
            case FaultPart.Injector:
                foreach (InjectorDescription injector in plant.Injectors)
                    names.Add(injector.Name);
                break;
            case FaultPart.Wire or FaultPart.WirePair or FaultPart.WiringContact or FaultPart.Lamp or FaultPart.Fuse:
                if (plant.Wiring is { } wiring)
                    names.AddRange(WiringFaults.PartNames(kind, wiring));
                break;
            case FaultPart.Gauge when plant.Gauge is null:
            case FaultPart.VentValve when plant.VentValve is null:
            case FaultPart.None when kind == FaultKind.StrainerClogged && plant.Line.StrainerLossPa == 0:
            case FaultPart.None when kind == FaultKind.InletBlocked && plant.Divider.Sections.Count == 0:
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

    private static void AddSensorParts(List<string> names, FaultPart part, string name)
    {
        string[] colours = [.. Enum.GetValues<CableCore>().Select(CoreColours.ColourOf)];
        names.AddRange(part switch
        {
            FaultPart.Sensor => [name],
            FaultPart.SensorCore => colours.Select(colour => $"{name}+{colour}"),
            _ => [$"{name}+{colours[0]}+{colours[1]}", $"{name}+{colours[0]}+{colours[2]}", $"{name}+{colours[1]}+{colours[2]}"],
        });
    }

    private static FaultInfo[] InOrder() =>
    [
        .. OutletFaults.All.Concat(DividerFaults.All).Concat(PumpFaults.All).Concat(LineFaults.All).Concat(SensorFaults.All).Concat(CircuitFaults.All).Concat(SensorLoopFaults.All)
            .Concat(SupplyFaults.All).Concat(TransmitterLoopFaults.All)
            .OrderBy(fault => fault.Kind),
    ];
}
