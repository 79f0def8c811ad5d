using System;
using LubeController.Core;
using LubeController.Emulator.Platform;
using LubeController.Plant;

namespace LubeController.Emulator;

/// <summary>Until which tick nothing that the core would look at can change, so that scans may be skipped.</summary>
internal sealed class QuietTime(BenchSetup setup, LubricationSystem plant, BoardPlatform platform, BenchControls controls, AlarmRequests requests, InputSampler sampler, PinEvents pins)
{
    private readonly BoardClock _clock = platform.Clock;

    /// <summary>The tick that the core itself waits for, if no input changes.</summary>
    /// <param name="core">The core.</param>
    /// <param name="mostMs">Longest wait the main loop allows, milliseconds.</param>
    /// <param name="first">The first tick at which a scan can be made.</param>
    /// <param name="wasLate">Whether the last scan was late, which is an input of its own: the one after it takes it back.</param>
    public long Due(Controller core, int mostMs, long first, bool wasLate)
    {
        if (!setup.SkipQuietTime || wasLate)
            return first;
        long boardMs = _clock.BoardUs(plant.NowUs) / 1000;
        return Math.Max(first, _clock.TickShowing((boardMs + Math.Min(core.NextDeadlineMs, mostMs)) * 1000L));
    }

    /// <summary>Whether something has changed since the last scan, so that the next tick is the core's.</summary>
    public bool IsOver(Controller core) => setup.SkipQuietTime && (sampler.HasChanged(core) || requests.Waits || platform.Disturbs);

    /// <summary>The tick at which the shaft has given the pulses the core waits for, or the next one if the pin queue might overrun.</summary>
    public long ShaftTick(Controller core, long first)
    {
        if (!setup.SkipQuietTime || !plant.HasShaft)
            return long.MaxValue;
        if (pins.Rushes)
            return Math.Max(_clock.TickAtOrAfter(plant.NowUs), first);
        int pulses = core.NextDeadlineShaftPulses;
        if (controls.IsHeld(ControllerInputs.ShaftPulses) || pulses == Saturating.Never)
            return long.MaxValue;
        long at = pins.TimeOfPulsesUs(pulses);
        return at == long.MaxValue ? at : Math.Max(_clock.TickAtOrAfter(at), first);
    }

    /// <summary>The first tick up to a time at which the transmitter leaves the band in which nothing changes. Pressure moves in one straight line until the plant's next event.</summary>
    public long PressureTick(Controller core, long firstTick, long untilUs)
    {
        if (!setup.SkipQuietTime || setup.Plant.Transmitter is null || controls.IsHeld(ControllerInputs.Pressure))
            return long.MaxValue;
        long first = Math.Max(_clock.TickAtOrAfter(plant.NowUs), firstTick);
        long last = _clock.TickAtOrAfter(Math.Min(untilUs, setup.DurationUs) + 1) - 1;
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
        int pressure = ControllerInputs.Millibar(plant.TransmitterPressurePaAt(_clock.TimeOf(tick)));
        return pressure >= core.QuietPressureLowMbar && pressure <= core.QuietPressureHighMbar;
    }
}
