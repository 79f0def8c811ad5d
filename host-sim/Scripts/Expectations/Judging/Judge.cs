using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Emulator;
using LubeController.Scripts.Expectations.Curves;
using LubeController.Scripts.Predicates;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.Expectations.Judging;

/// <summary>
/// Judges expectations over a recorded run, with the quantitative meaning of signal temporal logic (Fainekos and Pappas
/// 2009; Donzé and Maler 2010: from memory). Signals that move in straight lines are judged exactly, between the
/// recorded points too. An instant counts from the least time at which it is reached.
/// </summary>
/// <param name="trace">The run.</param>
/// <param name="fired">The steps carried out in it.</param>
/// <param name="plannedEndUs">Where the run should have ended, microseconds.</param>
public sealed class Judge(Trace trace, IReadOnlyList<FiredStep> fired, long plannedEndUs)
{
    /// <summary>Judges one expectation.</summary>
    public ExpectationVerdict Verdict(Expectation expectation)
    {
        ArgumentNullException.ThrowIfNull(expectation);
        if (!TryEdge(expectation.From, 0.0, 0.0, out double from, out string why))
            return NotExercised(expectation, $"its window never began: {why}");
        if (from > trace.EndUs)
            return NotExercised(expectation, $"its window begins at {TimeText.Of(from)}, but the run ended at {TimeText.Of(trace.EndUs)}");
        double latest = expectation.WithinUs is { } within ? from + within : plannedEndUs;
        if (!TryEdge(expectation.To, latest, from, out double to, out why))
            return NotExercised(expectation, $"its window never ended: {why}") with { FromUs = from };
        if (to < from)
            return NotExercised(expectation, $"its window would end at {TimeText.Of(to)}, before it begins at {TimeText.Of(from)}");
        var frame = new Frame(expectation, trace, from, to);
        ExpectationVerdict verdict = InFrame(frame);
        return verdict.Outcome == Outcome.NotExercised ? verdict : verdict with { Parts = PartMargins.Of(frame, InFrame) };
    }

    private static ExpectationVerdict InFrame(Frame frame) => frame.Expectation switch
    {
        AlwaysExpectation always => AlwaysJudging.Judge(frame, always),
        EventuallyExpectation eventually => EventuallyJudging.Judge(frame, eventually),
        UntilExpectation until => UntilJudging.Judge(frame, until),
        HoldsExpectation holds => HoldsJudging.Judge(frame, holds),
        InOrderExpectation inOrder => InOrderJudging.Judge(frame, inOrder),
        _ => throw new ArgumentException($"no way to judge {frame.Expectation.GetType().Name} is known", nameof(frame)),
    };

    private static ExpectationVerdict NotExercised(Expectation expectation, string reason) =>
        new() { Expectation = expectation, Outcome = Outcome.NotExercised, Reason = reason };

    private bool TryEdge(WindowEdge? edge, double absent, double from, out double timeUs, out string why)
    {
        why = "";
        timeUs = absent;
        switch (edge)
        {
            case TimeEdge time:
                timeUs = time.TimeUs;
                return true;
            case StepEdge step:
                FiredStep? done = fired.FirstOrDefault(candidate => candidate.Step == step.Step);
                why = $"the step {step.Text} was never carried out";
                timeUs = done?.TimeUs ?? double.NaN;
                return done != null;
            case TriggerEdge trigger:
                why = $"'{trigger.Text}' never came true";
                timeUs = FirstTrue(trigger.Trigger, from);
                return !double.IsNaN(timeUs);
            default:
                return true;
        }
    }

    private double FirstTrue(Predicate trigger, double fromUs) =>
        Track.Of(trigger, trace, fromUs, trace.EndUs) is { } track ? TruthCurve.First(track.Truth, fromUs) : double.NaN;
}
