using System;
using LubeController.Core;
using LubeController.Emulator.Platform;
using LubeController.Plant;

namespace LubeController.Emulator;

/// <summary>
/// What comes to the main loop through the queue of pin events: pulses of the shaft, which are counted and can be lost, and edges
/// of cycle switches, which only take up room.
/// </summary>
internal sealed class PinEvents
{
    // Farther away than any ramp of the shaft lasts.
    private const long FarUs = 1_000_000_000_000;

    private readonly BenchSetup _setup;
    private readonly LubricationSystem _plant;
    private readonly BoardPlatform _platform;
    private readonly BenchControls _controls;
    private readonly ScanTicks _ticks;
    private readonly Trace _trace;
    private readonly bool[] _switchLevels;
    private long _taken;
    private long _markedTick = -1;
    private long _markedPulses;
    private bool _markHolds;

    public PinEvents(BenchSetup setup, LubricationSystem plant, BoardPlatform platform, BenchControls controls, ScanTicks ticks, Trace trace)
    {
        _setup = setup;
        _plant = plant;
        _platform = platform;
        _controls = controls;
        _ticks = ticks;
        _trace = trace;
        _switchLevels = new bool[Math.Min(plant.CycleSwitchCount, Inputs.MaxCycleSwitches)];
    }

    /// <summary>Whether the queue may overrun even if every scan comes as planned.</summary>
    public bool Rushes { get; private set; }

    /// <summary>The board starts with an empty queue.</summary>
    public void Begin()
    {
        _markHolds = false;
        _taken = _plant.HasShaft ? _plant.ShaftPulsesAt(_plant.NowUs) : 0;
        _platform.Queue.Clear();
        for (int index = 0; index < _switchLevels.Length; index++)
            _switchLevels[index] = _plant.CycleSwitchOn(index);
        Rushes = MayOverrun();
    }

    /// <summary>A scan has taken everything.</summary>
    public void Scanned()
    {
        _platform.Queue.Clear();
        _markHolds = false;
    }

    /// <summary>
    /// Remembers how many pulses the shaft had given at the last tick, before an action may change its profile. Once a scan
    /// is held up that is the last tick before it, whatever happens while it is waited for.
    /// </summary>
    public void BeforeAction()
    {
        if (!_plant.HasShaft || !_setup.SkipQuietTime || _markHolds)
            return;
        long tick = _platform.Clock.TickAtOrAfter(_plant.NowUs) - 1;
        if (tick == _markedTick)
            return;
        _markedTick = tick;
        long tickUs = _platform.Clock.TimeOf(tick);
        _markedPulses = _plant.ShaftPulsesAt(_plant.NowUs);
        while (_markedPulses > _taken && _plant.TimeOfShaftPulseUs(_markedPulses) > tickUs)
            _markedPulses--;
    }

    /// <summary>An action may have disturbed scans, or changed the shaft's profile.</summary>
    public void AfterAction()
    {
        _markHolds |= _platform.Disturbs;
        Rushes = MayOverrun();
    }

    /// <summary>Puts edges of cycle switches into the queue; those of a switch that is held by hand do not come from its pin.</summary>
    public void FollowSwitches()
    {
        if (!_plant.HasShaft)
            return;
        for (int index = 0; index < _switchLevels.Length; index++)
        {
            bool on = _plant.CycleSwitchOn(index);
            if (on == _switchLevels[index])
                continue;
            _switchLevels[index] = on;
            if (!_controls.IsHeld(ControllerInputs.CycleSwitches[index]))
                _platform.Queue.Add(_plant.NowUs);
        }
    }

    /// <summary>Counts shaft pulses since the last scan into an input image, with the age of the last by the board's own clock.</summary>
    public void CountShaft(Inputs inputs)
    {
        if (_controls.IsHeld(ControllerInputs.ShaftPulses))
        {
            inputs.ShaftPulses = _controls.TakeCount(ControllerInputs.ShaftPulses);
            inputs.ShaftPulseAgeMs = 0;
            return;
        }

        if (!_plant.HasShaft)
            return;
        long pulses = _plant.ShaftPulsesAt(_plant.NowUs);
        inputs.ShaftPulses = (int)Math.Min(pulses - _taken - LostPulses(pulses), int.MaxValue);
        if (inputs.ShaftPulses > 0)
            inputs.ShaftPulseAgeMs = AgeMs(_plant.LastShaftPulseUs(_plant.NowUs));
        _taken = pulses;
    }

    /// <summary>When the shaft will have given so many more pulses, us; <see cref="long.MaxValue"/> for never.</summary>
    public long TimeOfPulsesUs(int more) => _plant.TimeOfShaftPulseUs(_taken + more);

    private int AgeMs(long timeUs)
    {
        long nowUs = _platform.Clock.BoardUs(_plant.NowUs) / 1000 * 1000;
        return (int)Math.Clamp((nowUs - _platform.Clock.BoardUs(timeUs)) / 1000, 0, int.MaxValue);
    }

    // Speed moves one way between two actions.
    private bool MayOverrun()
    {
        if (!_plant.HasShaft)
            return false;
        long far = _plant.NowUs + FarUs;
        double most = Math.Max(_plant.ShaftSpeedRevPerS * _setup.Plant.Shaft!.PulsesPerRevolution, (_plant.ShaftPulsesAt(far + 1_000_000_000) - _plant.ShaftPulsesAt(far)) / 1000.0);
        return (most * (_setup.ScanPeriodMs * 1000L) * 2e-6) + (2 * Inputs.MaxCycleSwitches) >= _platform.Queue.Depth;
    }

    /// <summary>Shaft pulses that the queue dropped since the last scan, made or skipped.</summary>
    private long LostPulses(long pulses)
    {
        if (pulses - _taken + _platform.Queue.Edges <= _platform.Queue.Depth)
            return 0;

        // A scan before which others were skipped overruns the queue only if an action made it late, and that left its mark.
        bool skipped = _ticks.SkippedUs >= 0;
        if (skipped && _markedTick != _ticks.Last - 1)
            return 0;
        long lost = _platform.Queue.LostPulses(skipped ? _markedPulses : _taken, pulses, _plant.TimeOfShaftPulseUs);
        if (lost > 0)
        {
            _platform.LostPulses += lost;
            _trace.Note(_plant.NowUs, "board", $"{lost} pulse{(lost == 1 ? "" : "s")} of the shaft lost, the queue of pin events was full");
        }

        return lost;
    }
}
