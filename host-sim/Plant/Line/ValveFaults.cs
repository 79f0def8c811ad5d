using LubeController.Plant.Faults;

namespace LubeController.Plant.Line;

/// <summary>Faults of check valve, relief valve and vent valve.</summary>
public static class ValveFaults
{
    internal static readonly FaultPart<LineDrains> CheckValve = new();
    internal static readonly FaultPart<ReliefValve> ReliefValve = new();
    internal static readonly FaultPart<VentValve> VentValve = new();

    /// <summary>The check valve at the pump's outlet lets lubricant back.</summary>
    public static Fault CheckValveLeaking { get; } = new PlantFault<LineDrains>(CheckValve)
    {
        Name = "check-valve-leaking",
        Place = "the check valve at the pump's outlet",
        Manner = FaultManner.Leaking,
        Parameter = new("leakage", "leakage back to the reservoir at reference viscosity", "m3/s/Pa", 0, 1e-9, 1e-14) { Harmless = 0 },
        Effect = "Lubricant flows back from the line to the reservoir while there is pressure.",
        Noticed = "Pressure falls quickly after the pump stops, with nothing wet outside.",
        Needs = "pressure in the line",
        Change = (line, fault) => line.CheckValveM3PerSPa = fault.Value,
        Differs = (_, plant) => plant.ReturnedStepM3 > 0,
    };

    /// <summary>The relief valve opens at a low pressure.</summary>
    public static Fault ReliefStuckOpen { get; } = new PlantFault<ReliefValve>(ReliefValve)
    {
        Name = "relief-stuck-open",
        Place = "the relief valve",
        Manner = FaultManner.Stuck,
        Parameter = new("pressure", "pressure at which it opens", "Pa", 0, 1e8, 1e5),
        Effect = "The relief valve opens at a low pressure.",
        Noticed = "The pump runs and the gauge stays low, while lubricant returns to the reservoir.",
        Needs = "lubricant relieved below the valve's own opening pressure",
        Change = (relief, fault) => relief.SetOpening(fault.On ? fault.Value : double.NaN),
        Differs = (relief, _) => relief.OpensEarly,
    };

    /// <summary>The relief valve never opens.</summary>
    public static Fault ReliefStuckClosed { get; } = new PlantFault<ReliefValve>(ReliefValve)
    {
        Name = "relief-stuck-closed",
        Place = "the relief valve",
        Manner = FaultManner.Stuck,
        Effect = "The relief valve never opens.",
        Noticed = "Nothing, until something blocks: then the gauge climbs beyond the relief pressure.",
        Needs = "a pressure at which the sound valve would open",
        Change = (relief, fault) => relief.StuckClosed = fault.On,
        Differs = (relief, plant) => relief.WouldOpenAt(plant.NodePressurePa(0)),
    };

    /// <summary>The vent valve stays open.</summary>
    public static Fault VentStuckOpen { get; } = new PlantFault<VentValve>(VentValve)
    {
        Name = "vent-valve-stuck-open",
        Place = "the vent valve",
        Manner = FaultManner.Stuck,
        Effect = "The vent valve lets the line back to the reservoir all the time.",
        Noticed = "The pump runs, the gauge stays low and no injector moves.",
        Needs = "a time at which the valve should be closed",
        Change = (vent, fault) => vent.StuckOpen = fault.On,
        Differs = (vent, plant) => !vent.CommandedOpen && plant.IsPressurised,
    };

    /// <summary>The vent valve stays closed.</summary>
    public static Fault VentStuckClosed { get; } = new PlantFault<VentValve>(VentValve)
    {
        Name = "vent-valve-stuck-closed",
        Place = "the vent valve",
        Manner = FaultManner.Stuck,
        Effect = "The vent valve never lets the line back to the reservoir.",
        Noticed = "Pressure stands after the pump stops, and injectors do not recharge: the next dose gives nothing.",
        Needs = "a time at which the valve should be open",
        Change = (vent, fault) => vent.StuckClosed = fault.On,
        Differs = (vent, plant) => vent.CommandedOpen && plant.IsPressurised,
    };
}
