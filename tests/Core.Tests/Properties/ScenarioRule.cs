using System;

namespace LubeController.Core.Tests;

/// <summary>
/// A rest rule whose behaviour hangs on the inputs alone: faster when warm, too long, negative or throwing when hotter. It
/// also ends after a number of shaft pulses.
/// </summary>
internal sealed class ScenarioRule : IRestRule
{
    private long _progress;
    private int _pulses;

    public int SettingCount => 0;

    public SettingSpec Setting(int index) => throw new ArgumentOutOfRangeException(nameof(index));

    public void Set(int index, int value) => throw new ArgumentOutOfRangeException(nameof(index));

    public void Begin()
    {
        _progress = 0;
        _pulses = 0;
    }

    public void Advance(int elapsedMs, int shaftPulses, Inputs held)
    {
        _progress += (long)elapsedMs * Pace(held);
        _pulses = Saturating.Add(_pulses, shaftPulses);
    }

    public int RemainingMs(Inputs inputs) => inputs.TemperatureDeciC switch
    {
        >= 900 => throw new InvalidOperationException("too hot"),
        >= 800 => -1,
        >= 700 => int.MaxValue - 1,
        _ => (int)Math.Min(1_900, Math.Max(0, ((3_000 * 2) - _progress + Pace(inputs) - 1) / Pace(inputs))),
    };

    public int RemainingShaftPulses(Inputs inputs) => Math.Max(0, 150 - _pulses);

    public void Transfer(StateStream stream)
    {
        _progress = stream.Number((int)_progress);
        _pulses = stream.Number(_pulses);
    }

    private static int Pace(Inputs inputs) => inputs.TemperatureDeciC >= 450 ? 3 : 2;
}
