using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Faults;
using LubeController.Plant.Injectors;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.Plant.Supplies;
using LubeController.Plant.Wiring;

namespace LubeController.Plant;

/// <summary>Every fault of the plant, in the order in which they are listed.</summary>
public static class FaultCatalogue
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Fault> All { get; } =
    [
        OutletFaults.Blocked,
        DividerFaults.InletBlocked,
        PumpFaults.SuctionBlocked,
        PumpFaults.Off,
        PumpFaults.Worn,
        LineFaults.Air,
        LineFaults.Leak,
        ValveFaults.ReliefStuckOpen,
        ReservoirFaults.Empty,
        LevelSwitchFaults.StuckOn,
        LevelSwitchFaults.StuckOff,
        PumpFaults.ContactWelded,
        CycleSwitchFaults.StuckOn,
        CycleSwitchFaults.StuckOff,
        CycleSwitchFaults.Chattering,
        CycleSwitchFaults.WireBroken,
        ShaftFaults.SwitchLost,
        PressureSwitchFaults.StuckOn,
        PressureSwitchFaults.StuckOff,
        CycleSwitchFaults.WireLoose,
        OutletFaults.Restricted,
        OutletFaults.LineLeaking,
        OutletFaults.BackPressure,
        LineFaults.StrainerClogged,
        DividerFaults.PistonStiff,
        DividerFaults.PistonWorn,
        DividerFaults.PistonStuck,
        ValveFaults.CheckValveLeaking,
        ValveFaults.ReliefStuckClosed,
        PumpFaults.Slow,
        ReservoirFaults.SuctionAerated,
        PumpFaults.FillingPoor,
        LineFaults.Burst,
        LubricantFaults.TemperatureOff,
        PumpFaults.MotorSupplyLow,
        PressureReadingFaults.GaugeWrong,
        PressureReadingFaults.TransmitterWrong,
        PressureReadingFaults.TransmitterLagging,
        ValveFaults.VentStuckOpen,
        ValveFaults.VentStuckClosed,
        InjectorFaults.Stuck,
        WiringFaults.WireOpen,
        WiringFaults.WireResistive,
        WiringFaults.WireBridged,
        WiringFaults.WireShortedToSupply,
        WiringFaults.WireShortedToGround,
        WiringFaults.ContactWelded,
        WiringFaults.ContactResistive,
        WiringFaults.LampBlown,
        WiringFaults.FuseBlown,
        SensorLoopFaults.TargetFar,
        SensorLoopFaults.Chips,
        SensorLoopFaults.Water,
        SensorLoopFaults.SupplyLow,
        SensorLoopFaults.CoreBroken,
        SensorLoopFaults.CoreResistive,
        SensorLoopFaults.CoreShortedToSupply,
        SensorLoopFaults.CoreShortedToGround,
        SensorLoopFaults.CoresShorted,
        SensorLoopFaults.CoresSwapped,
        SupplyFaults.Low,
        SupplyFaults.Ripple,
        PressureReadingFaults.LoopBroken,
        PressureReadingFaults.LoopShorted,
        PressureReadingFaults.LoopResistive,
        PressureReadingFaults.FailsLow,
        PressureReadingFaults.FailsHigh,
        PumpFaults.Seized,
    ];

    /// <summary>The fault of a name, or null.</summary>
    public static Fault? Find(string name) => All.FirstOrDefault(fault => string.Equals(fault.Name, name, StringComparison.Ordinal));

    /// <summary>
    /// The part names that a fault accepts in a plant; one empty name where there is nothing to choose, none where the plant
    /// has no such part.
    /// </summary>
    public static IReadOnlyList<string> PartNames(Fault fault, PlantDescription plant)
    {
        ArgumentNullException.ThrowIfNull(fault);
        ArgumentNullException.ThrowIfNull(plant);
        return PlantPart.Of(fault.Part) is { } part ? [.. part.Names(plant)] : [];
    }
}
