using System.Collections.Generic;
using System.Linq;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Records;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Scripts.Running;

/// <summary>What became of one script.</summary>
/// <param name="Script">The script.</param>
/// <param name="Expectations">What became of each expectation, in order of writing.</param>
/// <param name="Omissions">Why the script counts as not exercised beside its expectations: one sentence each.</param>
public sealed record ScriptVerdict(BenchScript Script, IReadOnlyList<ExpectationVerdict> Expectations, IReadOnlyList<string> Omissions)
{
    /// <summary>Scans of the controller that the run executed.</summary>
    public long ScansExecuted { get; init; }

    /// <summary>Where the run first differs from its baseline; null where it does not, or none was given.</summary>
    public RecordDifference? Difference { get; init; }

    /// <summary>Failed where any expectation failed or the baseline differs, else not exercised where anything was not put to the test, else held.</summary>
    public Outcome Outcome =>
        Difference != null || Expectations.Any(verdict => verdict.Outcome == Outcome.Failed) ? Outcome.Failed
        : Omissions.Count > 0 || Expectations.Any(verdict => verdict.Outcome == Outcome.NotExercised) ? Outcome.NotExercised
        : Outcome.Held;
}
