using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Records;
using LubeController.Scripts.Reporting;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Scripts.Replaying;

/// <summary>Replays scripts, several at a time, and tells what became of them in their own order.</summary>
/// <param name="reader">Reads scripts.</param>
/// <param name="runner">Runs and judges them.</param>
/// <param name="progress">Hears how far it is.</param>
public sealed class ReplaySession(ScriptReader reader, ScriptRunner runner, IReplayProgress progress)
{
    /// <summary>Every expectation was exercised and held.</summary>
    public const int AllHeld = 0;

    /// <summary>An expectation failed or was not exercised, or a run differs from its baseline.</summary>
    public const int NotAllHeld = 1;

    /// <summary>What was asked cannot be done; nothing ran and nothing was written.</summary>
    public const int BadInput = 2;

    /// <summary>Replays.</summary>
    /// <returns>The exit code.</returns>
    public int Run(ReplayOptions options, TextWriter output, TextWriter errors)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(errors);
        var complaints = new List<string>();
        if (ReplayPlan.Make(options, reader, complaints) is not { } plan)
        {
            foreach (string complaint in complaints)
                errors.WriteLine(complaint);
            return BadInput;
        }

        foreach (string remark in plan.Scripts.SelectMany(script => script.Remarks).Select(remark => remark.ToString()).Distinct())
            errors.WriteLine("note: " + remark);
        try
        {
            return Replay(plan, options, output);
        }
        catch (Exception reason) when (reason is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            progress.Clear();
            errors.WriteLine(reason.Message.StartsWith("--", StringComparison.Ordinal) ? reason.Message : $"a record cannot be written or read: {reason.Message}");
            return BadInput;
        }
    }

    private int Replay(ReplayPlan plan, ReplayOptions options, TextWriter output)
    {
        progress.Begin(plan.Scripts.Count);
        using var places = new SemaphoreSlim(options.Jobs);
        Task<(ScriptVerdict Verdict, IReadOnlyList<string> Lines)>[] runs = plan.Scripts.Select((_, index) => One(plan, index, options, places)).ToArray();
        var verdicts = new List<ScriptVerdict>();
        try
        {
            foreach (Task<(ScriptVerdict Verdict, IReadOnlyList<string> Lines)> run in runs)
            {
                (ScriptVerdict verdict, IReadOnlyList<string> lines) = run.GetAwaiter().GetResult();
                verdicts.Add(verdict);
                progress.Clear();
                foreach (string line in lines)
                    output.WriteLine(line);
            }
        }
        finally
        {
            // No run may still be writing when the places are given back.
            Task.WhenAll(runs).ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default).GetAwaiter().GetResult();
            progress.Clear();
        }

        foreach (string line in AssumptionText.Of(plan.Scripts.Select(script => script.Plant)))
            output.WriteLine(line);
        foreach (string line in TotalsText.Of(verdicts))
            output.WriteLine(line);
        if (options.JunitFile is { } file)
            WholeFile.Write("--junit", file, writer => JunitReport.Write(verdicts, writer));
        return verdicts.All(verdict => verdict.Outcome == Outcome.Held) ? AllHeld : NotAllHeld;
    }

    private async Task<(ScriptVerdict Verdict, IReadOnlyList<string> Lines)> One(ReplayPlan plan, int index, ReplayOptions options, SemaphoreSlim places)
    {
        await places.WaitAsync().ConfigureAwait(false);
        try
        {
            return await Task.Run(() => One(plan, index, options)).ConfigureAwait(false);
        }
        finally
        {
            places.Release();
            progress.Advance();
        }
    }

    /// <summary>Runs one script; its trace is written, compared and dropped here, so that many large ones need no memory at once.</summary>
    private (ScriptVerdict Verdict, IReadOnlyList<string> Lines) One(ReplayPlan plan, int index, ReplayOptions options)
    {
        BenchScript script = plan.Scripts[index];
        (ScriptVerdict verdict, RunResult result) = runner.Run(script);
        if (plan.Baselines.Count > 0)
        {
            using var stored = new StreamReader(plan.Baselines[index]);
            verdict = verdict with { Difference = BaselineComparison.FirstDifference(CsvRecord.Read(stored), TraceRecords.Of(result.Trace)) };
        }

        if (options.TraceFolder is { } folder)
        {
            WholeFile.Write("--trace", RecordPaths.Of(folder, script.Path, ".csv"), writer => CsvRecord.Write(result.Trace, writer));
            WholeFile.Write("--trace", RecordPaths.Of(folder, script.Path, ".vcd"), writer => VcdRecord.Write(result.Trace, writer));
        }

        return (verdict, VerdictText.Of(verdict, result, options.ShowMargins || plan.Scripts.Count == 1, verdict.Difference == null ? null : plan.Baselines[index]));
    }
}
