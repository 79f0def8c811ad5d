using System;
using System.Collections.Generic;

namespace LubeController.Emulator;

/// <summary>How a signal behaves between two recorded points.</summary>
public enum SignalKind
{
    /// <summary>Off (0) or on (1); keeps its value until the next point.</summary>
    OnOff,

    /// <summary>A number or a code; keeps its value until the next point.</summary>
    Step,

    /// <summary>A physical quantity that moves in a straight line from each point to the next.</summary>
    Linear,
}

/// <summary>
/// One recorded quantity of a run, in SI units. Only changes are kept. Two points at one time are a jump: the last one
/// is the value from that instant on.
/// </summary>
public sealed class Signal
{
    private readonly List<long> _timesUs = [];
    private readonly List<double> _values = [];

    internal Signal(string name, SignalKind kind, string unit, IReadOnlyList<string>? labels)
    {
        Name = name;
        Kind = kind;
        Unit = unit;
        Labels = labels;
    }

    /// <summary>Dotted lower-case ASCII name without spaces, for instance <c>alarm.divider-stalled</c>.</summary>
    public string Name { get; }

    /// <summary>Behaviour between points.</summary>
    public SignalKind Kind { get; }

    /// <summary>SI unit of the values: <c>Pa</c>, <c>m3</c>, <c>K</c>, <c>1</c> for counts, fractions, codes and on/off.</summary>
    public string Unit { get; }

    /// <summary>Texts of the codes of a coded signal (index = code), else null.</summary>
    public IReadOnlyList<string>? Labels { get; }

    /// <summary>Number of recorded points.</summary>
    public int Count => _timesUs.Count;

    /// <summary>Virtual time of a point in microseconds since the start of the run; never decreases.</summary>
    public long TimeUs(int index) => _timesUs[index];

    /// <summary>Value of a point, in <see cref="Unit"/>.</summary>
    public double Value(int index) => _values[index];

    /// <summary>The last point at or before a time, or -1 where the signal has none yet.</summary>
    public int IndexAt(long timeUs)
    {
        int low = 0;
        int high = _timesUs.Count;
        while (low < high)
        {
            int middle = (low + high) >>> 1;
            if (_timesUs[middle] <= timeUs)
                low = middle + 1;
            else
                high = middle;
        }

        return low - 1;
    }

    /// <summary>The value at a time, interpolated where <see cref="Kind"/> says so; NaN before the first point.</summary>
    public double ValueAt(long timeUs)
    {
        int index = IndexAt(timeUs);
        if (index < 0)
            return double.NaN;
        double value = _values[index];
        if (Kind != SignalKind.Linear || index + 1 >= _timesUs.Count)
            return value;
        double span = _timesUs[index + 1] - _timesUs[index];
        return span <= 0 ? value : value + ((_values[index + 1] - value) * ((timeUs - _timesUs[index]) / span));
    }

    /// <summary>Adds a point. A value equal to the last one is dropped for on/off and step signals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time lies before the last point.</exception>
    public void Record(long timeUs, double value)
    {
        int last = _timesUs.Count - 1;
        if (last >= 0)
        {
            if (timeUs < _timesUs[last])
                throw new ArgumentOutOfRangeException(nameof(timeUs), timeUs, $"{Name}: time runs backwards from {_timesUs[last]} us");
            if (_values[last] == value && (Kind != SignalKind.Linear || _timesUs[last] == timeUs))
                return;
        }

        _timesUs.Add(timeUs);
        _values.Add(value);
    }
}
