using System.Collections.Generic;
using System.Linq;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Scripts.Running;

/// <summary>What became of one script.</summary>
/// <param name="Script">The script.</param>
/// <param name="Result">What its run gave.</param>
/// <param name="Expectations">What became of each expectation, in order of writing.</param>
/// <param name="Omissions">Why the script counts as not exercised beside its expectations: one sentence each.</param>
public sealed record ScriptVerdict(BenchScript Script, RunResult Result, IReadOnlyList<ExpectationVerdict> Expectations, IReadOnlyList<string> Omissions)
{
    /// <summary>Failed where any expectation failed, else not exercised where anything was not put to the test, else held.</summary>
    public Outcome Outcome =>
        Expectations.Any(verdict => verdict.Outcome == Outcome.Failed) ? Outcome.Failed
        : Omissions.Count > 0 || Expectations.Any(verdict => verdict.Outcome == Outcome.NotExercised) ? Outcome.NotExercised
        : Outcome.Held;
}
