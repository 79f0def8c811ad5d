using LubeController.Plant.Faults;

namespace LubeController.Plant.Supplies;

/// <summary>Faults of the supply of controller and cycle switches.</summary>
public static class SupplyFaults
{
    internal static readonly FaultPart<FeedingSupply> Supply = new();

    /// <summary>The control supply has another voltage.</summary>
    public static Fault Low { get; } = new PlantFault<FeedingSupply>(Supply)
    {
        Name = "control-supply-low",
        Place = "the control supply",
        Manner = FaultManner.Wrong,
        Parameter = new("part", "part of the nominal voltage that is left; 0 is a drop-out", "1", 0, 1.25, 0) { Harmless = 1 },
        Effect = "The logic and the cycle switches get another voltage: the logic stops below its limit once its hold-up time is over, a switch shows what its loop makes of it.",
        Noticed = "Lamps dim or go dark, and the logic starts anew.",
        Needs = "the logic without power, a voltage that is measured, or a cycle switch's level other than with the nominal voltage",
        HealingNote = "The nominal voltage is back at once; the logic powers up when its limit is passed.",
        Change = (feeding, fault) => feeding.At(fault.NowUs).SetPart(fault.Value),
        Differs = (feeding, _) => feeding.IsFelt,
    };

    /// <summary>A ripple lies on the control supply.</summary>
    public static Fault Ripple { get; } = new PlantFault<FeedingSupply>(Supply)
    {
        Name = "control-supply-ripple",
        Place = "the control supply",
        Manner = FaultManner.Wrong,
        Parameter = new("ripple", "peak to peak", "V", 0, 60, 6) { Harmless = 0 },
        Second = new("period", "from peak to peak", "s", 0.0001, 1, 0.01),
        Effect = "A triangular ripple lies on the control voltage, as of a smoothing capacitor that has dried out.",
        Noticed = "Relays hum and lamps flicker.",
        Needs = "the logic without power, a voltage that is measured, or a cycle switch's level other than with the nominal voltage",
        Change = (feeding, fault) => feeding.At(fault.NowUs).SetRipple(fault.Value, fault.On ? fault.Second : 1),
        Differs = (feeding, _) => feeding.IsFelt,
    };
}
