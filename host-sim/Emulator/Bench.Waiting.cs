using System;
using LubeController.Core;
using LubeController.Emulator.Platform;

namespace LubeController.Emulator;

/// <summary>How the world moves while the main loop waits for its next scan.</summary>
public sealed partial class Bench
{
    // Farther away than any ramp of the shaft lasts.
    private const long FarUs = 1_000_000_000_000;

    private readonly bool[] _switchLevels = new bool[Inputs.MaxCycleSwitches];
    private long _markedTick = -1;
    private long _markedPulses;
    private bool _markHolds;
    private long _skippedUs = -1;
    private long _firstTick;
    private bool _shaftRushes;

    private void Act()
    {
        if (_driver.NextActionUs > NowUs)
            return;
        MarkPulses();
        _driver.Act(this);
        _markHolds |= Platform.Disturbs;
        _shaftRushes = ShaftMayOverrunQueue();
        _wiringRecorder?.Record(NowUs);
    }

    /// <summary>Moves plant and driver to the next tick at which the core must scan, or to the reset that comes before.</summary>
    private bool MoveWorld(Controller core, int mostMs)
    {
        BoardClock clock = Platform.Clock;
        long boardMs = clock.BoardUs(NowUs) / 1000;
        long first = Math.Max(_tick + 1, clock.TickAtOrAfter(NowUs + 1));
        _firstTick = first;
        int quietMs = _setup.SkipQuietTime ? Math.Min(core.NextDeadlineMs, mostMs) : _setup.ScanPeriodMs;

        // A late scan is an input of its own: the one after it takes it back.
        long due = !_setup.SkipQuietTime || _lateMs > 0 ? first : Math.Max(first, clock.TickShowing((boardMs + quietMs) * 1000L));
        Act();
        if (!Powered)
            return false;
        if (InputsChanged(core))
            due = first;
        while (true)
        {
            long next = Math.Min(due, ShaftTick(core, first));
            long world = Math.Min(Plant.NextEventUs, _driver.NextActionUs);
            next = Math.Min(next, PressureTick(core, first, Math.Min(world, clock.TimeOf(next))));
            (long reachUs, bool scans) = Planned(next);
            if (world > reachUs || world > _setup.DurationUs)
                return Reach(next, reachUs, scans);
            Plant.AdvanceTo(world);
            FollowSwitches();
            Act();
            if (!Powered)
                return false;
            if (InputsChanged(core))
                due = Math.Min(due, Math.Max(clock.TickAtOrAfter(world), first));
        }
    }

    /// <summary>Until when the world moves for the scan of a tick, and whether it is made then.</summary>
    private (long ReachUs, bool Scans) Planned(long tick)
    {
        long tickUs = Platform.Clock.TimeOf(tick);
        if (Platform.LoopHangs)
            return (Math.Max(tickUs, NowUs), false);
        long scanUs = Math.Max(Platform.Timing.TimeOf(tick, tickUs), NowUs);
        if (scanUs <= tickUs)
            return (scanUs, true);
        long bites = Platform.Watchdog.BitesUs(SkippedBefore(tick));
        return bites < scanUs ? (bites, false) : (scanUs, true);
    }

    private bool Reach(long tick, long reachUs, bool scans)
    {
        Plant.AdvanceTo(Math.Min(reachUs, _setup.DurationUs));
        FollowSwitches();
        if (reachUs > _setup.DurationUs)
            return false;
        long tickUs = Platform.Clock.TimeOf(tick);
        bool delayed = Platform.Timing.Delays(tickUs);
        _skippedUs = SkippedBefore(tick);
        _tick = tick;
        if (!scans)
        {
            if (delayed && !Platform.LoopHangs)
                Platform.DelayedScans++;
            _hung = Platform.LoopHangs;
            _bitten = !_hung;
            return false;
        }

        if (NowUs != tickUs && delayed)
            Platform.DelayedScans++;
        else if (NowUs != tickUs)
            Platform.ShiftedScans++;
        _lateMs = NowUs > tickUs ? (int)((Platform.Clock.BoardUs(NowUs) - (tick * _periodUs)) / 1000) : 0;
        return true;
    }

    /// <summary>The last scan before a tick that was skipped, us; -1 where the one before it was made, or missed by being late.</summary>
    private long SkippedBefore(long tick) => tick > _firstTick ? Platform.Clock.TimeOf(tick - 1) : -1;

    private bool InputsChanged(Controller core)
    {
        if (!_setup.SkipQuietTime)
            return false;
        Sense(_probe);
        bool revolved = !Controls.IsHeld(HandInput.PumpRevolutions) && _setup.Settings.Is(SettingField.PumpRevolutionsFitted) && Plant.PumpRevolutions != _revolutionsTaken;
        return _probe.Levels != _scannedLevels || _probe.TemperatureDeciC != _scannedTemperature || revolved || Controls.Asks || Controls.GivesCounts
            || (Controls.IsHeld(HandInput.Pressure) && (_probe.PressureMbar < core.QuietPressureLowMbar || _probe.PressureMbar > core.QuietPressureHighMbar))
            || _probe.SupplyMv < core.QuietSupplyLowMv || _probe.SupplyMv > core.QuietSupplyHighMv || Platform.Disturbs;
    }

