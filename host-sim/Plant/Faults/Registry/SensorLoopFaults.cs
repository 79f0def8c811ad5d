namespace LubeController.Plant.Faults.Registry;

/// <summary>Faults of a cycle switch's loop: its target, what covers it, its supply and the cores of its cable.</summary>
internal static class SensorLoopFaults
{
    private const string Differs = "a level at the input other than the sound loop's";

    internal static FaultInfo[] All { get; } =
    [
        new()
        {
            Kind = FaultKind.SensorTargetFar,
            Name = "sensor-target-far",
            Part = FaultPart.Sensor,
            Place = "the cycle switch's target",
            Manner = FaultManner.Wrong,
            Effect = "The target passes further away, as of a bent bracket or a worn pin.",
            Noticed = "The switch's lamp comes on late or not at all, and the gap is wide.",
            Needs = Differs,
            Parameter = new("offset", "how much further away", "m", 0, 0.1, 0.005) { Harmless = 0 },
        },
        new()
        {
            Kind = FaultKind.SensorChips,
            Name = "sensor-chips",
            Part = FaultPart.Sensor,
            Place = "the cycle switch's face",
            Manner = FaultManner.Wrong,
            Effect = "Metal chips cover the switch: an inductive or capacitive one senses them, a magnet's reach is halved.",
            Noticed = "Chips stick to the switch, and its lamp may stay on.",
            Needs = Differs,
            HealingNote = "Works again at once when cleaned.",
        },
        new()
        {
            Kind = FaultKind.SensorWater,
            Name = "sensor-water",
            Part = FaultPart.Sensor,
            Place = "the cycle switch's face",
            Manner = FaultManner.Wrong,
            Effect = "Water covers the switch: a capacitive one senses it, others do not.",
            Noticed = "The switch is wet, and its lamp may stay on.",
            Needs = Differs,
            HealingNote = "Works again at once when dry.",
        },
        new()
        {
            Kind = FaultKind.SensorSupplyLow,
            Name = "sensor-supply-low",
            Part = FaultPart.Sensor,
            Place = "the cycle switch's supply",
            Manner = FaultManner.Wrong,
            Effect = "The loop is fed with another voltage.",
            Noticed = "The switch's lamp is dim or dark.",
            Needs = Differs,
            Parameter = new("voltage", "supply of the loop", "V", 0, 60, 8),
        },
        new()
        {
            Kind = FaultKind.SensorCoreBroken,
            Name = "sensor-core-broken",
            Part = FaultPart.SensorCore,
            Place = "the core of the cycle switch's cable",
            Manner = FaultManner.Off,
            Effect = "The core conducts no more.",
            Noticed = "A pulled plug or a core out of its terminal.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.SensorCoreResistive,
            Name = "sensor-core-resistive",
            Part = FaultPart.SensorCore,
            Place = "the core of the cycle switch's cable",
            Manner = FaultManner.Wrong,
            Effect = "The core has a resistance more.",
            Noticed = "Green pins in the plug.",
            Needs = Differs,
            Parameter = new("resistance", "resistance added", "ohm", 0, 1e9, 10_000) { Harmless = 0 },
        },
        new()
        {
            Kind = FaultKind.SensorCoreShortedToSupply,
            Name = "sensor-core-shorted-to-supply",
            Part = FaultPart.SensorCore,
            Place = "the core of the cycle switch's cable",
            Manner = FaultManner.Wrong,
            Effect = "The core touches the supply's plus.",
            Noticed = "A crushed or chafed cable.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.SensorCoreShortedToGround,
            Name = "sensor-core-shorted-to-ground",
            Part = FaultPart.SensorCore,
            Place = "the core of the cycle switch's cable",
            Manner = FaultManner.Wrong,
            Effect = "The core touches ground.",
            Noticed = "A crushed or chafed cable, and a warm supply.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.SensorCoresShorted,
            Name = "sensor-cores-shorted",
            Part = FaultPart.SensorCorePair,
            Place = "the cores of the cycle switch's cable",
            Manner = FaultManner.Wrong,
            Effect = "Two cores touch.",
            Noticed = "A crushed cable, or water in the plug.",
            Needs = Differs,
        },
        new()
        {
            Kind = FaultKind.SensorCoresSwapped,
            Name = "sensor-cores-swapped",
            Part = FaultPart.SensorCorePair,
            Place = "the cores of the cycle switch's cable",
            Manner = FaultManner.Wrong,
            Effect = "Two cores are connected in each other's place.",
            Noticed = "A level that does not follow the switch's lamp after a repair.",
            Needs = Differs,
        },
    ];
}
