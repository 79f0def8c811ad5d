using System;
using LubeController.Plant.Sensing;

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
    private double _arrivingM3PerS;
    private double _pumpM3PerS;
    private double _reliefM3PerS;
    private double _leakingM3PerS;
    private double _nextS;
    private double _pressureS;
    private double _pressureTargetPa;
    private double _contentS;
    private double _contentTargetM3;
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

    /// <summary>Seconds from the last event to the present, never beyond the next one.</summary>
    private double SinceAnchorS => SinceAnchorAtS(NowUs);

    private double SinceAnchorAtS(long timeUs) =>
        Math.Min(Math.Max((timeUs - _anchorUs - _anchorPartUs) * 1e-6, 0), _nextS);

    private void Happen()
    {
        double seconds = _nextS;
        double part = _anchorPartUs + (seconds * 1e6);
        double whole = Math.Floor(part);
        _anchorUs += (long)whole;
        _anchorPartUs = part - whole;

        bool pressureReached = _pressureS <= seconds;
        bool contentReached = _contentS <= seconds;
        Carry(seconds);
        if (pressureReached)
            _line.Place(_pressureTargetPa);
        if (contentReached)
            _reservoir.Place(_contentTargetM3);
        _reservoir.FollowSwitches();
        _divider.Reach();
        Settle(PlantQuantities.None);
    }

    /// <summary>Makes the present the instant as of which the state is kept.</summary>
    private void Anchor()
    {
        Carry(SinceAnchorS);
        _anchorUs = NowUs;
        _anchorPartUs = 0;
    }

    private void Carry(double seconds)
    {
        _pumped.Add(_pumpM3PerS * seconds);
        _relieved.Add(_reliefM3PerS * seconds);
        _leaked.Add(_leakingM3PerS * seconds);
        _pump.Advance(seconds);
        _line.Advance(seconds);
        _reservoir.Advance(seconds);
        _divider.Advance(seconds);
        _reservoir.FollowSwitches();
    }

    /// <summary>Finds flows and next event anew after something changed, and tells the observer.</summary>
    private void Settle(PlantQuantities jumped)
    {
        double pressureRate = _line.RatePaPerS;
        double contentRate = _reservoir.RateM3PerS;
        double pump = _pumpM3PerS;
        double relief = _reliefM3PerS;
        double leak = _leakingM3PerS;
        Resolve();
        Schedule();
        jumped |= NoteLevels();
        if (Observer is null)
            return;
        PlantQuantities quantities = jumped
            | (pressureRate != _line.RatePaPerS ? PlantQuantities.LinePressure : 0)
            | (contentRate != _reservoir.RateM3PerS ? PlantQuantities.ReservoirContent : 0)
            | (pump != _pumpM3PerS ? PlantQuantities.Pumped : 0)
            | (relief != _reliefM3PerS ? PlantQuantities.Relieved : 0)
            | (leak != _leakingM3PerS ? PlantQuantities.Leaked : 0);
        Observer.OnEvent(this, NowUs, new PlantChange(quantities, _divider.ChangedPistons, _divider.ChangedOutlets));
    }

    private void Resolve()
    {
        double pressure = _line.PressurePa;
        _pumpM3PerS = _reservoir.ContentM3 > 0 ? _pump.FlowM3PerS : 0;
        _leakingM3PerS = pressure > 0 ? _leakM3PerS : Math.Min(_leakM3PerS, _pumpM3PerS);
        _arrivingM3PerS = _pumpM3PerS - _leakingM3PerS;
        double net = _divider.Resolve(pressure, _arrivingM3PerS);
        _reliefM3PerS = pressure >= _reliefPa && net > 0 ? net : 0;
        _line.Receive(net - _reliefM3PerS);
        _reservoir.RateM3PerS = _reliefM3PerS - _pumpM3PerS;
        _pressureSwitch?.Follow(pressure);
    }

    private void Schedule()
    {
        SchedulePressure();
        ScheduleContent();
        _nextS = Math.Min(Math.Min(_pressureS, _contentS), Math.Min(_pump.RemainingS, _divider.NextS()));
        double afterUs = _anchorPartUs + (_nextS * 1e6);
        _nextFlowUs = afterUs < HorizonUs ? _anchorUs + (long)Math.Ceiling(afterUs - GrainUs) : long.MaxValue;
        if (_nextFlowUs < NowUs)
            _nextFlowUs = NowUs;
    }

    private void SchedulePressure()
    {
        double rate = _line.RatePaPerS;
        _pressureS = double.PositiveInfinity;
        if (rate == 0)
            return;
        double pressure = _line.PressurePa;
        double target = _line.NextOwnTarget();
        double atSwitch = _pressureSwitch?.Target(rate) ?? double.NaN;
        if (rate > 0)
        {
            target = Math.Min(Math.Min(target, _reliefPa), _divider.NeedAbove(pressure));
            target = atSwitch < target ? atSwitch : target;
        }
        else
        {
            target = Math.Max(target, _divider.NeedBelow(pressure));
            target = atSwitch > target ? atSwitch : target;
        }

        _pressureTargetPa = target;
        _pressureS = Math.Max(0, (target - pressure) / rate);
    }

    private void ScheduleContent()
    {
        _contentTargetM3 = _reservoir.NextTarget();
        _contentS = double.IsNaN(_contentTargetM3)
            ? double.PositiveInfinity
            : Math.Max(0, (_contentTargetM3 - _reservoir.ContentM3) / _reservoir.RateM3PerS);
    }

    private void Toggle()
    {
        foreach (CycleSwitch cycle in _divider.Switches)
            cycle.ToggleAt(_nextToggleUs);

        ScheduleToggle();
        PlantQuantities changed = NoteLevels();
        if (changed != PlantQuantities.None)
            Observer?.OnEvent(this, NowUs, new PlantChange(changed, 0, 0));
    }

    private void ScheduleToggle()
    {
        _nextToggleUs = long.MaxValue;
        foreach (CycleSwitch cycle in _divider.Switches)
            _nextToggleUs = Math.Min(_nextToggleUs, cycle.NextToggleUs);
    }

    /// <summary>Which switches' levels changed since this was last asked.</summary>
    private PlantQuantities NoteLevels()
    {
        ulong cycle = 0;
        CycleSwitch[] switches = _divider.Switches;
        for (int i = 0; i < switches.Length; i++)
            cycle |= switches[i].On ? 1UL << i : 0;
        int other = (_reservoir.Low.On ? 1 : 0) | (_reservoir.Empty.On ? 2 : 0) | (_pressureSwitch is { On: true } ? 4 : 0);
        int change = other ^ _otherLevels;
        PlantQuantities changed = (cycle != _cycleLevels ? PlantQuantities.CycleSwitches : 0)
            | ((change & 3) != 0 ? PlantQuantities.LevelSwitches : 0)
            | ((change & 4) != 0 ? PlantQuantities.PressureSwitch : 0);
        _cycleLevels = cycle;
        _otherLevels = other;
        NoteEffects();
        return changed;
    }
}
