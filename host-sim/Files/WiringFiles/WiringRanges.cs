using LubeController.Files.Quantities;

namespace LubeController.Files.WiringFiles;

/// <summary>Ranges of a wiring's quantities, in the units people use. The plant's own check holds the same ones in SI.</summary>
internal static class WiringRanges
{
    public static readonly QuantityRange Supply = new(UnitFamily.Voltage, 0.1, 60, "V");
    public static readonly QuantityRange Feed = new(UnitFamily.Voltage, 0, 60, "V");
    public static readonly QuantityRange Window = new(UnitFamily.Voltage, -60, 60, "V");
    public static readonly QuantityRange Low = new(UnitFamily.Resistance, 0.001, 1000, "ohm");
    public static readonly QuantityRange Contact = new(UnitFamily.Resistance, 0.0001, 1000, "ohm");
    public static readonly QuantityRange Part = new(UnitFamily.Resistance, 0.001, 1e9, "ohm");
    public static readonly QuantityRange Burden = new(UnitFamily.Resistance, 1, 1e6, "ohm");
    public static readonly QuantityRange Delay = new(UnitFamily.Time, 0, 1, "s");
    public static readonly QuantityRange Rating = new(UnitFamily.Current, 0.001, 100, "A");
    public static readonly QuantityRange Power = new(UnitFamily.Power, 0.001, 100, "W");
}
