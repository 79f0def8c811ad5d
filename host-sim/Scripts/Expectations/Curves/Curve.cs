using System;
using System.Collections.Generic;
using LubeController.Emulator;

namespace LubeController.Scripts.Expectations.Curves;

/// <summary>
/// A function of time that moves in straight lines between breakpoints and may jump at them. Each breakpoint has a value
/// just before, at, and just after its instant; the first and the last breakpoint are the ends of its domain. Times are
/// microseconds. Exact: nothing is sampled.
/// </summary>
internal sealed class Curve
{
    private readonly List<double> _times = [];
    private readonly List<double> _before = [];
    private readonly List<double> _at = [];
    private readonly List<double> _after = [];

    /// <summary>Number of breakpoints, 1 or more.</summary>
    public int Count => _times.Count;

    /// <summary>First instant.</summary>
    public double Start => _times[0];

    /// <summary>Last instant.</summary>
    public double End => _times[^1];

    /// <summary>The part of a signal between two times, or null where it has no value at the first of them.</summary>
    public static Curve? Of(Signal signal, double fromUs, double endUs, Func<double, double> map)
    {
        int index = signal.IndexAt((long)Math.Floor(fromUs));
        if (index < 0)
            return null;
        var curve = new Curve();
        double start = ValueAt(signal, index, fromUs);
        curve.AddMapped(fromUs, start, start, map);
        double last = start;
        for (index++; index < signal.Count && signal.TimeUs(index) <= endUs;)
        {
            long time = signal.TimeUs(index);
            double before = signal.Kind == SignalKind.Linear ? signal.Value(index) : last;
            while (index + 1 < signal.Count && signal.TimeUs(index + 1) == time)
                index++;
            last = signal.Value(index);
            index++;
            curve.AddMapped(time, before, last, map);
        }

        if (curve.End < endUs)
        {
            double end = index > 0 && index < signal.Count ? ValueAt(signal, index - 1, endUs) : last;
            curve.AddMapped(endUs, end, end, map);
        }

        return curve;
    }

    /// <summary>Time of a breakpoint.</summary>
    public double Time(int index) => _times[index];

    /// <summary>Value just before a breakpoint.</summary>
    public double Before(int index) => _before[index];

    /// <summary>Value at a breakpoint.</summary>
    public double At(int index) => _at[index];

    /// <summary>Value just after a breakpoint.</summary>
    public double After(int index) => _after[index];

    /// <summary>Lowest of the three values of a breakpoint.</summary>
    public double Lowest(int index) => Math.Min(_at[index], Math.Min(_before[index], _after[index]));

    /// <summary>Adds a breakpoint later than all others.</summary>
    public void Add(double time, double before, double at, double after)
    {
        _times.Add(time);
        _before.Add(before);
        _at.Add(at);
        _after.Add(after);
    }

    /// <summary>The last breakpoint at or before a time within the domain.</summary>
    public int IndexAt(double time)
    {
        int found = _times.BinarySearch(time);
        return found >= 0 ? found : ~found - 1;
    }

    /// <summary>The values just before, at and just after a time within the domain.</summary>
    public (double Before, double At, double After) ValuesAt(double time)
    {
        int index = IndexAt(time);
        if (_times[index] == time || index + 1 >= Count)
            return (_before[index], _at[index], _after[index]);
        double value = Between(index, time);
        return (value, value, value);
    }

    /// <summary>The value strictly between a breakpoint and the next.</summary>
    public double Between(int index, double time)
    {
        double share = (time - _times[index]) / (_times[index + 1] - _times[index]);
        return _after[index] + ((_before[index + 1] - _after[index]) * share);
    }

    /// <summary>The same function turned over: what was low is high.</summary>
    public Curve Negated()
    {
        var turned = new Curve();
        for (int index = 0; index < Count; index++)
            turned.Add(_times[index], -_before[index], -_at[index], -_after[index]);
        return turned;
    }

    private static double ValueAt(Signal signal, int index, double time)
    {
        double value = signal.Value(index);
        if (signal.Kind != SignalKind.Linear || index + 1 >= signal.Count)
            return value;
        double span = signal.TimeUs(index + 1) - signal.TimeUs(index);
        return value + ((signal.Value(index + 1) - value) * ((time - signal.TimeUs(index)) / span));
    }

    private void AddMapped(double time, double before, double at, Func<double, double> map)
    {
        double mapped = map(at);
        if (Count > 0 && End == time)
        {
            // A point at the very start of the domain: what came before it lies outside.
            _at[^1] = mapped;
            _after[^1] = mapped;
            return;
        }

        Add(time, map(before), mapped, mapped);
    }
}
