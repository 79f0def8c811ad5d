using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Running;

namespace LubeController.Scripts.Reporting;

/// <summary>The closing lines of a replay.</summary>
public static class TotalsText
{
    /// <summary>What every user of a simulated bench must know.</summary>
    public const string Caution = "A simulated pass does not replace the test on the machine.";

    /// <summary>Scripts and expectations by outcome, and scans executed.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<ScriptVerdict> verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        ExpectationVerdict[] expectations = verdicts.SelectMany(verdict => verdict.Expectations).ToArray();
        return
        [
            $"scripts: {Counts(verdicts.Select(verdict => verdict.Outcome).ToArray())}",
            $"expectations: {Counts(expectations.Select(verdict => verdict.Outcome).ToArray())}",
            FormattableString.Invariant($"scans executed: {verdicts.Sum(verdict => verdict.ScansExecuted)}"),
            Caution,
        ];
    }

    private static string Counts(Outcome[] outcomes) => FormattableString.Invariant(
        $"{outcomes.Length}, {outcomes.Count(Is(Outcome.Held))} held, {outcomes.Count(Is(Outcome.Failed))} failed, {outcomes.Count(Is(Outcome.NotExercised))} not exercised");

    private static Func<Outcome, bool> Is(Outcome wanted) => outcome => outcome == wanted;
}
