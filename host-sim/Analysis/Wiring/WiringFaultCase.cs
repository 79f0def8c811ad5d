using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Faults;
using LubeController.Plant.Wiring;

namespace LubeController.Analysis.Wiring;

/// <summary>One single fault of a wiring.</summary>
/// <param name="Kind">The fault.</param>
/// <param name="Part">The part that has it.</param>
public sealed record WiringFaultCase(FaultKind Kind, string Part)
{
    /// <summary>Every single fault that a wiring can have, by kind and part, each with its preset resistance.</summary>
    public static IReadOnlyList<WiringFaultCase> Of(SupervisoryWiringDescription wiring)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        return [.. WiringFaults.All.SelectMany(kind => WiringFaults.PartNames(kind, wiring).Select(part => new WiringFaultCase(kind, part)))];
    }

    /// <summary>Its name.</summary>
    public string Name => FaultCatalogue.Of(Kind).Name;

    /// <summary>Name and part.</summary>
    public override string ToString() => $"{Name} {Part}";
}
