using System.Globalization;

namespace LubeController.Scripts.Records;

/// <summary>One line of a recorded run: a signal has a value from a time on.</summary>
/// <param name="TimeUs">Virtual time, microseconds.</param>
/// <param name="Signal">Name of the signal, or <see cref="End"/>.</param>
/// <param name="Value">Value in the signal's SI unit.</param>
public readonly record struct TraceRecord(long TimeUs, string Signal, double Value)
{
    /// <summary>Name of the record that closes a run, at its end.</summary>
    public const string End = "end-of-run";

    /// <summary>The value as it is written: the shortest text that reads back as the same number.</summary>
    public string ValueText => Value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>The record as a line of the file.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{TimeUs},{Signal},{ValueText}");
}
