using System.Collections.Generic;
using LubeController.Plant.Electrics.Wiring;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.Running;

/// <summary>The faults that a plant's wiring can have, as scripts write them.</summary>
public static class BenchWiringFaults
{
    /// <summary>Every fault for which the wiring has a part; none without wiring.</summary>
    public static IReadOnlyList<BenchFault> Of(SupervisoryWiringDescription? wiring)
    {
        if (wiring is null)
            return [];
        var faults = new List<BenchFault>();
        foreach (WiringFaultInfo info in WiringFaults.All)
        {
            IReadOnlyList<string> parts = WiringFaults.PartNames(info.Kind, wiring);
            if (parts.Count > 0)
                faults.Add(new BenchFault(info.Name, [.. parts], info.Parameter is { } ohms ? PlantFaults.RangeOf(ohms) : null, info.Parameter?.Default) { Needs = info.Needs });
        }

        return faults;
    }
}
