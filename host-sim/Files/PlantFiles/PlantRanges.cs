using LubeController.Files.Quantities;

namespace LubeController.Files.PlantFiles;

/// <summary>Ranges of a plant file's quantities, in the units people use. The plant's own check holds the same ones in SI.</summary>
internal static class PlantRanges
{
    public static readonly QuantityRange Reservoir = new(UnitFamily.Volume, 0, 10_000, "l");
    public static readonly QuantityRange Capacity = new(UnitFamily.Volume, 0.01, 10_000, "l");
    public static readonly QuantityRange Temperature = new(UnitFamily.Temperature, -73.15, 226.85, "degC");
    public static readonly QuantityRange Flow = new(UnitFamily.Flow, 0.00006, 600_000, "cm3/min");
    public static readonly QuantityRange Bore = new(UnitFamily.Length, 1, 100, "mm");
    public static readonly QuantityRange Stroke = new(UnitFamily.Length, 0.1, 200, "mm");
    public static readonly QuantityRange CamSpeed = new(UnitFamily.Speed, 0.06, 6000, "rpm");
    public static readonly QuantityRange Efficiency = new(UnitFamily.Ratio, 1, 100, "%");
    public static readonly QuantityRange Part = new(UnitFamily.Ratio, 0, 100, "%");
    public static readonly QuantityRange LineVolume = new(UnitFamily.Volume, 0.1, 1_000_000, "cm3");
    public static readonly QuantityRange BulkModulus = new(UnitFamily.Pressure, 1, 10_000, "MPa");
    public static readonly QuantityRange Air = new(UnitFamily.Volume, 0, 500_000, "cm3");
    public static readonly QuantityRange Opening = new(UnitFamily.Pressure, 0.1, 1000, "bar");
    public static readonly QuantityRange Stroked = new(UnitFamily.Volume, 0.001, 1000, "cm3");
    public static readonly QuantityRange Resistance = new(UnitFamily.Pressure, 0, 500, "bar");
    public static readonly QuantityRange Weight = new(UnitFamily.Ratio, 0.001, 1000, "1");
    public static readonly QuantityRange StrokeFlow = new(UnitFamily.Flow, 0.06, 600_000, "cm3/min");
    public static readonly QuantityRange Clearance = new(UnitFamily.Flow, 0.00000006, 600_000, "cm3/min");
    public static readonly QuantityRange Trip = new(UnitFamily.Pressure, 0, 1000, "bar");
    public static readonly QuantityRange GasExponent = new(UnitFamily.Ratio, 1, 1.67, "1");
    public static readonly QuantityRange TubeLength = new(UnitFamily.Length, 0.01, 1000, "m");
    public static readonly QuantityRange OutletLength = new(UnitFamily.Length, 0, 1000, "m");
    public static readonly QuantityRange TubeBore = new(UnitFamily.Length, 0.5, 100, "mm");
    public static readonly QuantityRange WallModulus = new(UnitFamily.Pressure, 1, 10_000_000, "MPa");
    public static readonly QuantityRange StrainerLoss = new(UnitFamily.Pressure, 0, 100, "bar");
    public static readonly QuantityRange Override = new(UnitFamily.Pressure, 0, 1000, "bar");
    public static readonly QuantityRange Reseat = new(UnitFamily.Pressure, 1e-5, 1000, "bar");
    public static readonly QuantityRange HalfLimitLoss = new(UnitFamily.Pressure, 1e-5, 100, "bar");
    public static readonly QuantityRange Leakage = new(UnitFamily.Leakage, 0, 6000, "cm3/min/bar");
    public static readonly QuantityRange VentFlow = new(UnitFamily.Leakage, 0.006, 6_000_000, "cm3/min/bar");
    public static readonly QuantityRange FillingLoss = new(UnitFamily.Ratio, 0, 10, "1");
    public static readonly QuantityRange SpeedSag = new(UnitFamily.PerPressure, 0, 10, "%/bar");
    public static readonly QuantityRange OverloadTrip = new(UnitFamily.Time, 0.1, 600, "s");
    public static readonly QuantityRange OverloadCool = new(UnitFamily.Time, 1, 36_000, "s");
    public static readonly QuantityRange StallPressure = new(UnitFamily.Pressure, 1, 10_000, "bar");
    public static readonly QuantityRange EntrainedAir = new(UnitFamily.Ratio, 0, 20, "%");
    public static readonly QuantityRange ReadingRange = new(UnitFamily.Pressure, 1, 1000, "bar");
    public static readonly QuantityRange Voltage = new(UnitFamily.Voltage, 0.1, 48, "V");
    public static readonly QuantityRange LoopResistance = new(UnitFamily.Resistance, 1, 10_000, "ohm");
    public static readonly QuantityRange HoldUp = new(UnitFamily.Time, 0, 10, "s");
    public static readonly QuantityRange ReadingLag = new(UnitFamily.Time, 0, 60, "s");
    public static readonly QuantityRange Discharge = new(UnitFamily.Pressure, 0.1, 500, "bar");
    public static readonly QuantityRange RechargeTime = new(UnitFamily.Time, 0.001, 3600, "s");
    public static readonly QuantityRange ShaftSpeed = new(UnitFamily.Speed, 0, 60_000, "rpm");
    public static readonly QuantityRange ShortestPulse = new(UnitFamily.Time, 0, 1, "s");
}
