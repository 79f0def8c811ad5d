using System;
using System.Collections.Generic;
using LubeController.Scripts.Expectations.Curves;
using LubeController.Scripts.Predicates;

namespace LubeController.Scripts.Expectations.Judging;

/// <summary>
/// Predicates become true one after another in the window: each at or after the instant of the one before it, the first
/// may be true from the beginning. The margin is a time: the smallest gap between two of them, or what is left of the
/// window after the last, whichever is less.
/// </summary>
internal static class InOrderJudging
{
    /// <summary>Judges.</summary>
    public static ExpectationVerdict Judge(Frame frame, InOrderExpectation expectation)
    {
        var tracks = new List<Track>();
        foreach (Predicate predicate in expectation.Order)
        {
            if (frame.Follow(predicate) is not { } track)
                return frame.NoValue();
            tracks.Add(track);
        }

        double at = frame.FromUs;
        double gap = double.PositiveInfinity;
        for (int index = 0; index < tracks.Count; index++)
        {
            double next = index == 0 ? TruthCurve.First(tracks[index].Truth, at) : TruthCurve.Rise(tracks[index].Truth, at);
            if (!(next <= frame.CoveredToUs))
                return frame.IsCovered ? Missing(frame, expectation, tracks, index, at, next) : frame.NotCovered();
            gap = index == 0 ? gap : Math.Min(gap, next - at);
            at = next;
        }

        return frame.Say(Outcome.Held, $"the last of them came at {TimeText.Of(at)}", Margin.OfTime(Math.Min(gap, frame.ToUs - at)), at);
    }

    private static ExpectationVerdict Missing(Frame frame, InOrderExpectation expectation, List<Track> tracks, int index, double at, double next)
    {
        string sentence = expectation.Order[index].Text;
        if (!double.IsNaN(next))
            return frame.Say(Outcome.Failed, $"'{sentence}' came only at {TimeText.Of(next)}", Margin.OfTime(frame.ToUs - next), frame.CoveredToUs);
        double earlier = index == 0 ? double.NaN : TruthCurve.LastRiseBefore(tracks[index].Truth, at);
        return double.IsNaN(earlier)
            ? frame.Say(Outcome.Failed, $"'{sentence}' did not come in its turn", Margin.OfTime(frame.ToUs - frame.EndUs, isOpen: true), frame.CoveredToUs)
            : frame.Say(Outcome.Failed, $"'{sentence}' came at {TimeText.Of(earlier)}, before '{expectation.Order[index - 1].Text}' at {TimeText.Of(at)}, and not again", Margin.OfTime(earlier - at), at);
    }
}
