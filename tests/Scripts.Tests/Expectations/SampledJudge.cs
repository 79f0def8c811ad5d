using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Predicates;

namespace LubeController.Scripts.Tests.Expectations;

/// <summary>
/// A judge that knows nothing but samples, for comparison. Runs for it have points at whole microseconds, slopes of
/// -2 to 2 units per microsecond and thresholds at halves, so that every crossing falls on a quarter of a microsecond;
/// samples at every eighth then meet each crossing and the inside of each stretch between two of them, and nothing is
/// missed. Values are taken from the points themselves, not from the signal's own interpolation.
/// </summary>
internal sealed class SampledJudge(IReadOnlyDictionary<string, RandomSignal> signals, int endUs)
{
    private const int PerUs = 8;

    /// <summary>What an expectation comes to: outcome and margin, SI, or microseconds where it is a time.</summary>
    public (Outcome Outcome, double Margin) Judge(Expectation expectation, int from, int to)
    {
        bool covered = to <= endUs;
        int last = Math.Min(to, endUs);
        switch (expectation)
        {
            case AlwaysExpectation always:
                return Always(always, from, to, last, covered);
            case EventuallyExpectation eventually:
                return Eventually(eventually.Predicate, from, to, last, covered);
            case UntilExpectation until:
                return Until(until, from, to, last, covered);
            case HoldsExpectation holds:
                return Holds(holds, from, last, covered, to);
            default:
                return InOrder((InOrderExpectation)expectation, from, to, last, covered);
        }
    }

    private (Outcome, double) Always(AlwaysExpectation always, int from, int to, int last, bool covered)
    {
        double violated = First(from, endUs, sample => True(always.Predicate, sample) == always.Never);
        bool failed = violated <= last;
        if (!failed && !covered)
            return (Outcome.NotExercised, 0);
        double margin = always.Predicate.MarginFamily == null
            ? (double.IsNaN(violated) ? endUs : violated) - to
            : Values(from, last).Min(values => always.Never ? -Margin(always.Predicate, values) : Margin(always.Predicate, values));
        return (failed ? Outcome.Failed : Outcome.Held, margin);
    }

    private (Outcome, double) Eventually(Predicate predicate, int from, int to, int last, bool covered)
    {
        double reached = First(from, endUs, sample => True(predicate, sample));
        bool held = reached <= last;
        if (!held && !covered)
            return (Outcome.NotExercised, 0);
        double margin = predicate.MarginFamily == null
            ? to - (double.IsNaN(reached) ? endUs : reached)
            : Values(from, last).Max(values => Margin(predicate, values));
        return (held ? Outcome.Held : Outcome.Failed, margin);
    }

    private (Outcome, double) Until(UntilExpectation until, int from, int to, int last, bool covered)
    {
        double reached = First(from, endUs, sample => True(until.Until, sample));
        double violated = First(from, endUs, sample => !True(until.Hold, sample));
        bool held = reached <= last && !(violated < reached);
        bool broken = !held && violated <= last;
        if (!held && !broken && !covered)
            return (Outcome.NotExercised, 0);
        double came = double.IsNaN(reached) ? endUs : reached;
        double ended = double.IsNaN(violated) ? endUs : violated;
        double margin = Math.Min(to - came, ended - came);
        if (until.Hold.MarginFamily != null && ReferenceEquals(until.Hold.MarginFamily, until.Until.MarginFamily))
        {
            double lowest = double.PositiveInfinity;
            margin = double.NegativeInfinity;
            foreach (Sample sample in Samples(from, last))
            {
                foreach ((Func<string, double> values, bool isBefore) in Sides(sample, from))
                {
                    if (isBefore)
                        lowest = Math.Min(lowest, Margin(until.Hold, values));
                    margin = Math.Max(margin, Math.Min(Margin(until.Until, values), lowest));
                    if (!isBefore)
                        lowest = Math.Min(lowest, Margin(until.Hold, values));
                }
            }
        }

        return (held ? Outcome.Held : Outcome.Failed, margin);
    }

