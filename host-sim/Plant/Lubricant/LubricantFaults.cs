using LubeController.Plant.Faults;

namespace LubeController.Plant.Lubricant;

/// <summary>Faults of the lubricant.</summary>
public static class LubricantFaults
{
    internal static readonly FaultPart<LubricantTemperature> Temperature = new();

    /// <summary>The lubricant is warmer or colder than it was set to be.</summary>
    public static Fault TemperatureOff { get; } = new PlantFault<LubricantTemperature>(Temperature)
    {
        Name = "lubricant-temperature-off",
        Place = "the lubricant",
        Manner = FaultManner.Wrong,
        Parameter = new("offset", "temperature added", "K", -80, 80, -20) { Harmless = 0 },
        Effect = "The lubricant is colder or warmer than the temperature that was set.",
        Noticed = "Cold: the gauge climbs high and doses take long; warm: pressure falls fast after the pump stops.",
        Needs = "lubricant that flows, or a temperature that is read",
        Change = (temperature, fault) => temperature.OffsetK = fault.Value,
        Differs = (temperature, plant) => plant.PumpedStepM3 > 0 || temperature.IsRead,
    };
}
