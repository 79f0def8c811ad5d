using LubeController.Plant.Faults;
using LubeController.Plant.Inputs;

namespace LubeController.Plant.Sensors;

/// <summary>Faults of pressure gauge and pressure transmitter, and of the 4-20 mA loop from it.</summary>
public static class PressureReadingFaults
{
    private const string AnotherReading = "a reading other than the sound one";

    internal static readonly FaultPart<LaggedPressure> Gauge = new();
    internal static readonly FaultPart<LaggedPressure> Transmitter = new();

    /// <summary>The pressure gauge is off by a constant.</summary>
    public static Fault GaugeWrong { get; } = new PlantFault<LaggedPressure>(Gauge)
    {
        Name = "gauge-wrong",
        Place = "the pressure gauge",
        Manner = FaultManner.Wrong,
        Parameter = new("offset", "pressure added to what it shows", "Pa", -4e7, 4e7, 1e6) { Harmless = 0 },
        Effect = "The gauge shows another pressure than there is.",
        Noticed = "Its pointer does not return to zero when the line is relieved.",
        Needs = "a reading other than the sound one",
        Change = (gauge, fault) => gauge.OffsetPa = fault.Value,
        Differs = (gauge, _) => gauge.IsOff(0),
    };

    /// <summary>The pressure transmitter is off by a constant.</summary>
    public static Fault TransmitterWrong { get; } = new PlantFault<LaggedPressure>(Transmitter)
    {
        Name = "transmitter-wrong",
        Place = "the pressure transmitter",
        Manner = FaultManner.Wrong,
        Parameter = new("offset", "pressure added to what it tells", "Pa", -4e7, 4e7, 1e6) { Harmless = 0 },
        Effect = "The transmitter tells another pressure than there is.",
        Noticed = "Its reading and the gauge do not agree.",
        Needs = "a reading other than the sound one",
        Change = (transmitter, fault) => transmitter.OffsetPa = fault.Value,
        Differs = (transmitter, _) => transmitter.IsOff(0),
    };

    /// <summary>The pressure transmitter follows late.</summary>
    public static Fault TransmitterLagging { get; } = new PlantFault<LaggedPressure>(Transmitter)
    {
        Name = "transmitter-lagging",
        Place = "the pressure transmitter",
        Manner = FaultManner.Slow,
        Parameter = new("time-constant", "time constant of its lag", "s", 0, 600, 5) { Harmless = 0 },
        Effect = "The transmitter follows the pressure late, as of a clogged tapping.",
        Noticed = "Its reading creeps after the gauge.",
        Needs = "a reading other than the sound one",
        Change = (transmitter, fault) => transmitter.LagS = fault.On ? fault.Value : double.NaN,
        Differs = (transmitter, plant) => transmitter.LagsBehind(plant.NodePressurePa(transmitter.Node)),
    };

    /// <summary>The pressure transmitter's loop is interrupted.</summary>
    public static Fault LoopBroken { get; } = new PlantFault<LaggedPressure>(Transmitter)
    {
        Name = "transmitter-loop-broken",
        Place = "the pressure transmitter's loop",
        Manner = FaultManner.Off,
        Effect = "No current flows: a quarter of the range below zero.",
        Noticed = "The reading falls below zero and stays there.",
        Needs = AnotherReading,
        Change = (transmitter, fault) => transmitter.SetLoopFault(LoopFault.WireBroken, fault.On),
        Differs = (transmitter, _) => transmitter.IsOff(0),
    };

    /// <summary>The two cores of the pressure transmitter's loop touch.</summary>
    public static Fault LoopShorted { get; } = new PlantFault<LaggedPressure>(Transmitter)
    {
        Name = "transmitter-loop-shorted",
        Place = "the pressure transmitter's loop",
        Manner = FaultManner.Stuck,
        Effect = "The two cores touch: as much current as the input lets through, above what a sound transmitter drives.",
        Noticed = "The reading stands beyond the end of the range.",
        Needs = AnotherReading,
        Change = (transmitter, fault) => transmitter.SetLoopFault(LoopFault.Shorted, fault.On),
        Differs = (transmitter, _) => transmitter.IsOff(0),
    };

    /// <summary>The pressure transmitter's loop has a resistance more.</summary>
    public static Fault LoopResistive { get; } = new PlantFault<LaggedPressure>(Transmitter)
    {
        Name = "transmitter-loop-resistive",
        Place = "the pressure transmitter's loop",
        Manner = FaultManner.Wrong,
        Parameter = new("resistance", "resistance added", "ohm", 0, 1e6, 1000) { Harmless = 0 },
        Effect = "The loop has a resistance more: above the current for which the supply suffices the transmitter cannot drive it.",
        Noticed = "High pressures read too low, low ones right.",
        Needs = AnotherReading,
        Change = (transmitter, fault) => transmitter.ExtraOhms = fault.Value,
        Differs = (transmitter, _) => transmitter.IsOff(0),
    };

    /// <summary>The pressure transmitter reports its failure by a low current.</summary>
    public static Fault FailsLow { get; } = new PlantFault<LaggedPressure>(Transmitter)
    {
        Name = "transmitter-fails-low",
        Place = "the pressure transmitter",
        Manner = FaultManner.Stuck,
        Effect = "The transmitter reports its own failure by a current below the valid ones of NAMUR NE 43.",
        Noticed = "The reading stands just below zero.",
        Needs = AnotherReading,
        Change = (transmitter, fault) => transmitter.SetLoopFault(LoopFault.DrivesLow, fault.On),
        Differs = (transmitter, _) => transmitter.IsOff(0),
    };

    /// <summary>The pressure transmitter reports its failure by a high current.</summary>
    public static Fault FailsHigh { get; } = new PlantFault<LaggedPressure>(Transmitter)
    {
        Name = "transmitter-fails-high",
        Place = "the pressure transmitter",
        Manner = FaultManner.Stuck,
        Effect = "The transmitter reports its own failure by a current above the valid ones of NAMUR NE 43.",
        Noticed = "The reading stands beyond the end of the range.",
        Needs = AnotherReading,
        Change = (transmitter, fault) => transmitter.SetLoopFault(LoopFault.DrivesHigh, fault.On),
        Differs = (transmitter, _) => transmitter.IsOff(0),
    };
}
