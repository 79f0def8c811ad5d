using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Emulator;
using LubeController.Emulator.Platform;
using LubeController.Files.Quantities;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Faults;

namespace LubeController.Scripts.Steps;

/// <summary>The faults that a simulated plant and the virtual board can have, as scripts write them: one vocabulary.</summary>
public static class BenchFaults
{
    /// <summary>All of them, the plant's before the board's.</summary>
    public static IReadOnlyList<Fault> All { get; } = [.. FaultCatalogue.All, .. BoardFaults.All];

    /// <summary>Every fault for which the plant has a part, in the catalogue's order, then every fault of the board.</summary>
    public static IReadOnlyList<BenchFault> Of(PlantDescription plant)
    {
        ArgumentNullException.ThrowIfNull(plant);
        var faults = new List<BenchFault>();
        foreach (Fault fault in FaultCatalogue.All)
        {
            IReadOnlyList<string> parts = FaultCatalogue.PartNames(fault, plant);
            if (parts.Count > 0)
                faults.Add(AsWritten(fault, [.. parts.Where(part => part.Length > 0)]));
        }

        faults.AddRange(BoardFaults.All.Select(fault => AsWritten(fault, BoardFaults.PartNames(fault))));
        return faults;
    }

    /// <summary>What has the part that a fault changes: the board, or the plant.</summary>
    internal static FaultHost HostOf(Bench bench, BenchFault fault) => fault.Fault is BoardFault ? bench.Platform : bench.Plant;

    /// <summary>The units in which a number of a fault is written.</summary>
    public static UnitFamily FamilyOf(FaultParameter parameter)
    {
        ArgumentNullException.ThrowIfNull(parameter);
        if (parameter.Unit == BoardFaults.CountUnit)
            return UnitFamily.Count;
        if (parameter.Unit == UnitFamily.Ratio.SiUnit)
            return UnitFamily.Ratio;
        return parameter.Unit == UnitFamily.TemperatureDifference.SiUnit ? UnitFamily.TemperatureDifference : UnitFamily.OfSi(parameter.Unit);
    }

    /// <summary>The range of a number of a fault, in the usual unit.</summary>
    public static QuantityRange RangeOf(FaultParameter parameter)
    {
        UnitFamily family = FamilyOf(parameter);
        string unit = family.UsualUnit;
        return new QuantityRange(family, family.FromSi(parameter.Minimum, unit), family.FromSi(parameter.Maximum, unit), unit);
    }

    private static BenchFault AsWritten(Fault fault, IReadOnlyList<string> parts) =>
        new(fault.Name, parts, fault.Parameter == null ? null : RangeOf(fault.Parameter), fault.Parameter?.Default)
        {
            Fault = fault,
            HarmlessMagnitude = fault.Parameter?.Harmless,
            Second = fault.Second is { } second ? new BenchFaultNumber(second.Name, RangeOf(second), second.Default) : null,
            Needs = fault.Needs,
        };
}
