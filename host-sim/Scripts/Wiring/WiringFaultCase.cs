using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Electrics.Wiring;

namespace LubeController.Scripts.Wiring;

/// <summary>One single fault of a wiring.</summary>
/// <param name="Kind">The fault.</param>
/// <param name="Part">The part that has it.</param>
public sealed record WiringFaultCase(WiringFaultKind Kind, string Part)
{
    /// <summary>Every single fault that a wiring can have, by kind and part, each with its preset resistance.</summary>
    public static IReadOnlyList<WiringFaultCase> Of(SupervisoryWiringDescription wiring)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        return [.. WiringFaults.All.SelectMany(info => WiringFaults.PartNames(info.Kind, wiring).Select(part => new WiringFaultCase(info.Kind, part)))];
    }

    /// <summary>Its name.</summary>
    public string Name => WiringFaults.Of(Kind).Name;

    /// <summary>Name and part.</summary>
    public override string ToString() => $"{Name} {Part}";
}
