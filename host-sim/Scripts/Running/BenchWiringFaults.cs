using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Electrics.Wiring;
using LubeController.Scripts.Quantities;
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
                faults.Add(new BenchFault(info.Name, parts.ToArray(), Range(info.Ohms), info.Ohms?.Preset));
        }

        return faults;
    }

    private static QuantityRange? Range(OhmsRange? ohms) =>
        ohms is null ? null : new QuantityRange(UnitFamily.Resistance, ohms.Minimum, ohms.Maximum, UnitFamily.Resistance.SiUnit);
}
