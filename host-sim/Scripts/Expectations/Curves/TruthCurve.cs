using System;
using System.Collections.Generic;

namespace LubeController.Scripts.Expectations.Curves;

/// <summary>Functions that are +1 where something is true and -1 where it is false, and the questions asked of them.</summary>
internal static class TruthCurve
{
    /// <summary>Where a margin says true; a margin of exactly nothing is false where the comparison is strict.</summary>
    public static Curve Of(Curve margin, bool strict)
    {
        double Sign(double value) => value > 0.0 || (value == 0.0 && !strict) ? 1.0 : -1.0;
        var truth = new Curve();
        double before = Sign(margin.Before(0));
        for (int index = 0; index < margin.Count; index++)
        {
            double at = Sign(margin.At(index));
            if (index + 1 == margin.Count)
            {
                truth.Add(margin.Time(index), before, at, at);
                break;
            }

            double from = margin.After(index);
            double to = margin.Before(index + 1);
            double crossing = Crossing(margin, index, from, to);
            double first = Sign(double.IsNaN(crossing) ? (from + to) / 2.0 : from);
            truth.Add(margin.Time(index), index == 0 ? at : before, at, first);
            before = first;
            if (!double.IsNaN(crossing))
            {
                before = Sign(to);
                truth.Add(crossing, first, Sign(0.0), before);
            }
        }

        return truth;
    }

    /// <summary>The first time at or after another at which it is true (or, asked so, false); NaN if never.</summary>
    public static double First(Curve truth, double from, bool value = true)
    {
        foreach ((double low, _, bool holds) in Pieces(truth, from, truth.End))
        {
            if (holds == value)
                return low;
        }

        return double.NaN;
    }

    /// <summary>The first time at or after another at which it becomes true, having been false just before; NaN if never.</summary>
    public static double Rise(Curve truth, double from)
    {
        // What came before the domain is unknown, and unknown is no change.
        bool before = from <= truth.Start || truth.ValuesAt(from).Before > 0.0;
        foreach ((double low, _, bool holds) in Pieces(truth, from, truth.End))
        {
            if (holds && !before)
                return low;
            before = holds;
        }

        return double.NaN;
    }

    /// <summary>The last time before another at which it became true, or was true from the start; NaN if none.</summary>
    public static double LastRiseBefore(Curve truth, double until)
    {
        double last = double.NaN;
        bool before = false;
        foreach ((double low, _, bool holds) in Pieces(truth, truth.Start, truth.End))
        {
            if (low >= until)
                break;
            if (holds && !before)
                last = low;
            before = holds;
        }

        return last;
    }

    /// <summary>Start and length of the longest stretch of truth between two times; length -1 where it is never true.</summary>
    public static (double Start, double Length) Longest(Curve truth, double from, double to)
    {
        (double Start, double Length) best = (from, -1.0);
        double start = double.NaN;
        foreach ((double low, double high, bool holds) in Pieces(truth, from, to))
        {
            if (!holds)
                start = double.NaN;
            else if (double.IsNaN(start))
                start = low;
            if (holds && high - start > best.Length)
                best = (start, high - start);
        }

        return best;
    }

    /// <summary>The domain between two times as instants and the open stretches between them, in order.</summary>
    private static IEnumerable<(double Low, double High, bool Holds)> Pieces(Curve truth, double from, double to)
    {
        int index = truth.IndexAt(from);
        yield return (from, from, truth.ValuesAt(from).At > 0.0);
        double low = from;
        while (index + 1 < truth.Count && low < to)
        {
            double high = Math.Min(truth.Time(index + 1), to);
            if (high > low)
                yield return (low, high, truth.After(index) > 0.0);
            index++;
            low = high;
            yield return (high, high, truth.ValuesAt(high).At > 0.0);
        }
    }

    private static double Crossing(Curve margin, int index, double from, double to)
    {
        if (from * to >= 0.0)
            return double.NaN;
        double start = margin.Time(index);
        double length = margin.Time(index + 1) - start;
        double time = start + (length * (from / (from - to)));
        return time > start && time < start + length ? time : double.NaN;
    }
}
