using System;
using LubeController.Scripts.Expectations.Curves;

namespace LubeController.Scripts.Expectations.Judging;

/// <summary>
/// P until Q: Q comes true in the window, and P is true from the window's beginning up to, but not at, that instant. The
/// margin is the greatest, over that instant, of the lower of Q's margin there and P's lowest before; as a time, the
/// smaller of how much earlier Q comes than the window's end, and than P's first violation.
/// </summary>
internal static class UntilJudging
{
    /// <summary>Judges.</summary>
    public static ExpectationVerdict Judge(Frame frame, UntilExpectation expectation)
    {
        if (frame.Follow(expectation.Hold) is not { } hold || frame.Follow(expectation.Until) is not { } until)
            return frame.NoValue();
        double reached = TruthCurve.First(until.Truth, frame.FromUs);
        double violated = TruthCurve.First(hold.Truth, frame.FromUs, value: false);
        bool held = reached <= frame.CoveredToUs && !(violated < reached);
        bool broken = !held && violated <= frame.CoveredToUs;
        if (!held && !broken && !frame.IsCovered)
            return frame.NotCovered();
        double decided = held ? reached : broken ? violated : frame.CoveredToUs;
        string reason = held ? $"it held up to {TimeText.Of(reached)}, when '{expectation.Until.Text}' came true"
            : broken ? $"'{expectation.Hold.Text}' ended at {TimeText.Of(violated)}, before '{expectation.Until.Text}' came true"
            : $"'{expectation.Until.Text}' did not come true in the window";
        return frame.Say(held ? Outcome.Held : Outcome.Failed, reason, Measure(frame, hold, until, reached, violated), decided);
    }

    private static Margin Measure(Frame frame, Track hold, Track until, double reached, double violated)
    {
        if (hold.Margin != null && until.Margin != null && ReferenceEquals(hold.Family, until.Family))
        {
            Curve both = CurveJoin.Lower(until.Margin, CurveExtremes.LowestBefore(hold.Margin));
            return hold.MarginOf(CurveExtremes.Highest(both, frame.FromUs, frame.CoveredToUs).Value);
        }

        double came = double.IsNaN(reached) ? frame.EndUs : reached;
        double ended = double.IsNaN(violated) ? frame.EndUs : violated;
        double time = Math.Min(frame.ToUs - came, ended - came);
        bool open = double.IsNaN(reached) || (double.IsNaN(violated) && ended - came < frame.ToUs - came);
        return Margin.OfTime(time, open);
    }
}
