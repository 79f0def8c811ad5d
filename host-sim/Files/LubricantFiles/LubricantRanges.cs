using LubeController.Files.Quantities;

namespace LubeController.Files.LubricantFiles;

/// <summary>Ranges of a lubricant's values, in the units people use. The plant's own check holds the same ones in SI.</summary>
internal static class LubricantRanges
{
    public static readonly QuantityRange Grade = new(UnitFamily.Count, 2.2, 1500, "1");
    public static readonly QuantityRange Viscosity40 = new(UnitFamily.KinematicViscosity, 1, 10_000, "mm2/s");
    public static readonly QuantityRange SecondViscosity = new(UnitFamily.KinematicViscosity, 0.4, 1_000_000, "mm2/s");
    public static readonly QuantityRange SecondTemperature = new(UnitFamily.Temperature, -73.15, 226.85, "degC");
    public static readonly QuantityRange Slope = new(UnitFamily.Ratio, 0, 8, "1");
    public static readonly QuantityRange YieldStress = new(UnitFamily.Pressure, 0, 100_000, "Pa");
    public static readonly QuantityRange Consistency = new(UnitFamily.Consistency, 0.0001, 100_000, "Pa.s^n");
    public static readonly QuantityRange FlowIndex = new(UnitFamily.Ratio, 0.2, 1, "1");
    public static readonly QuantityRange Coefficient = new(UnitFamily.PerKelvin, 0, 0.1, "1/K");
    public static readonly QuantityRange Density = new(UnitFamily.Density, 500, 2000, "kg/m3");
    public static readonly QuantityRange Expansion = new(UnitFamily.PerKelvin, 0, 0.002, "1/K");
    public static readonly QuantityRange BulkModulus = new(UnitFamily.Pressure, 0.1, 10, "GPa");
}
