using System.Collections.Generic;
using System.Linq;
using CsCheck;
using LubeController.Emulator;

namespace LubeController.Scripts.Tests.Expectations;

/// <summary>A signal drawn at random, with its own plain way to tell values.</summary>
internal sealed record RandomSignal(string Name, SignalKind Kind, string Unit, IReadOnlyList<(int TimeUs, double Value)> Points)
{
    public double At(double time)
    {
        int last = Last(time, inclusive: true);
        return Kind == SignalKind.Linear ? On(last, time) : Points[last].Value;
    }

    /// <summary>The value just before a time, later than the first point.</summary>
    public double Before(double time)
    {
        int last = Last(time, inclusive: false);
        return Kind == SignalKind.Linear ? On(last, time) : Points[last].Value;
    }

    public void Record(Trace trace)
    {
        Signal signal = trace.Define(Name, Kind, Unit);
        foreach ((int time, double value) in Points)
            signal.Record(time, value);
    }

    private double On(int last, double time)
    {
        (int t0, double v0) = Points[last];
        if (last + 1 >= Points.Count)
            return v0;
        (int t1, double v1) = Points[last + 1];
        return v0 + ((v1 - v0) * (time - t0) / (t1 - t0));
    }

    private int Last(double time, bool inclusive)
    {
        int last = 0;
        for (int index = 0; index < Points.Count; index++)
        {
            if (Points[index].TimeUs < time || (inclusive && Points[index].TimeUs == time))
                last = index;
        }

        return last;
    }

    /// <summary>Draws a signal over a run of a length.</summary>
    public static Gen<RandomSignal> Draw(string name, SignalKind kind, string unit, int endUs) =>
        Gen.Select(Gen.Int[1, 6], Gen.Int[-2, 2], Gen.Int[0, 4], Gen.Int[0, 3]).Array[0, 10].Select(pieces =>
        {
            var points = new List<(int, double)> { (0, kind == SignalKind.Linear ? 2 : 0) };
            double value = points[0].Item2;
            int time = 0;
            foreach ((int span, int slope, int level, int jump) in pieces)
            {
                time += span;
                if (time > endUs)
                    break;
                value = kind switch
                {
                    SignalKind.Linear => value + (slope * span),
                    SignalKind.OnOff => level % 2,
                    _ => level,
                };
                points.Add((time, value));
                if (kind == SignalKind.Linear && jump == 0)
                {
                    value += level - 2;
                    points.Add((time, value));
                }
            }

            return new RandomSignal(name, kind, unit, points);
        });
}
