namespace LubeController.Plant.Faults.Registry;

/// <summary>Faults of the supply of controller and cycle switches.</summary>
internal static class SupplyFaults
{
    internal static FaultInfo[] All { get; } =
    [
        new()
        {
            Kind = FaultKind.ControlSupplyLow,
            Name = "control-supply-low",
            Part = FaultPart.ControlSupply,
            Place = "the control supply",
            Manner = FaultManner.Wrong,
            Parameter = new("part", "part of the nominal voltage that is left; 0 is a drop-out", "1", 0, 1.25, 0) { Harmless = 1 },
            Effect = "The logic and the cycle switches get another voltage: the logic stops below its limit once its hold-up time is over, a switch shows what its loop makes of it.",
            Noticed = "Lamps dim or go dark, and the logic starts anew.",
            Needs = "the logic without power, a voltage that is measured, or a cycle switch's level other than with the nominal voltage",
            HealingNote = "The nominal voltage is back at once; the logic powers up when its limit is passed.",
        },
        new()
        {
            Kind = FaultKind.ControlSupplyRipple,
            Name = "control-supply-ripple",
            Part = FaultPart.ControlSupply,
            Place = "the control supply",
            Manner = FaultManner.Wrong,
            Parameter = new("ripple", "peak to peak", "V", 0, 60, 6) { Harmless = 0 },
            Second = new("period", "from peak to peak", "s", 0.0001, 1, 0.01),
            Effect = "A triangular ripple lies on the control voltage, as of a smoothing capacitor that has dried out.",
            Noticed = "Relays hum and lamps flicker.",
            Needs = "the logic without power, a voltage that is measured, or a cycle switch's level other than with the nominal voltage",
        },
    ];
}
