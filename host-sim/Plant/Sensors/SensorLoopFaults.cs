using LubeController.Plant.Faults;

namespace LubeController.Plant.Sensors;

/// <summary>Faults of a cycle switch's loop: its target, what covers it, its supply and the cores of its cable.</summary>
public static class SensorLoopFaults
{
    private const string AnotherLevel = "a level at the input other than the sound loop's";

    internal static readonly FaultPart<SensedSwitch> Sensor = new("cycle switch with a sensor");
    internal static readonly FaultPart<SensedSwitch> Core = new("such a switch + brown, blue or black");
    internal static readonly FaultPart<SensedSwitch> CorePair = new("such a switch + two colours");

    /// <summary>The target of a cycle switch passes further away.</summary>
    public static Fault TargetFar { get; } = new PlantFault<SensedSwitch>(Sensor)
    {
        Name = "sensor-target-far",
        Place = "the cycle switch's target",
        Manner = FaultManner.Wrong,
        Effect = "The target passes further away, as of a bent bracket or a worn pin.",
        Noticed = "The switch's lamp comes on late or not at all, and the gap is wide.",
        Needs = AnotherLevel,
        Parameter = new("offset", "how much further away", "m", 0, 0.1, 0.005) { Harmless = 0 },
        Change = (sensor, fault) => sensor.At(fault.NowUs).Loop.SetTargetOffset(fault.Value),
        Differs = (sensor, _) => sensor.IsWrong,
    };

    /// <summary>Metal chips cover a cycle switch.</summary>
    public static Fault Chips { get; } = new PlantFault<SensedSwitch>(Sensor)
    {
        Name = "sensor-chips",
        Place = "the cycle switch's face",
        Manner = FaultManner.Wrong,
        Effect = "Metal chips cover the switch: an inductive or capacitive one senses them, a magnet's reach is halved.",
        Noticed = "Chips stick to the switch, and its lamp may stay on.",
        Needs = AnotherLevel,
        HealingNote = "Works again at once when cleaned.",
        Change = (sensor, fault) => sensor.At(fault.NowUs).Loop.SetSoiling(fault.On ? Soiling.MetalChips : Soiling.Clean),
        Differs = (sensor, _) => sensor.IsWrong,
    };

    /// <summary>Water covers a cycle switch.</summary>
    public static Fault Water { get; } = new PlantFault<SensedSwitch>(Sensor)
    {
        Name = "sensor-water",
        Place = "the cycle switch's face",
        Manner = FaultManner.Wrong,
        Effect = "Water covers the switch: a capacitive one senses it, others do not.",
        Noticed = "The switch is wet, and its lamp may stay on.",
        Needs = AnotherLevel,
        HealingNote = "Works again at once when dry.",
        Change = (sensor, fault) => sensor.At(fault.NowUs).Loop.SetSoiling(fault.On ? Soiling.Water : Soiling.Clean),
        Differs = (sensor, _) => sensor.IsWrong,
    };

    /// <summary>The loop of a cycle switch is fed with another voltage.</summary>
    public static Fault SupplyLow { get; } = new PlantFault<SensedSwitch>(Sensor)
    {
        Name = "sensor-supply-low",
        Place = "the cycle switch's supply",
        Manner = FaultManner.Wrong,
        Effect = "The loop is fed with another voltage.",
        Noticed = "The switch's lamp is dim or dark.",
        Needs = AnotherLevel,
        Parameter = new("voltage", "supply of the loop", "V", 0, 60, 8),
        Change = (sensor, fault) => sensor.At(fault.NowUs).SetOwnSupply(fault.On ? fault.Value : null),
        Differs = (sensor, _) => sensor.IsWrong,
    };

    /// <summary>A core of a cycle switch's cable is broken.</summary>
    public static Fault CoreBroken { get; } = new PlantFault<SensedSwitch>(Core)
    {
        Name = "sensor-core-broken",
        Place = "the core of the cycle switch's cable",
        Manner = FaultManner.Off,
        Effect = "The core conducts no more.",
        Noticed = "A pulled plug or a core out of its terminal.",
        Needs = AnotherLevel,
        Change = (core, fault) => core.At(fault.NowUs).SetCoreBroken(core.Core, fault.On),
        Differs = (sensor, _) => sensor.IsWrong,
    };

    /// <summary>A core of a cycle switch's cable has a resistance.</summary>
    public static Fault CoreResistive { get; } = new PlantFault<SensedSwitch>(Core)
    {
        Name = "sensor-core-resistive",
        Place = "the core of the cycle switch's cable",
        Manner = FaultManner.Wrong,
        Effect = "The core has a resistance more.",
        Noticed = "Green pins in the plug.",
        Needs = AnotherLevel,
        Parameter = new("resistance", "resistance added", "ohm", 0, 1e9, 10_000) { Harmless = 0 },
        Change = (core, fault) => core.At(fault.NowUs).Loop.SetCoreOhms(core.Core, fault.Value),
        Differs = (sensor, _) => sensor.IsWrong,
    };

    /// <summary>A core of a cycle switch's cable touches the supply's plus.</summary>
    public static Fault CoreShortedToSupply { get; } = new PlantFault<SensedSwitch>(Core)
    {
        Name = "sensor-core-shorted-to-supply",
        Place = "the core of the cycle switch's cable",
        Manner = FaultManner.Wrong,
        Effect = "The core touches the supply's plus.",
        Noticed = "A crushed or chafed cable.",
        Needs = AnotherLevel,
        Change = (core, fault) => core.At(fault.NowUs).Loop.SetCoreToSupply(core.Core, fault.On),
        Differs = (sensor, _) => sensor.IsWrong,
    };

    /// <summary>A core of a cycle switch's cable touches ground.</summary>
    public static Fault CoreShortedToGround { get; } = new PlantFault<SensedSwitch>(Core)
    {
        Name = "sensor-core-shorted-to-ground",
        Place = "the core of the cycle switch's cable",
        Manner = FaultManner.Wrong,
        Effect = "The core touches ground.",
        Noticed = "A crushed or chafed cable, and a warm supply.",
        Needs = AnotherLevel,
        Change = (core, fault) => core.At(fault.NowUs).Loop.SetCoreToGround(core.Core, fault.On),
        Differs = (sensor, _) => sensor.IsWrong,
    };

    /// <summary>Two cores of a cycle switch's cable touch.</summary>
    public static Fault CoresShorted { get; } = new PlantFault<SensedSwitch>(CorePair)
    {
        Name = "sensor-cores-shorted",
        Place = "the cores of the cycle switch's cable",
        Manner = FaultManner.Wrong,
        Effect = "Two cores touch.",
        Noticed = "A crushed cable, or water in the plug.",
        Needs = AnotherLevel,
        Change = (pair, fault) => pair.At(fault.NowUs).Loop.SetCoresShorted(pair.Core, pair.Other, fault.On),
        Differs = (sensor, _) => sensor.IsWrong,
    };

    /// <summary>Two cores of a cycle switch's cable are swapped.</summary>
    public static Fault CoresSwapped { get; } = new PlantFault<SensedSwitch>(CorePair)
    {
        Name = "sensor-cores-swapped",
        Place = "the cores of the cycle switch's cable",
        Manner = FaultManner.Wrong,
        Effect = "Two cores are connected in each other's place.",
        Noticed = "A level that does not follow the switch's lamp after a repair.",
        Needs = AnotherLevel,
        Change = (pair, fault) => pair.At(fault.NowUs).Loop.SetCoresSwapped(pair.Core, pair.Other, fault.On),
        Differs = (sensor, _) => sensor.IsWrong,
    };
}
