using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Faults;
using LubeController.Scripts.Quantities;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.Running;

/// <summary>The faults that a simulated plant can have, as scripts write them.</summary>
public static class PlantFaults
{
    /// <summary>Every fault for which the plant has a part, in the catalogue's order.</summary>
    public static IReadOnlyList<BenchFault> Of(PlantDescription plant)
    {
        var faults = new List<BenchFault>();
        foreach (FaultInfo info in FaultCatalogue.All)
        {
            IReadOnlyList<string> parts = FaultCatalogue.PartNames(info.Kind, plant);
            if (parts.Count > 0)
                faults.Add(new BenchFault(info.Name, parts.Where(part => part.Length > 0).ToArray(), Range(info.Parameter), info.Parameter?.Default));
        }

        return faults;
    }

    private static QuantityRange? Range(FaultParameter? parameter)
    {
        if (parameter == null)
            return null;
        UnitFamily family = parameter.Unit == UnitFamily.Ratio.SiUnit ? UnitFamily.Ratio : UnitFamily.OfSi(parameter.Unit);
        string unit = family.UsualUnit;
        return new QuantityRange(family, family.FromSi(parameter.Minimum, unit), family.FromSi(parameter.Maximum, unit), unit);
    }
}