    /// <summary>The tick at which the shaft has given the pulses the core waits for, or the next one if the pin queue might overrun.</summary>
    private long ShaftTick(Controller core, long first)
    {
        if (!_setup.SkipQuietTime || !Plant.HasShaft)
            return long.MaxValue;
        if (_shaftRushes)
            return Math.Max(Platform.Clock.TickAtOrAfter(NowUs), first);
        int pulses = core.NextDeadlineShaftPulses;
        if (Controls.IsHeld(HandInput.ShaftPulses) || pulses == Saturating.Never)
            return long.MaxValue;
        long at = Plant.TimeOfShaftPulseUs(_shaftPulsesTaken + pulses);
        return at == long.MaxValue ? at : Math.Max(Platform.Clock.TickAtOrAfter(at), first);
    }

    /// <summary>The first tick up to a time at which the transmitter leaves the band in which nothing changes. Pressure moves in one straight line until the plant's next event.</summary>
    private long PressureTick(Controller core, long firstTick, long untilUs)
    {
        if (!_setup.SkipQuietTime || !_setup.Plant.HasPressureTransmitter || Controls.IsHeld(HandInput.Pressure))
            return long.MaxValue;
        BoardClock clock = Platform.Clock;
        long first = Math.Max(clock.TickAtOrAfter(NowUs), firstTick);
        long last = clock.TickAtOrAfter(Math.Min(untilUs, _setup.DurationUs) + 1) - 1;
        if (first > last || IsQuiet(core, last))
            return first <= last && !IsQuiet(core, first) ? first : long.MaxValue;
        while (first < last)
        {
            long middle = (first + last) / 2;
            if (IsQuiet(core, middle))
                first = middle + 1;
            else
                last = middle;
        }

        return first;
    }

    private bool IsQuiet(Controller core, long tick)
    {
        int pressure = Millibar(Plant.TransmitterPressurePaAt(Platform.Clock.TimeOf(tick)));
        return pressure >= core.QuietPressureLowMbar && pressure <= core.QuietPressureHighMbar;
    }

    /// <summary>
    /// Remembers how many pulses the shaft had given at the last tick, before an action may change its profile. Once a scan
    /// is held up that is the last tick before it, whatever happens while it is waited for.
    /// </summary>
    private void MarkPulses()
    {
        if (!Plant.HasShaft || !_setup.SkipQuietTime || _markHolds)
            return;
        long tick = Platform.Clock.TickAtOrAfter(NowUs) - 1;
        if (tick == _markedTick)
            return;
        _markedTick = tick;
        long tickUs = Platform.Clock.TimeOf(tick);
        _markedPulses = Plant.ShaftPulsesAt(NowUs);
        while (_markedPulses > _shaftPulsesTaken && Plant.TimeOfShaftPulseUs(_markedPulses) > tickUs)
            _markedPulses--;
    }

    /// <summary>Whether the queue may overrun even if every scan comes as planned; speed moves one way between two actions.</summary>
    private bool ShaftMayOverrunQueue()
    {
        if (!Plant.HasShaft)
            return false;
        long far = NowUs + FarUs;
        double most = Math.Max(Plant.ShaftSpeedRevPerS * _setup.Plant.Shaft!.PulsesPerRevolution, (Plant.ShaftPulsesAt(far + 1_000_000_000) - Plant.ShaftPulsesAt(far)) / 1000.0);
        return (most * _periodUs * 2e-6) + (2 * Inputs.MaxCycleSwitches) >= Platform.Queue.Depth;
    }

    /// <summary>Shaft pulses that the pin queue dropped since the last scan, made or skipped.</summary>
    private long LostPulses(long pulses)
    {
        if (pulses - _shaftPulsesTaken + Platform.Queue.Edges <= Platform.Queue.Depth)
            return 0;

        // A scan before which others were skipped overruns the queue only if an action made it late, and that left its mark.
        bool skipped = _skippedUs >= 0;
        if (skipped && _markedTick != _tick - 1)
            return 0;
        long lost = Platform.Queue.LostPulses(skipped ? _markedPulses : _shaftPulsesTaken, pulses, Plant.TimeOfShaftPulseUs);
        if (lost > 0)
        {
            Platform.LostPulses += lost;
            Trace.Note(NowUs, "board", $"{lost} pulse{(lost == 1 ? "" : "s")} of the shaft lost, the queue of pin events was full");
        }

        return lost;
    }

    private void NoteSwitches()
    {
        for (int index = 0; index < Math.Min(Plant.CycleSwitchCount, _switchLevels.Length); index++)
            _switchLevels[index] = Plant.CycleSwitchOn(index);
    }

    /// <summary>Edges of cycle switches go into the queue; only shaft pulses can be lost from it.</summary>
    private void FollowSwitches()
    {
        if (!Plant.HasShaft)
            return;
        for (int index = 0; index < Math.Min(Plant.CycleSwitchCount, _switchLevels.Length); index++)
        {
            bool on = Plant.CycleSwitchOn(index);
            if (on == _switchLevels[index])
                continue;
            _switchLevels[index] = on;
            if (!Controls.IsHeld((HandInput)index))
                Platform.Queue.Add(NowUs);
        }
    }
}
