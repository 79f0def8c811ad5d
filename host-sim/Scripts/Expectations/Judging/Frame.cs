using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Emulator;
using LubeController.Files.Quantities;
using LubeController.Scripts.Predicates;

namespace LubeController.Scripts.Expectations.Judging;

/// <summary>The window an expectation is judged in, and what the judging of each sort of expectation shares.</summary>
/// <param name="Expectation">The expectation.</param>
/// <param name="Trace">The run.</param>
/// <param name="FromUs">Beginning of the window.</param>
/// <param name="ToUs">End of the window.</param>
internal sealed record Frame(Expectation Expectation, Trace Trace, double FromUs, double ToUs)
{
    private const int ShownDigits = 6;

    /// <summary>End of the run.</summary>
    public double EndUs => Trace.EndUs;

    /// <summary>End of the part of the window that was run.</summary>
    public double CoveredToUs => Math.Min(ToUs, EndUs);

    /// <summary>Whether the whole window was run.</summary>
    public bool IsCovered => ToUs <= EndUs;

    /// <summary>Follows a predicate from the beginning of the window; null where a signal has no value there.</summary>
    public Track? Follow(Predicate predicate) => Track.Of(predicate, Trace, FromUs, EndUs);

    /// <summary>A verdict of this window.</summary>
    public ExpectationVerdict Say(Outcome outcome, string reason, Margin? margin, double decidedUs) => new()
    {
        Expectation = Expectation,
        Outcome = outcome,
        Reason = reason,
        Margin = margin,
        FromUs = FromUs,
        ToUs = ToUs,
        DecidedUs = decidedUs,
        Seen = double.IsNaN(decidedUs) ? "" : Seen(decidedUs),
    };

    /// <summary>The window reaches beyond the run, and what was run does not decide.</summary>
    public ExpectationVerdict NotCovered() => Say(
        Outcome.NotExercised,
        $"the window ends at {TimeText.Of(ToUs)}, but the run ended at {TimeText.Of(EndUs)}, and up to there nothing decided",
        null,
        double.NaN);

    /// <summary>A signal has no value where the window begins.</summary>
    public ExpectationVerdict NoValue()
    {
        Comparison? without = Expectation.Predicates.SelectMany(predicate => predicate.Comparisons)
            .FirstOrDefault(comparison => Trace.Find(comparison.Signal.Name) is not { } signal || signal.IndexAt((long)FromUs) < 0);
        string name = without?.Signal.Spoken ?? "a signal";
        return Say(Outcome.NotExercised, $"'{name}' has no value at {TimeText.Of(FromUs)}, where the window begins", null, double.NaN);
    }

    /// <summary>What the signals that matter were at a time.</summary>
    public string Seen(double timeUs)
    {
        IEnumerable<string> seen = Expectation.Predicates.SelectMany(predicate => predicate.Comparisons)
            .DistinctBy(comparison => comparison.Signal.Name)
            .Select(comparison => $"{comparison.Signal.Spoken} was {Value(comparison, timeUs)}");
        return string.Join(", ", seen);
    }

    private string Value(Comparison comparison, double timeUs)
    {
        double value = Trace.Find(comparison.Signal.Name)?.ValueAt((long)timeUs) ?? double.NaN;
        if (double.IsNaN(value))
            return "unknown";
        if (comparison.Signal.IsWord)
        {
            IReadOnlyList<string> words = comparison.Signal.Words;
            return value >= 0 && value < words.Count ? words[(int)value] : value.ToString("R", CultureInfo.InvariantCulture);
        }

        UnitFamily family = comparison.Family;
        string number = family.FromSi(value, comparison.Unit).ToString($"G{ShownDigits}", CultureInfo.InvariantCulture);
        return comparison.Unit == "1" ? number : $"{number} {comparison.Unit}";
    }
}
