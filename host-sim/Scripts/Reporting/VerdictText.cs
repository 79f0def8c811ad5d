using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Running;

namespace LubeController.Scripts.Reporting;

/// <summary>A verdict as a person reads it: one line, and below it whatever did not hold.</summary>
public static class VerdictText
{
    /// <summary>The words for an outcome.</summary>
    public static string Of(Outcome outcome) => outcome switch
    {
        Outcome.Held => "held",
        Outcome.Failed => "FAILED",
        _ => "NOT EXERCISED",
    };

    /// <summary>All lines of a script's report.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="result">The run it was judged on.</param>
    /// <param name="withHeld">Whether expectations that held are listed too, each with its margin.</param>
    /// <param name="baseline">The stored run that this one was compared with, or null.</param>
    public static IReadOnlyList<string> Of(ScriptVerdict verdict, RunResult result, bool withHeld, string? baseline = null)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        ArgumentNullException.ThrowIfNull(result);
        var lines = new List<string> { Line(verdict) };
        lines.AddRange(verdict.Script.Steps.Where(step => step.Drawn.Length > 0).Select(step => FormattableString.Invariant($"  drawn by seed {verdict.Script.Seed} for {step.Label}: {step.Drawn}")));
        var shown = new HashSet<string>();
        foreach (ExpectationVerdict expectation in verdict.Expectations)
        {
            if (expectation.Outcome != Outcome.Held)
                lines.AddRange(Details(expectation, result, shown));
            else if (withHeld)
                lines.AddRange(Held(expectation));
        }

        lines.AddRange(verdict.Omissions.Select(omission => $"  not exercised: {omission}"));
        if (verdict.Difference is { } difference)
            lines.Add($"  differs from the baseline: {difference}");
        if (verdict.Outcome != Outcome.Held)
            lines.Add($"  repeat: {RepeatCommand.For(verdict.Script, baseline)}");
        return lines;
    }

    private static string Line(ScriptVerdict verdict)
    {
        int held = verdict.Expectations.Count(expectation => expectation.Outcome == Outcome.Held);
        return FormattableString.Invariant($"{Of(verdict.Outcome),-13}  {verdict.Script.Path}  {verdict.Script.Title} ({held} of {verdict.Expectations.Count} held)");
    }

    /// <summary>The margin in words; a time margin of "nothing or more" says only that the run ended.</summary>
    internal static string MarginText(ExpectationVerdict verdict) => verdict.Margin switch
    {
        null => "margins by part",
        { IsOpen: true, Value: 0.0 } => "held to the end of the run",
        { } margin => $"margin {margin}",
    };

    private static IEnumerable<string> Held(ExpectationVerdict verdict)
    {
        yield return $"  held '{verdict.Expectation.Name}', {MarginText(verdict)}";
        foreach (PartMargin part in verdict.Parts)
            yield return $"            {part.Margin} for '{part.Sentence}' alone";
    }

    private static IEnumerable<string> Details(ExpectationVerdict verdict, RunResult result, HashSet<string> shown)
    {
        yield return $"  {Of(verdict.Outcome)} '{verdict.Expectation.Name}': {verdict.Expectation}";
        yield return $"    at      {verdict.Expectation.Place}";
        if (!double.IsNaN(verdict.FromUs))
            yield return $"    window  {TimeText.Of(verdict.FromUs)} to {(double.IsNaN(verdict.ToUs) ? "(never)" : TimeText.Of(verdict.ToUs))}";
        yield return $"    reason  {verdict.Reason}";
        if (verdict.Seen.Length > 0)
            yield return $"    seen    {verdict.Seen} at {TimeText.Of(verdict.DecidedUs)}";
        if (verdict.Margin is { } margin)
            yield return $"    margin  {margin}";
        foreach (PartMargin part in verdict.Parts)
            yield return $"            {part.Margin} for '{part.Sentence}' alone";
        double around = !double.IsNaN(verdict.DecidedUs) ? verdict.DecidedUs : result.Trace.EndUs;
        string[] excerpt = EventExcerpt.Around(result.Trace.Events, around).ToArray();
        bool isNew = shown.Add(string.Join('\n', excerpt));
        yield return $"    events around {TimeText.Of(around)}{(isNew ? "" : ": the same as above")}";
        foreach (string line in isNew ? excerpt : [])
            yield return "      " + line;
    }
}
