using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Expectations.Judging;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.Running;

/// <summary>Carries out a script on a bench and judges what it gave.</summary>
/// <param name="bench">The bench.</param>
public sealed class ScriptRunner(IScriptBench bench)
{
    /// <summary>Runs and judges; the run is returned beside the verdict, since a trace may be large and is seldom kept.</summary>
    public (ScriptVerdict Verdict, RunResult Result) Run(BenchScript script)
    {
        ArgumentNullException.ThrowIfNull(script);
        script = script.Drawn();
        RunResult result = bench.Run(script);
        var judge = new Judge(result.Trace, result.FiredSteps, script.DurationUs);
        var verdict = new ScriptVerdict(script, script.Expectations.Select(judge.Verdict).ToArray(), Omissions(script, result).ToArray()) { ScansExecuted = result.ScansExecuted };
        return (verdict, result);
    }

    private static IEnumerable<string> Omissions(BenchScript script, RunResult result)
    {
        if (script.Expectations.Count == 0)
            yield return "the script expects nothing";
        if (result.ScanBoundReached)
            yield return FormattableString.Invariant($"the run was broken off at {TimeText.Of(result.Trace.EndUs)}, after {result.ScansExecuted} scans, its bound: raise 'scan-bound' or '--scan-bound', or shorten 'duration'");
        var fired = result.FiredSteps.Select(step => step.Step).ToHashSet();
        foreach (Step step in script.Steps.Where(step => !fired.Contains(step.Index)))
            yield return $"the step {step.Label} ({step.Action.Text}) was never carried out: {Why(step, script)}";
        foreach (Step step in result.IdleFaults)
            yield return Idle(step, (SetFault)step.Action, result);
    }

    private static string Idle(Step step, SetFault fault, RunResult result)
    {
        string at = TimeText.Of(result.FiredSteps.First(fired => fired.Step == step.Index).TimeUs);
        string needs = fault.Kind.Needs.Length > 0 ? $"it needs {fault.Kind.Needs} while it is in place" : "nothing behaved otherwise while it was in place";
        return $"the fault {fault.Kind.Name}{(fault.Part.Length > 0 ? " on " + fault.Part : "")} (step {step.Label}, at {at}) never took effect: {needs}";
    }

    private static string Why(Step step, BenchScript script) => step.Time switch
    {
        AtTime at => $"its time, {TimeText.Of(at.TimeUs)}, lies beyond the run",
        AfterStep after => $"it waits for {script.Steps[after.Step].Label}, or the run ended before its delay did",
        AfterTrigger trigger => $"'{trigger.Trigger.Text}' did not come true, or the run ended before its delay did",
        _ => "its time never came",
    };
}
