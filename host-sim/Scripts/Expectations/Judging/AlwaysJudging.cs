using LubeController.Scripts.Expectations.Curves;

namespace LubeController.Scripts.Expectations.Judging;

/// <summary>
/// Always P and never P. The margin is the lowest margin of P in the window; as a time, how much later than the window's
/// end P is first violated.
/// </summary>
internal static class AlwaysJudging
{
    /// <summary>Judges.</summary>
    public static ExpectationVerdict Judge(Frame frame, AlwaysExpectation expectation)
    {
        if (frame.Follow(expectation.Predicate) is not { } followed)
            return frame.NoValue();
        Track track = expectation.Never ? followed.Negated() : followed;
        double violated = TruthCurve.First(track.Truth, frame.FromUs, value: false);
        bool failed = violated <= frame.CoveredToUs;
        if (!failed && !frame.IsCovered)
            return frame.NotCovered();
        (Margin margin, double closest) = Measure(frame, track, violated);
        string outside = expectation.Never ? "true" : "false";
        return failed
            ? frame.Say(Outcome.Failed, $"it became {outside} at {TimeText.Of(violated)}", margin, violated)
            : frame.Say(Outcome.Held, "it was so throughout", margin, closest);
    }

    private static (Margin Margin, double ClosestUs) Measure(Frame frame, Track track, double violated)
    {
        if (track.Margin != null)
        {
            (double lowest, double time) = CurveExtremes.Lowest(track.Margin, frame.FromUs, frame.CoveredToUs);
            return (track.MarginOf(lowest), time);
        }

        bool open = double.IsNaN(violated);
        return (Margin.OfTime((open ? frame.EndUs : violated) - frame.ToUs, open), double.NaN);
    }
}
