using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Scripts.Predicates;

namespace LubeController.Scripts.Expectations.Judging;

/// <summary>
/// Where comparisons of different quantities are joined, the margin of the whole is a time; here each quantity is judged
/// on its own beside it, so that no unit is lost and none is mixed.
/// </summary>
internal static class PartMargins
{
    /// <summary>The margins; empty where the whole has but one comparison or one quantity.</summary>
    public static IReadOnlyList<PartMargin> Of(Frame frame, Func<Frame, ExpectationVerdict> judge) => frame.Expectation switch
    {
        AlwaysExpectation always => Each(frame, judge, always.Predicate, part => always with { Predicate = part }),
        EventuallyExpectation eventually => Each(frame, judge, eventually.Predicate, part => eventually with { Predicate = part }),
        HoldsExpectation holds => Each(frame, judge, holds.Predicate, part => holds with { Predicate = part }),
        UntilExpectation until when until.Hold.MarginFamily == null || !ReferenceEquals(until.Hold.MarginFamily, until.Until.MarginFamily) => OfUntil(frame, judge, until),
        _ => [],
    };

    private static List<PartMargin> Each(Frame frame, Func<Frame, ExpectationVerdict> judge, Predicate whole, Func<Predicate, Expectation> with)
    {
        var parts = new List<PartMargin>();
        if (whole is Comparison || whole.MarginFamily != null)
            return parts;
        foreach (Comparison part in whole.Comparisons.Where(comparison => !comparison.Signal.IsWord))
        {
            if (judge(frame with { Expectation = with(part) }).Margin is { } margin)
                parts.Add(new PartMargin(part.Text, margin));
        }

        return parts;
    }

    /// <summary>What must hold is judged up to the instant that decided, what must come over the whole window.</summary>
    private static List<PartMargin> OfUntil(Frame frame, Func<Frame, ExpectationVerdict> judge, UntilExpectation until)
    {
        ExpectationVerdict whole = judge(frame);
        var parts = new List<PartMargin>();
        double upTo = double.IsNaN(whole.DecidedUs) ? frame.CoveredToUs : whole.DecidedUs;
        foreach (Comparison part in Numbers(until.Hold))
            Add(frame with { ToUs = upTo, Expectation = Shell(until, new AlwaysExpectation(part, Never: false) { Name = until.Name, Place = until.Place }) }, part);
        foreach (Comparison part in Numbers(until.Until))
            Add(frame with { Expectation = Shell(until, new EventuallyExpectation(part) { Name = until.Name, Place = until.Place }) }, part);
        return parts;

        void Add(Frame own, Comparison part)
        {
            if (judge(own).Margin is { } margin)
                parts.Add(new PartMargin(part.Text, margin));
        }
    }

    private static IEnumerable<Comparison> Numbers(Predicate predicate) => predicate.Comparisons.Where(comparison => !comparison.Signal.IsWord);

    private static T Shell<T>(Expectation like, T shell)
        where T : Expectation => shell with { From = like.From, To = like.To, WithinUs = like.WithinUs };
}
