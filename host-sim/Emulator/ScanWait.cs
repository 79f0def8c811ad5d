using System;
using LubeController.Core;
using LubeController.Emulator.Platform;

namespace LubeController.Emulator;

/// <summary>How the world moves while the main loop waits for its next scan.</summary>
internal sealed class ScanWait(BenchWorld world, BoardPlatform platform, QuietTime quiet, ScanTicks ticks)
{
    /// <summary>Whether the loop hangs instead of making its next scan.</summary>
    public bool Hangs { get; private set; }

    /// <summary>Whether the watchdog bit before a scan that was held up.</summary>
    public bool Bitten { get; private set; }

    /// <summary>The main loop is about to run, or to hang at its first scan.</summary>
    public void Begin()
    {
        Hangs = platform.LoopHangs;
        Bitten = false;
    }

    /// <summary>Moves plant and driver to the next tick at which the core must scan, or to the reset that comes before.</summary>
    /// <param name="core">The core.</param>
    /// <param name="mostMs">Longest wait the main loop allows, milliseconds.</param>
    /// <returns>Whether the scan is made; if not, the loop is left.</returns>
    public bool MoveWorld(Controller core, int mostMs)
    {
        long first = ticks.Next(world.NowUs);
        long due = quiet.Due(core, mostMs, first, ticks.LateMs > 0);
        world.Act();
        if (!world.Powered)
            return false;
        if (quiet.IsOver(core))
            due = first;
        while (true)
        {
            long next = Math.Min(due, quiet.ShaftTick(core, first));
            long changeUs = world.NextUs;
            next = Math.Min(next, quiet.PressureTick(core, first, Math.Min(changeUs, platform.Clock.TimeOf(next))));
            (long reachUs, bool scans) = Planned(next);
            if (changeUs > reachUs || changeUs > world.EndUs)
                return Reach(next, reachUs, scans);
            world.AdvanceTo(changeUs);
            world.Act();
            if (!world.Powered)
                return false;
            if (quiet.IsOver(core))
                due = Math.Min(due, Math.Max(platform.Clock.TickAtOrAfter(changeUs), first));
        }
    }

    /// <summary>Until when the world moves for the scan of a tick, and whether it is made then.</summary>
    private (long ReachUs, bool Scans) Planned(long tick)
    {
        long tickUs = platform.Clock.TimeOf(tick);
        if (platform.LoopHangs)
            return (Math.Max(tickUs, world.NowUs), false);
        long scanUs = Math.Max(platform.Timing.TimeOf(tick, tickUs), world.NowUs);
        if (scanUs <= tickUs)
            return (scanUs, true);
        long bites = platform.Watchdog.BitesUs(ticks.SkippedBefore(tick));
        return bites < scanUs ? (bites, false) : (scanUs, true);
    }

    private bool Reach(long tick, long reachUs, bool scans)
    {
        world.AdvanceTo(Math.Min(reachUs, world.EndUs));
        if (reachUs > world.EndUs)
            return false;
        long tickUs = platform.Clock.TimeOf(tick);
        bool delayed = platform.Timing.Delays(tickUs);
        ticks.MoveTo(tick);
        if (!scans)
        {
            if (delayed && !platform.LoopHangs)
                platform.DelayedScans++;
            Hangs = platform.LoopHangs;
            Bitten = !Hangs;
            return false;
        }

        if (world.NowUs != tickUs && delayed)
            platform.DelayedScans++;
        else if (world.NowUs != tickUs)
            platform.ShiftedScans++;
        ticks.LateMs = world.NowUs > tickUs ? platform.Clock.LateMs(tick, world.NowUs) : 0;
        return true;
    }
}
