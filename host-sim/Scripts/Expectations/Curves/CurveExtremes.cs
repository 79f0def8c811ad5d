using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Scripts.Expectations.Curves;

/// <summary>Highest and lowest values of a function over windows.</summary>
internal static class CurveExtremes
{
    /// <summary>The lowest value between two times, and when.</summary>
    public static (double Value, double Time) Lowest(Curve curve, double from, double to)
    {
        (double Value, double Time) best = (double.PositiveInfinity, from);
        foreach ((double time, double value) in Candidates(curve, from, to))
        {
            if (value < best.Value)
                best = (value, time);
        }

        return best;
    }

    /// <summary>The highest value between two times, and when.</summary>
    public static (double Value, double Time) Highest(Curve curve, double from, double to)
    {
        (double value, double time) = Lowest(curve.Negated(), from, to);
        return (-value, time);
    }

    /// <summary>
    /// The greatest level above which the function stays for a whole stretch of a length, anywhere between two times, and
    /// where that stretch begins; a jump at its very end is no longer in it. The window must be as long as the stretch.
    /// </summary>
    /// <remarks>
    /// The lowest value over [t, t+length) is the least of the value at t, that just before t+length and of what lies between.
    /// Between two neighbouring instants at which t or t+length meets a breakpoint the first two move in straight lines
    /// and the third stands still, so the greatest level is met at such an instant or where the two lines cross.
    /// </remarks>
    public static (double Value, double Time) HighestHeld(Curve curve, double from, double to, double length)
    {
        double[] starts = Starts(curve, from, to - length, length);
        var inside = new SlidingLowest(curve);
        (double Value, double Time) best = (double.NegativeInfinity, from);
        for (int index = 0; index < starts.Length; index++)
        {
            double start = starts[index];
            double end = start + length;
            (_, double at, double after) = curve.ValuesAt(start);
            (double before, _, double afterEnd) = curve.ValuesAt(end);
            double here = length > 0.0 ? Math.Min(Math.Min(at, after), before) : at;
            Offer(Math.Min(here, inside.Between(start, end, closed: false)), start);
            if (index + 1 == starts.Length)
                break;
            double next = starts[index + 1];
            double level = inside.Between(next, end, closed: true);
            (double f1, double g1) = (curve.ValuesAt(next).Before, curve.ValuesAt(next + length).Before);
            Offer(Math.Min(level, Math.Min(after, afterEnd)), start);
            Offer(Math.Min(level, Math.Min(f1, g1)), next);
            double apart0 = after - afterEnd;
            double apart1 = f1 - g1;
            if (apart0 * apart1 < 0.0)
            {
                double share = apart0 / (apart0 - apart1);
                Offer(Math.Min(level, after + ((f1 - after) * share)), start + ((next - start) * share));
            }
        }

        return best;

        void Offer(double value, double time)
        {
            if (value > best.Value)
                best = (value, time);
        }
    }

    /// <summary>At each instant the lowest value from the start of the domain up to, but not at, that instant.</summary>
    public static Curve LowestBefore(Curve curve)
    {
        var lowest = new Curve();
        double least = Math.Min(curve.At(0), curve.After(0));
        lowest.Add(curve.Start, double.PositiveInfinity, double.PositiveInfinity, least);
        for (int index = 0; index + 1 < curve.Count; index++)
        {
            (double from, double to) = (curve.After(index), curve.Before(index + 1));
            (double start, double end) = (curve.Time(index), curve.Time(index + 1));
            if (to < least && from > least)
            {
                double crossing = start + ((end - start) * ((from - least) / (from - to)));
                if (crossing > start && crossing < end)
                    lowest.Add(crossing, least, least, least);
            }

            least = Math.Min(least, to);
            lowest.Add(end, least, least, Math.Min(least, Math.Min(curve.At(index + 1), curve.After(index + 1))));
            least = Math.Min(least, Math.Min(curve.At(index + 1), curve.After(index + 1)));
        }

        return lowest;
    }

    private static double[] Starts(Curve curve, double from, double last, double length)
    {
        IEnumerable<double> times = Enumerable.Range(0, curve.Count).Select(curve.Time);
        return times.Concat(times.Select(time => time - length)).Where(time => time > from && time < last)
            .Append(from).Append(last).Distinct().Order().ToArray();
    }

    private static IEnumerable<(double Time, double Value)> Candidates(Curve curve, double from, double to)
    {
        (_, double at, double after) = curve.ValuesAt(from);
        yield return (from, at);
        if (to <= from)
            yield break;
        yield return (from, after);
        for (int index = curve.IndexAt(from) + 1; index < curve.Count && curve.Time(index) < to; index++)
            yield return (curve.Time(index), curve.Lowest(index));
        (double before, double atEnd, _) = curve.ValuesAt(to);
        yield return (to, Math.Min(before, atEnd));
    }

    /// <summary>Lowest breakpoint values inside a window whose two ends only move on.</summary>
    private sealed class SlidingLowest(Curve curve)
    {
        private readonly LinkedList<int> _rising = new();
        private int _next;

        public double Between(double from, double to, bool closed)
        {
            for (; _next < curve.Count && (curve.Time(_next) < to || (closed && curve.Time(_next) == to)); _next++)
            {
                while (_rising.Last != null && curve.Lowest(_rising.Last.Value) >= curve.Lowest(_next))
                    _rising.RemoveLast();
                _rising.AddLast(_next);
            }

            while (_rising.First != null && (curve.Time(_rising.First.Value) < from || (!closed && curve.Time(_rising.First.Value) == from)))
                _rising.RemoveFirst();
            return _rising.First == null ? double.PositiveInfinity : curve.Lowest(_rising.First.Value);
        }
    }
}
