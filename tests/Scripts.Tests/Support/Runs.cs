using System.Linq;
using LubeController.Emulator;
using LubeController.Files.Reading;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Expectations.Judging;
using LubeController.Scripts.Predicates;
using LubeController.Scripts.Signals;
using LubeController.Scripts.Steps;
using LubeController.Tests.Support;

namespace LubeController.Scripts.Tests.Support;

/// <summary>Small runs written out point by point, and expectations written as sentences.</summary>
public sealed class Runs
{
    public Trace Trace { get; } = new();

    public Runs OnOff(string name, params (long TimeUs, double Value)[] points) => Add(name, SignalKind.OnOff, "1", null, points);

    public Runs Count(string name, params (long TimeUs, double Value)[] points) => Add(name, SignalKind.Step, "1", null, points);

    public Runs Phase(params (long TimeUs, double Value)[] points) => Add("phase", SignalKind.Step, "1", SampleBench.Phases, points);

    public Runs Linear(string name, string siUnit, params (long TimeUs, double Value)[] points) => Add(name, SignalKind.Linear, siUnit, null, points);

    public Runs EndingAt(long timeUs)
    {
        Trace.End(timeUs);
        return this;
    }

    public Predicate Predicate(string sentence)
    {
        var problems = new ProblemList();
        Predicate? predicate = new PredicateReader(SignalCatalogue.Of(Trace), problems).Read(new ScalarNode(default, "", sentence, true));
        Xunit.Assert.Empty(problems.All.Select(problem => problem.Message));
        return predicate!;
    }

    public ExpectationVerdict Judge(Expectation expectation, long? plannedEndUs = null, params FiredStep[] fired) =>
        new Judge(Trace, fired, plannedEndUs ?? Trace.EndUs).Verdict(expectation with { Name = "the expectation" });

    public AlwaysExpectation Always(string sentence, bool never = false) => new(Predicate(sentence), never) { Name = "", Place = default };

    public EventuallyExpectation Eventually(string sentence, long? within = null) => new(Predicate(sentence)) { Name = "", Place = default, WithinUs = within };

    public UntilExpectation Until(string hold, string until, long? within = null) => new(Predicate(hold), Predicate(until)) { Name = "", Place = default, WithinUs = within };

    public HoldsExpectation Holds(string sentence, long forUs, long? within = null) => new(Predicate(sentence), forUs) { Name = "", Place = default, WithinUs = within };

    public InOrderExpectation InOrder(params string[] sentences) => new(sentences.Select(Predicate).ToArray()) { Name = "", Place = default };

    private Runs Add(string name, SignalKind kind, string unit, string[]? labels, (long TimeUs, double Value)[] points)
    {
        Signal signal = Trace.Define(name, kind, unit, labels);
        foreach ((long time, double value) in points)
            signal.Record(time, value);
        return this;
    }
}
