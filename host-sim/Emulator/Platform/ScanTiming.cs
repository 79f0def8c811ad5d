using System;
using LubeController.Plant.Numbers;

namespace LubeController.Emulator.Platform;

/// <summary>When a planned scan really comes: delays that were set, and jitter that the seed and the tick decide.</summary>
/// <param name="seed">Seed of the jitter.</param>
/// <param name="periodUs">Scan period, us.</param>
internal sealed class ScanTiming(ulong seed, long periodUs)
{
    private long _delayUs;
    private long _untilUs;
    private bool _owed;

    /// <summary>Most by which a scan comes earlier or later, us.</summary>
    public long JitterUs { get; set; }

    /// <summary>Whether a scan planned from now on may come at another time than planned.</summary>
    public bool Disturbs(long nowUs) => JitterUs > 0 || (_delayUs > 0 && (_owed || nowUs <= _untilUs));

    /// <summary>Whether a delay, not jitter, holds up a scan.</summary>
    public bool Delays(long tickUs) => _delayUs > 0 && (_owed || tickUs <= _untilUs);

    /// <summary>Delays the next scan, and all that are planned within a span, or none any more.</summary>
    public void Delay(long nowUs, long delayUs, long spanUs, bool on)
    {
        _delayUs = on ? delayUs : 0;
        _untilUs = nowUs + spanUs;
        _owed = on;
    }

    /// <summary>A scan was made: what was owed is paid.</summary>
    public void Scanned() => _owed = false;

    /// <summary>When the scan planned for a tick comes, us.</summary>
    public long TimeOf(long tick, long tickUs) => tickUs + (Delays(tickUs) ? _delayUs : 0) + Jitter(tick);

    private long Jitter(long tick)
    {
        long most = Math.Min(JitterUs, (periodUs - 1) / 2);
        return most == 0 ? 0 : (long)(SeededGenerator.Mix(unchecked(SeededGenerator.Mix(seed) + (ulong)tick)) % (ulong)((2 * most) + 1)) - most;
    }
}