    private (Outcome, double) Holds(HoldsExpectation holds, int from, int last, bool covered, int to)
    {
        if (to - from < holds.ForUs)
            return (Outcome.NotExercised, 0);
        double longest = Stretches(holds.Predicate, from, last).DefaultIfEmpty(-1.0).Max();
        bool held = longest >= holds.ForUs;
        if (!held && !covered)
            return (Outcome.NotExercised, 0);
        double margin = Math.Max(longest, 0.0) - holds.ForUs;
        if (holds.Predicate.MarginFamily != null)
        {
            margin = double.NegativeInfinity;
            for (int start = from * PerUs; start <= (last - holds.ForUs) * PerUs; start++)
            {
                double low = double.PositiveInfinity;
                for (int at = start; at <= start + (holds.ForUs * PerUs); at++)
                {
                    foreach ((Func<string, double> values, bool isBefore) in Sides(new Sample(at), from))
                    {
                        if (isBefore ? at > start : at < start + (holds.ForUs * PerUs))
                            low = Math.Min(low, Margin(holds.Predicate, values));
                    }
                }

                margin = Math.Max(margin, low);
            }
        }

        return (held ? Outcome.Held : Outcome.Failed, margin);
    }

    private (Outcome, double) InOrder(InOrderExpectation order, int from, int to, int last, bool covered)
    {
        double at = from;
        double gap = double.PositiveInfinity;
        for (int index = 0; index < order.Order.Count; index++)
        {
            double next = index == 0 ? First(from, endUs, sample => True(order.Order[0], sample)) : Rises(order.Order[index], from).Where(rise => rise >= at).DefaultIfEmpty(double.NaN).First();
            if (!(next <= last))
            {
                if (!covered)
                    return (Outcome.NotExercised, 0);
                if (!double.IsNaN(next))
                    return (Outcome.Failed, to - next);
                double early = index == 0 ? double.NaN : RisesOrStart(order.Order[index], from).Where(rise => rise < at).DefaultIfEmpty(double.NaN).Last();
                return (Outcome.Failed, double.IsNaN(early) ? to - endUs : early - at);
            }

            gap = index == 0 ? gap : Math.Min(gap, next - at);
            at = next;
        }

        return (Outcome.Held, Math.Min(gap, to - at));
    }

    private IEnumerable<double> Rises(Predicate predicate, int from)
    {
        bool before = true;
        foreach (Sample sample in Samples(from, endUs))
        {
            bool now = True(predicate, sample);
            if (now && !before)
                yield return sample.Opening;
            before = now;
        }
    }

    private IEnumerable<double> RisesOrStart(Predicate predicate, int from) =>
        (True(predicate, new Sample(from * PerUs)) ? [from] : Array.Empty<double>()).Concat(Rises(predicate, from));

    private IEnumerable<double> Stretches(Predicate predicate, int from, int to)
    {
        double start = double.NaN;
        foreach (Sample sample in Samples(from, to))
        {
            if (!True(predicate, sample))
            {
                start = double.NaN;
                continue;
            }

            if (double.IsNaN(start))
                start = sample.Opening;
            yield return Math.Min(sample.Closing, to) - start;
        }
    }

    private double First(int from, int to, Func<Sample, bool> wanted) =>
        Samples(from, to).Where(wanted).Select(sample => sample.Opening).DefaultIfEmpty(double.NaN).First();

    private static IEnumerable<Sample> Samples(int from, int to) =>
        Enumerable.Range(from * PerUs, ((to - from) * PerUs) + 1).Select(index => new Sample(index));

    private bool True(Predicate predicate, Sample sample) => predicate.IsTrue(name => signals[name].At(sample.TimeUs));

    /// <summary>Values at every sample, and just before it where a signal may jump there.</summary>
    private IEnumerable<Func<string, double>> Values(int from, int to) =>
        Samples(from, to).SelectMany(sample => Sides(sample, from)).Select(side => side.Values);

    private IEnumerable<(Func<string, double> Values, bool IsBefore)> Sides(Sample sample, int from)
    {
        if (sample.TimeUs > from)
            yield return (name => signals[name].Before(sample.TimeUs), true);
        yield return (name => signals[name].At(sample.TimeUs), false);
    }

    private static double Margin(Predicate predicate, Func<string, double> valueOf) => predicate switch
    {
        Comparison comparison => comparison.MarginOf(valueOf(comparison.Signal.Name)),
        Joined { All: true } all => all.Parts.Min(part => Margin(part, valueOf)),
        _ => ((Joined)predicate).Parts.Max(part => Margin(part, valueOf)),
    };

    /// <summary>A sample at an eighth of a microsecond; even ones may be crossings, odd ones stand for the stretch around them.</summary>
    private readonly record struct Sample(int Index)
    {
        public double TimeUs => Index / (double)PerUs;

        /// <summary>Where the crossing or stretch that it stands for begins.</summary>
        public double Opening => (Index % 2 == 0 ? Index : Index - 1) / (double)PerUs;

        /// <summary>Where it ends.</summary>
        public double Closing => (Index % 2 == 0 ? Index : Index + 1) / (double)PerUs;
    }
}
