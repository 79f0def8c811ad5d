using LubeController.Scripts.Expectations.Curves;

namespace LubeController.Scripts.Expectations.Judging;

/// <summary>
/// P for a time without a break, somewhere in the window. The margin is the highest level that P's margin keeps for so
/// long; as a time, how much longer than demanded the longest stretch is.
/// </summary>
internal static class HoldsJudging
{
    /// <summary>Judges.</summary>
    public static ExpectationVerdict Judge(Frame frame, HoldsExpectation expectation)
    {
        if (frame.Follow(expectation.Predicate) is not { } track)
            return frame.NoValue();
        if (frame.ToUs - frame.FromUs < expectation.ForUs)
            return frame.Say(Outcome.NotExercised, $"the window is shorter than {TimeText.Of(expectation.ForUs)}", null, double.NaN);
        (double start, double length) = TruthCurve.Longest(track.Truth, frame.FromUs, frame.CoveredToUs);
        bool held = length >= expectation.ForUs;
        if (!held && !frame.IsCovered)
            return frame.NotCovered();
        bool never = length < 0.0;
        Margin margin = Margin.OfTime((never ? 0.0 : length) - expectation.ForUs);
        if (track.Margin != null)
            margin = track.MarginOf(CurveExtremes.HighestHeld(track.Margin, frame.FromUs, frame.CoveredToUs, expectation.ForUs).Value);
        string reason = never ? "it was never true"
            : $"its longest stretch began at {TimeText.Of(start)} and lasted {TimeText.Of(length)}";
        double decided = held ? start : never ? frame.CoveredToUs : start + length;
        return frame.Say(held ? Outcome.Held : Outcome.Failed, reason, margin, decided);
    }
}
