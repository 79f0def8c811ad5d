using LubeController.Emulator.Platform;

namespace LubeController.Emulator;

/// <summary>Where the scans stand on the grid of ticks: the last one, what was skipped before it, how late it came.</summary>
internal sealed class ScanTicks(BoardClock clock)
{
    private long _first;

    /// <summary>Tick of the last scan that was made or missed.</summary>
    public long Last { get; set; }

    /// <summary>The last scan before it that was skipped, us; -1 where the one before it was made, or missed by being late.</summary>
    public long SkippedUs { get; private set; } = -1;

    /// <summary>By how much it came late, milliseconds.</summary>
    public int LateMs { get; set; }

    /// <summary>The board starts: nothing was skipped, nothing is late.</summary>
    public void Begin()
    {
        SkippedUs = -1;
        LateMs = 0;
    }

    /// <summary>The first tick at which another scan can be made; what lies between it and the next scan is skipped.</summary>
    public long Next(long nowUs) => _first = System.Math.Max(Last + 1, clock.TickAtOrAfter(nowUs + 1));

    /// <summary>The last scan before a tick that is skipped, us; -1 for none.</summary>
    public long SkippedBefore(long tick) => tick > _first ? clock.TimeOf(tick - 1) : -1;

    /// <summary>Goes on to a tick, whether its scan is made or missed.</summary>
    public void MoveTo(long tick)
    {
        SkippedUs = SkippedBefore(tick);
        Last = tick;
    }
}
