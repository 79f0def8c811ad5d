using System;
using LubeController.Board;
using LubeController.Core;

namespace LubeController.Emulator;

/// <summary>How the board leaves its main loop, and how it comes back.</summary>
public sealed partial class Bench
{
    private ResetCause _nextCause = ResetCause.PowerOn;
    private Outputs _shown = new();
    private bool _hung;
    private bool _bitten;

    /// <summary>Resets of the board by its own watchdog.</summary>
    public int WatchdogResets { get; private set; }

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
        _hung = Platform.LoopHangs;
        _bitten = false;
        if (!_hung && !_storage.PowerLost)
            _loop!.Run();
        if (_storage.PowerLost)
        {
            LosePowerInWrite();
            return;
        }

        if (_loop!.Faults > 0)
        {
            LoopFaults += _loop.Faults;
            Restart(ResetCause.LoopFault);
            return;
        }

        if (_hung)
            Hang();
        if (_bitten && Powered)
            ResetByWatchdog();
    }

    /// <summary>The loop does not complete the scan of this instant: outputs stay as they are until the watchdog bites.</summary>
    private void Hang()
    {
        Platform.Hangs++;
        _wiringRecorder?.Follow(NowUs, _shown, beats: false);
        long bites = Platform.Watchdog.BitesUs(_skippedUs);
        PassTime(bites);
        _bitten = NowUs == bites;
    }

    /// <summary>The supply dipped in the middle of a write, and comes back at once.</summary>
    private void LosePowerInWrite()
    {
        Platform.TornWrites++;
        Trace.Note(NowUs, "board", "browned out in the middle of a write to its memory");
        Restart(ResetCause.BrownOut);
    }

    private void ResetByWatchdog()
    {
        WatchdogResets++;
        Platform.Timing.Scanned();
        Trace.Note(NowUs, "board", "reset by its watchdog");
        Restart(ResetCause.Watchdog);
    }

    /// <summary>A board that restarts is away for a while; without that, one that faults at once would never let time pass.</summary>
    private void Restart(ResetCause cause)
    {
        _nextCause = cause;
        ReleaseOutputs();
        PassTime(NowUs + RestartUs);
    }

    private void DropOutputs()
    {
        ReleaseOutputs();
        Trace.Note(NowUs, "power", "off");
        _nextCause = Controls.Power ? ResetCause.BrownOut : ResetCause.PowerOn;
    }

    private void ReleaseOutputs()
    {
        _coreRecorder.RecordOutputs(NowUs, _dropped);
        _wiringRecorder?.Follow(NowUs, _dropped, beats: false);
        Plant.SetPumpContact(false);
        Plant.SetVentValve(false);
    }

    private void RunUnpowered()
    {
        while (NowUs < _setup.DurationUs && !Powered)
        {
            Plant.AdvanceTo(Math.Min(Math.Min(_driver.NextActionUs, Plant.NextSupplyUs), _setup.DurationUs));
            Act();
            if (!Controls.Power)
                _nextCause = ResetCause.PowerOn;
        }
    }

    /// <summary>Lets the world go on without the board, up to a time or until power goes.</summary>
    private void PassTime(long untilUs)
    {
        Act();
        while (NowUs < Math.Min(untilUs, _setup.DurationUs) && Powered)
        {
            Plant.AdvanceTo(Math.Min(Math.Min(_driver.NextActionUs, Plant.NextSupplyUs), Math.Min(untilUs, _setup.DurationUs)));
            Act();
        }
    }
}
