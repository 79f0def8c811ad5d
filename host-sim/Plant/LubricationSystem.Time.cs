using System;
using LubeController.Plant.Pump;
using LubeController.Plant.Sensors;

namespace LubeController.Plant;

/// <summary>Time, events and flows.</summary>
public sealed partial class LubricationSystem
{
    // Events nearer than a nanosecond above a whole microsecond belong to it: their times are sums of rounded durations.
    private const double GrainUs = 1e-3;

    // Beyond this (3170 years) nothing is scheduled.
    private const double HorizonUs = 1e17;

    // Far more than any ring needs to come to rest within one instant.
    private const int MostEventsInOneInstant = 100_000;

    private long _anchorUs;
    private double _anchorPartUs;
    private double _nextS;
    private long _nextFlowUs;
    private long _nextToggleUs = long.MaxValue;
    private ulong _cycleLevels;
    private int _otherLevels;

    /// <summary>The time to which the system was advanced, us since the start.</summary>
    public long NowUs { get; private set; }

    /// <summary>
    /// The earliest instant, us, rounded up, at which a rate or a switch's level changes by itself;
    /// <see cref="long.MaxValue"/> if never. The shaft is not counted: ask <see cref="TimeOfShaftPulseUs"/>.
    /// </summary>
    public long NextEventUs => Math.Min(_nextFlowUs, _nextToggleUs);

    /// <summary>Events processed since the start, those caused from outside not among them.</summary>
    public long EventCount { get; private set; }

    /// <summary>Processes every event at or before a time and makes it the present.</summary>
    /// <param name="timeUs">The time, us since the start; not before <see cref="NowUs"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time lies in the past.</exception>
    public void AdvanceTo(long timeUs)
    {
        if (timeUs < NowUs)
            throw new ArgumentOutOfRangeException(nameof(timeUs), timeUs, $"Accepted is {NowUs} us, the present, and later.");
        int inOneInstant = 0;
        while (NextEventUs <= timeUs && NextEventUs != long.MaxValue)
        {
            inOneInstant = NextEventUs == NowUs ? inOneInstant + 1 : 0;
            if (inOneInstant > MostEventsInOneInstant)
                throw new InvalidOperationException($"Plant '{Description.Name}' does not come to rest at {NowUs} us.");
            NowUs = NextEventUs;
            EventCount++;
            if (_nextFlowUs <= _nextToggleUs)
                Happen();
            else
                Toggle();
        }

        NowUs = timeUs;
    }

    /// <summary>How much of the planned step has passed at a time, 0 to 1.</summary>
    private double PartAt(long timeUs)
    {
        double seconds = (timeUs - _anchorUs - _anchorPartUs) * 1e-6;
        if (!(seconds > 0) || double.IsInfinity(_nextS))
            return 0;
        return seconds >= _nextS ? 1 : seconds / _nextS;
    }

    private double Part => PartAt(NowUs);

    private void Happen()
    {
        double part = _anchorPartUs + (_nextS * 1e6);
        double whole = Math.Floor(part);
        _anchorUs += (long)whole;
        _anchorPartUs = part - whole;
        Commit(1, _nextS);
        Reach();
        Settle(PlantQuantities.None);
    }

    /// <summary>Makes the present the instant as of which the state is kept.</summary>
    private void Anchor()
    {
        double seconds = Math.Max(0, (NowUs - _anchorUs - _anchorPartUs) * 1e-6);
        Commit(Part, Math.Min(seconds, _nextS));
        _anchorUs = NowUs;
        _anchorPartUs = 0;
        Reach();
    }

    /// <summary>Finds ways, flows and the next step anew after something changed, and tells the observer.</summary>
    private void Settle(PlantQuantities jumped)
    {
        Resolve();
        _protection?.Follow(NowUs, _pump.StandsUnderPower);
        PlanStep();
        double afterUs = _anchorPartUs + (_nextS * 1e6);
        _nextFlowUs = afterUs < HorizonUs ? _anchorUs + (long)Math.Ceiling(afterUs - GrainUs) : long.MaxValue;
        if (_nextFlowUs < NowUs)
            _nextFlowUs = NowUs;
        jumped |= NoteLevels() | ChangedRates();
        Observer?.OnEvent(this, NowUs, new PlantChange(jumped, _changedPistons, _changedOutlets));
    }

    private void Toggle()
    {
        foreach (CycleSwitch cycle in _switches)
            cycle.ToggleAt(_nextToggleUs);
        PlantQuantities changed = PlantQuantities.None;
        if (_supply.NextUs <= NowUs)
        {
            _supply.AdvanceTo(NowUs);
            FeedFromSupply();
            changed = PlantQuantities.ControlSupply;
        }

        if (_protection is { } protection && protection.NextUs <= NowUs)
            Protect(protection);
        if (_wiring is { } wiring && wiring.NextUs <= NowUs)
        {
            wiring.AdvanceTo(NowUs);
            changed |= PlantQuantities.Wiring;
        }

        changed |= NoteLevels();
        if (changed != PlantQuantities.None)
            Observer?.OnEvent(this, NowUs, new PlantChange(changed, 0, 0));
    }

    /// <summary>The overload relay trips or resets, which takes the motor off or lets it on again.</summary>
    private void Protect(MotorProtection protection)
    {
        Anchor();
        protection.AdvanceTo(NowUs);
        _pump.Tripped = protection.Tripped;
        Settle(PlantQuantities.None);
    }

    private void ScheduleToggle()
    {
        _nextToggleUs = long.MaxValue;
        foreach (CycleSwitch cycle in _switches)
            _nextToggleUs = Math.Min(_nextToggleUs, cycle.NextToggleUs);
        _nextToggleUs = Math.Min(_nextToggleUs, _supply.NextUs);
        if (_protection is { } protection)
            _nextToggleUs = Math.Min(_nextToggleUs, protection.NextUs);
        if (_wiring is { } wiring)
            _nextToggleUs = Math.Min(_nextToggleUs, wiring.NextUs);
    }

    /// <summary>Which switches' levels changed since this was last asked.</summary>
    private PlantQuantities NoteLevels()
    {
        ulong cycle = 0;
        for (int i = 0; i < _switches.Length; i++)
        {
            _switches[i].Follow(NowUs);
            cycle |= _switches[i].On ? 1UL << i : 0;
        }

        ScheduleToggle();
        int other = (_reservoir.Low.On ? 1 : 0) | (_reservoir.Empty.On ? 2 : 0) | (_pressureSwitch is { On: true } ? 4 : 0);
        int change = other ^ _otherLevels;
        PlantQuantities changed = (cycle != _cycleLevels ? PlantQuantities.CycleSwitches : 0)
            | ((change & 3) != 0 ? PlantQuantities.LevelSwitches : 0)
            | ((change & 4) != 0 ? PlantQuantities.PressureSwitch : 0);
        _cycleLevels = cycle;
        _otherLevels = other;
        NoteFaultEffects();
        return changed;
    }
}
