using LubeController.Files.Quantities;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>Ranges of a script's quantities.</summary>
internal static class ScriptRanges
{
    public static readonly QuantityRange Duration = new(UnitFamily.Time, 0.001, 31_536_000, "s");
    public static readonly QuantityRange ScanPeriod = new(UnitFamily.Time, 1, ScriptReader.LongestScanPeriodMs, "ms");
    public static readonly QuantityRange Time = new(UnitFamily.Time, 0, 365, "d");
    public static readonly QuantityRange TimeInMs = new(UnitFamily.Time, 0, 31_536_000_000, "ms");
    public static readonly QuantityRange Over = new(UnitFamily.Time, 1, 31_536_000_000, "ms");
    public static readonly QuantityRange Shelving = new(UnitFamily.Time, 0.001, 24 * 24 * 3600, "s");
    public static readonly QuantityRange Press = new(UnitFamily.Time, 1, 3_600_000, "ms");
    public static readonly QuantityRange Speed = new(UnitFamily.Speed, 0, 60_000, "rpm");
    public static readonly QuantityRange Ramp = new(UnitFamily.Time, 0, 1_000_000, "s");
    public static readonly QuantityRange Refill = new(UnitFamily.Volume, 0, 10_000, "l");
    public static readonly QuantityRange Temperature = new(UnitFamily.Temperature, -73.15, 226.85, "degC");
}
