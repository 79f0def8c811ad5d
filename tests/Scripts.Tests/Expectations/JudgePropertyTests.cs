using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using CsCheck;
using LubeController.Emulator;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Expectations.Judging;
using LubeController.Scripts.Predicates;
using LubeController.Scripts.Signals;
using Xunit;

namespace LubeController.Scripts.Tests.Expectations;

/// <summary>The exact judge against a judge that samples, on random runs, expectations and windows.</summary>
public sealed class JudgePropertyTests
{
    private const int EndUs = 24;
    private const int Draws = 10_000;

    private static readonly Gen<RandomSignal[]> GenSignals = Gen.Select(
        RandomSignal.Draw("pressure.line", SignalKind.Linear, "Pa", EndUs),
        RandomSignal.Draw("pressure.gauge", SignalKind.Linear, "Pa", EndUs),
        RandomSignal.Draw("alarm.low", SignalKind.OnOff, "1", EndUs),
        RandomSignal.Draw("counter.doses", SignalKind.Step, "1", EndUs),
        (line, gauge, alarm, doses) => new[] { line, gauge, alarm, doses });

    private static readonly Gen<Predicate> GenComparison = Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[-8, 12]).Select((which, relation, level) => which switch
    {
        0 or 1 => Linear(which == 0 ? "pressure.line" : "pressure.gauge", (Relation)(relation + 2), (level / 2.0) + 0.5),
        2 => (Predicate)new Comparison(new SignalInfo("alarm.low", SignalKind.OnOff, "1", null), relation % 2 == 0 ? Relation.Equal : Relation.NotEqual, 1, "s", "alarm low"),
        _ => new Comparison(new SignalInfo("counter.doses", SignalKind.Step, "1", null), (Relation)(Math.Abs(level) % 6), relation, "1", "counter doses"),
    });

    private static readonly Gen<Predicate> GenPredicate = Gen.Select(GenComparison, GenComparison, Gen.Int[0, 4]).Select((first, second, form) => form switch
    {
        3 => new Joined([first, second], All: true),
        4 => new Joined([first, second], All: false),
        _ => first,
    });

    private static readonly Gen<Expectation> GenExpectation = Gen.Select(GenPredicate, GenPredicate, GenPredicate, Gen.Int[0, 5], Gen.Int[1, 8]).Select((first, second, third, form, time) => form switch
    {
        0 => (Expectation)new AlwaysExpectation(first, Never: false) { Name = "", Place = default },
        1 => new AlwaysExpectation(first, Never: true) { Name = "", Place = default },
        2 => new EventuallyExpectation(first) { Name = "", Place = default },
        3 => new UntilExpectation(first, second) { Name = "", Place = default },
        4 => new HoldsExpectation(first, time) { Name = "", Place = default },
        _ => new InOrderExpectation([first, second, third]) { Name = "", Place = default },
    });

    [Fact]
    public void The_exact_judge_agrees_with_one_that_samples() =>
        Gen.Select(GenSignals, GenExpectation, Gen.Int[0, EndUs], Gen.Int[0, EndUs + 6]).Sample(
            Compare,
            iter: Draws,
            print: drawn => Describe(drawn.Item1, drawn.Item2, drawn.Item3, drawn.Item4));

    [Fact]
    public void Every_sort_of_expectation_and_outcome_is_drawn()
    {
        // A property that draws only one side shows nothing: all sorts must come out held, failed and not exercised.
        var seen = new HashSet<(Type, Outcome)>();
        Gen.Select(GenSignals, GenExpectation, Gen.Int[0, EndUs], Gen.Int[0, EndUs + 6]).Sample(
            (signals, expectation, from, length) => { seen.Add((expectation.GetType(), Exact(signals, expectation, from, from + length).Outcome)); },
            iter: 5000,
            threads: 1);
        Assert.Equal(5 * 3, seen.Count);
    }

    private static void Compare(RandomSignal[] signals, Expectation expectation, int from, int length)
    {
        int to = from + length;
        ExpectationVerdict exact = Exact(signals, expectation, from, to);
        (Outcome outcome, double margin) = new SampledJudge(signals.ToDictionary(signal => signal.Name), EndUs).Judge(expectation, from, to);
        Assert.Equal(outcome, exact.Outcome);
        if (outcome == Outcome.NotExercised)
            return;
        Assert.NotNull(exact.Margin);
        double found = exact.Margin.Value.Unit == "s" ? exact.Margin.Value.Value * 1e6 : exact.Margin.Value.Value;
        Assert.Equal(margin, found, Tolerance(expectation, exact.Margin.Value));
        Assert.True(outcome == Outcome.Held ? found >= -1e-6 : found <= 1e-6, $"{outcome} with margin {found}");
    }

    /// <summary>
    /// Where two lines meet, or a stretch is fitted under a hill, the best level may lie between two samples: then the
    /// sampling judge is off by up to the steepest slope times the time between samples.
    /// </summary>
    private static double Tolerance(Expectation expectation, Margin margin)
    {
        bool between = expectation is HoldsExpectation or UntilExpectation || expectation.Predicates.Any(predicate => predicate is Joined);
        return margin.Unit == "Pa" && between ? 2.0 / 8.0 : 1e-6;
    }

    private static ExpectationVerdict Exact(RandomSignal[] signals, Expectation expectation, int from, int to)
    {
        var trace = new Trace();
        foreach (RandomSignal signal in signals)
            signal.Record(trace);
        trace.End(EndUs);
        return new Judge(trace, [], EndUs).Verdict(expectation with { From = new TimeEdge(from, "from"), To = new TimeEdge(to, "to") });
    }

    private static Comparison Linear(string name, Relation relation, double level) =>
        new(new SignalInfo(name, SignalKind.Linear, "Pa", null), relation, level, "Pa", $"{name} {relation} {level.ToString(CultureInfo.InvariantCulture)}");

    private static string Describe(RandomSignal[] signals, Expectation expectation, int from, int length) =>
        string.Join("; ", signals.Select(signal => $"{signal.Name}: {string.Join(' ', signal.Points)}")) + $"; {expectation} over {from} to {from + length}";
}
