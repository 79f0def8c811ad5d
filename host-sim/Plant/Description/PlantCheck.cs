using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Pump;
using LubeController.Plant.Sensors;

namespace LubeController.Plant.Description;

/// <summary>Says everything that is wrong with a description, as data.</summary>
public static class PlantCheck
{
    /// <summary>All findings, refusals and warnings: those of single fields first, then those of the whole. Empty: nothing to say.</summary>
    public static IReadOnlyList<PlantFinding> Of(PlantDescription plant)
    {
        System.ArgumentNullException.ThrowIfNull(plant);
        return PlantFields.All.FindingsOf(plant);
    }

    /// <summary>The refusals among <see cref="Of"/>; a plant with none can be built.</summary>
    public static IReadOnlyList<PlantFinding> Refusals(PlantDescription plant) => [.. Of(plant).Where(finding => finding.IsRefusal)];

    /// <summary>What must hold between parts of a plant.</summary>
    internal static void Add(Findings findings, string path, PlantDescription plant)
    {
        double opening = plant.Relief.OpeningPressurePa;
        if (plant.Pump.StallPressurePa is { } stall && stall <= opening)
            findings.Warn(PumpFields.StallPressure.Below(PlantFields.Pump.Key), stall, "more than the relief valve's opening pressure, or the motor stalls before the valve opens");
        if (plant.PressureSwitch is { } pressure && pressure.TripPa > opening)
            findings.Warn(PressureFields.Trip.Below(PlantFields.PressureSwitch.Key), pressure.TripPa, $"at most {Findings.Show(opening)} Pa, where the relief valve opens, or it never trips");
        DividerCheck.Add(findings, plant);
        InjectorCheck.Add(findings, plant);
        OutletCheck.Add(findings, plant);
        CycleSwitchCheck.Add(findings, plant);
    }
}
