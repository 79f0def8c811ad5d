using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Wiring;

namespace LubeController.Analysis.Wiring;

/// <summary>One single fault of a wiring.</summary>
/// <param name="Fault">The fault.</param>
/// <param name="Part">The part that has it.</param>
public sealed record WiringFaultCase(WiringFault Fault, string Part)
{
    /// <summary>Every single fault that a wiring can have, by fault and part, each with its preset resistance.</summary>
    public static IReadOnlyList<WiringFaultCase> Of(SupervisoryWiringDescription wiring)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        return [.. WiringFaults.All.SelectMany(fault => fault.PartsIn(wiring).Select(part => new WiringFaultCase(fault, part)))];
    }

    /// <summary>Its name.</summary>
    public string Name => Fault.Name;

    /// <summary>Name and part.</summary>
    public override string ToString() => $"{Name} {Part}";
}
