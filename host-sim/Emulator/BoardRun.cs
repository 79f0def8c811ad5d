using LubeController.Board;

namespace LubeController.Emulator;

/// <summary>How the board starts, leaves its main loop, and comes back, until the run ends.</summary>
internal sealed class BoardRun(Bench bench, BenchWorld world, VirtualBoard board, OutputPins pins, ScanTicks ticks, ScanWait wait)
{
    private const long RestartUs = Bench.RestartMs * 1_000L;

    private ResetCause _nextCause = ResetCause.PowerOn;

    /// <summary>Resets of the board by its own watchdog.</summary>
    public int WatchdogResets { get; private set; }

    /// <summary>Exceptions that the main loop caught.</summary>
    public int LoopFaults { get; private set; }

    /// <summary>Runs to the end, or to the scan bound.</summary>
    public void Run()
    {
        world.Act();
        while (world.NowUs < world.EndUs && !board.BoundReached)
        {
            if (!world.Powered)
            {
                RunUnpowered();
                continue;
            }

            // The board's first scan falls on the common grid of ticks, so that skipping does not depend on when power came.
            ticks.Last = bench.Platform.Clock.TickAtOrAfter(world.NowUs);
            world.PassTo(bench.Platform.Clock.TimeOf(ticks.Last));
            if (world.Powered)
            {
                PowerUp();
                RunLoop();
            }

            if (!world.Powered)
                DropOutputs();
        }
    }

    private void PowerUp()
    {
        board.PowerUp(_nextCause);
        bench.Trace.Note(world.NowUs, "power", board.Loop!.StateRestored ? "up, saved state restored" : "up, no saved state");
        if (board.ResetCause != ResetCause.PowerOn)
            bench.Trace.Note(world.NowUs, "board", "started after " + CauseText(board.ResetCause));
    }

    private static string CauseText(ResetCause cause) => cause switch
    {
        ResetCause.BrownOut => "a brown-out",
        ResetCause.Watchdog => "a reset by its watchdog",
        ResetCause.LoopFault => "a fault in the main loop",
        _ => "power came",
    };

    /// <summary>Runs the main loop until the run is over, power goes, or the board is reset and ready to start again.</summary>
    private void RunLoop()
    {
        wait.Begin();
        if (!wait.Hangs && !bench.Storage.PowerLost)
            board.Loop!.Run();
        if (bench.Storage.PowerLost)
        {
            LosePowerInWrite();
            return;
        }

        if (board.Loop!.Faults > 0)
        {
            LoopFaults += board.Loop.Faults;
            Restart(ResetCause.LoopFault);
            return;
        }

        bool bitten = wait.Hangs ? HangUntilBitten() : wait.Bitten;
        if (bitten && world.Powered)
            ResetByWatchdog();
    }

    /// <summary>The loop does not complete the scan of this instant: outputs stay as they are until the watchdog bites.</summary>
    /// <returns>Whether it bit; if not, power went or the run ended first.</returns>
    private bool HangUntilBitten()
    {
        bench.Platform.Hangs++;
        pins.StopBeating();
        long bites = bench.Platform.Watchdog.BitesUs(ticks.SkippedUs);
        world.PassTo(bites);
        return world.NowUs == bites;
    }

    /// <summary>The supply dipped in the middle of a write, and comes back at once.</summary>
    private void LosePowerInWrite()
    {
        bench.Platform.TornWrites++;
        bench.Trace.Note(world.NowUs, "board", "browned out in the middle of a write to its memory");
        Restart(ResetCause.BrownOut);
    }

    private void ResetByWatchdog()
    {
        WatchdogResets++;
        bench.Platform.Timing.Scanned();
        bench.Trace.Note(world.NowUs, "board", "reset by its watchdog");
        Restart(ResetCause.Watchdog);
    }

    /// <summary>A board that restarts is away for a while; without that, one that faults at once would never let time pass.</summary>
    private void Restart(ResetCause cause)
    {
        _nextCause = cause;
        pins.Release();
        world.PassTo(world.NowUs + RestartUs);
    }

    private void DropOutputs()
    {
        pins.Release();
        bench.Trace.Note(world.NowUs, "power", "off");
        _nextCause = bench.Controls.Power ? ResetCause.BrownOut : ResetCause.PowerOn;
    }

    private void RunUnpowered()
    {
        while (world.NowUs < world.EndUs && !world.Powered)
        {
            world.Pass(world.EndUs);
            if (!bench.Controls.Power)
                _nextCause = ResetCause.PowerOn;
        }
    }
}
