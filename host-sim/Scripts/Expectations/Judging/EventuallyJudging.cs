using LubeController.Scripts.Expectations.Curves;

namespace LubeController.Scripts.Expectations.Judging;

/// <summary>
/// Eventually P. The margin is the highest margin of P in the window; as a time, how much earlier than the window's end
/// P is first true.
/// </summary>
internal static class EventuallyJudging
{
    /// <summary>Judges.</summary>
    public static ExpectationVerdict Judge(Frame frame, EventuallyExpectation expectation)
    {
        if (frame.Follow(expectation.Predicate) is not { } track)
            return frame.NoValue();
        double reached = TruthCurve.First(track.Truth, frame.FromUs);
        bool held = reached <= frame.CoveredToUs;
        if (!held && !frame.IsCovered)
            return frame.NotCovered();
        bool open = double.IsNaN(reached);
        Margin margin = Margin.OfTime(frame.ToUs - (open ? frame.EndUs : reached), open);
        double decided = held ? reached : frame.CoveredToUs;
        if (track.Margin != null)
        {
            (double highest, double time) = CurveExtremes.Highest(track.Margin, frame.FromUs, frame.CoveredToUs);
            margin = track.MarginOf(highest);
            decided = held ? reached : time;
        }

        string reason = held ? $"it came true at {TimeText.Of(reached)}"
            : open ? "it never came true"
            : $"it came true only at {TimeText.Of(reached)}";
        return frame.Say(held ? Outcome.Held : Outcome.Failed, reason, margin, decided);
    }
}
