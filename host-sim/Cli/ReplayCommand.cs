using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Records;
using LubeController.Scripts.Replaying;
using LubeController.Scripts.Reporting;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Cli;

/// <summary><c>lubebench replay</c>: runs bench scripts and prints what became of them.</summary>
internal static class ReplayCommand
{
    private const int MostJobs = 256;
    private const int BarWidth = 30;

    private const string Description = """
        Replays bench scripts and says which expectation held, which failed, when, and by how much.

        PATH is a script, a folder (all .yaml below it but .plant.yaml, .lubricant.yaml, .settings.yaml and .base.yaml) or
        a pattern with *, ? and **. Exit code: 0 all held; 1 something failed or was not exercised; 2 bad input, then nothing ran and
        nothing was written.
        """;

    /// <summary>Makes the command.</summary>
    public static Command Make(CommandHost host)
    {
        var paths = new Argument<string[]>("PATH") { Description = "Scripts, folders and patterns", Arity = ArgumentArity.OneOrMore };
        Option<long?> jobs = CommandOptions.Whole("--jobs", 1, MostJobs, "Runs at a time; the results do not depend on it");
        Option<long?> seed = CommandOptions.Whole("--seed", 0, long.MaxValue, "Seed in place of the scripts' own", help: "S");
        Option<long?> bound = CommandOptions.Whole("--scan-bound", 1, long.MaxValue, "Most scans of one run in place of the scripts' own");
        Option<string> filter = CommandOptions.Text("--filter", "TEXT", "Only scripts with this text in path or title");
        Option<string> trace = CommandOptions.Text("--trace", "DIR", "Write each run to this folder, as CSV and as VCD");
        Option<string> baseline = CommandOptions.Text("--baseline", "FILE-OR-DIR", "Compare each run with one that --trace wrote");
        Option<string> junit = CommandOptions.File("--junit", "Write the verdicts as JUnit XML");
        var margins = new Option<bool>("--margins") { Description = "List what held too, each expectation with its margin; always so for a single script" };
        var command = new Command("replay", Description) { paths, jobs, seed, bound, filter, margins, trace, baseline, junit };
        command.Does(parsed =>
        {
            var asked = new ReplayOptions
            {
                Paths = parsed.GetRequiredValue(paths),
                Seed = (ulong?)parsed.GetValue(seed),
                ScanBound = parsed.GetValue(bound),
                Filter = parsed.GetValue(filter),
                TraceFolder = parsed.GetValue(trace),
                Baseline = parsed.GetValue(baseline),
                JunitFile = parsed.GetValue(junit),
            };
            return new Session(host, asked, (int)(parsed.GetValue(jobs) ?? Environment.ProcessorCount), parsed.GetValue(margins)).Run();
        });
        return command;
    }

    /// <summary>How many scripts have run, as a bar.</summary>
    internal static string Bar(int done, int scripts)
    {
        int full = scripts == 0 ? BarWidth : (int)((long)BarWidth * done / scripts);
        return string.Create(CultureInfo.InvariantCulture, $"[{new string('#', full)}{new string('.', BarWidth - full)}] {done} of {scripts} scripts");
    }

    /// <summary>Replays scripts, several at a time, and says what became of them in their own order.</summary>
    private sealed class Session(CommandHost host, ReplayOptions asked, int jobs, bool margins)
    {
        private readonly ScriptRunner _runner = new(host.Bench);
        private int _done;

        public ExitCode Run()
        {
            var complaints = new List<string>();
            if (ReplayPlan.Make(asked, new ScriptReader(host.Bench, RestRules.All), complaints) is not { } plan)
                return host.Refuse(complaints);
            foreach (string remark in plan.Scripts.SelectMany(script => script.Remarks).Select(remark => remark.ToString()).Distinct())
                host.Errors.WriteLine("note: " + remark);
            try
            {
                return Replay(plan);
            }
            catch (Exception reason) when (reason is IOException or UnauthorizedAccessException or InvalidDataException)
            {
                return host.Refuse(reason.Message.StartsWith("--", StringComparison.Ordinal) ? reason.Message : $"a record cannot be written or read: {reason.Message}");
            }
        }

        private ExitCode Replay(ReplayPlan plan)
        {
            List<ScriptVerdict> verdicts = RunAll(plan);
            foreach (string line in AssumptionText.Of(plan.Scripts.Select(script => script.Plant)))
                host.Output.WriteLine(line);
            foreach (string line in TotalsText.Of(verdicts))
                host.Output.WriteLine(line);
            if (asked.JunitFile is { } file)
                WholeFile.Write("--junit", file, writer => JunitReport.Write(verdicts, writer));
            return verdicts.All(verdict => verdict.Outcome == Outcome.Held) ? ExitCode.Done : ExitCode.NotHeld;
        }

        private List<ScriptVerdict> RunAll(ReplayPlan plan)
        {
            using var progress = new ProgressLine(host.Progress, () => Bar(Volatile.Read(ref _done), plan.Scripts.Count));
            using var places = new SemaphoreSlim(jobs);
            Task<(ScriptVerdict Verdict, IReadOnlyList<string> Lines)>[] runs = [.. plan.Scripts.Select((_, index) => RunInTurn(plan, index, places))];
            var verdicts = new List<ScriptVerdict>();
            try
            {
                foreach (Task<(ScriptVerdict Verdict, IReadOnlyList<string> Lines)> run in runs)
                {
                    (ScriptVerdict verdict, IReadOnlyList<string> lines) = run.GetAwaiter().GetResult();
                    verdicts.Add(verdict);
                    progress.Clear();
                    foreach (string line in lines)
                        host.Output.WriteLine(line);
                }
            }
            finally
            {
                // No run may still be writing when the places are given back.
                Task.WhenAll(runs).ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default).GetAwaiter().GetResult();
            }

            return verdicts;
        }

        private async Task<(ScriptVerdict Verdict, IReadOnlyList<string> Lines)> RunInTurn(ReplayPlan plan, int index, SemaphoreSlim places)
        {
            await places.WaitAsync().ConfigureAwait(false);
            try
            {
                return await Task.Run(() => RunOne(plan, index)).ConfigureAwait(false);
            }
            finally
            {
                places.Release();
                Interlocked.Increment(ref _done);
            }
        }

        /// <summary>Runs one script; its trace is written, compared and dropped here, so that many large ones need no memory at once.</summary>
        private (ScriptVerdict Verdict, IReadOnlyList<string> Lines) RunOne(ReplayPlan plan, int index)
        {
            BenchScript script = plan.Scripts[index];
            (ScriptVerdict verdict, RunResult result) = _runner.Run(script);
            if (plan.Baselines.Count > 0)
            {
                using var stored = new StreamReader(plan.Baselines[index]);
                verdict = verdict with { Difference = BaselineComparison.FirstDifference(CsvRecord.Read(stored), TraceRecords.Of(result.Trace)) };
            }

            if (asked.TraceFolder is { } folder)
            {
                WholeFile.Write("--trace", RecordPaths.Of(folder, script.Path, ".csv"), writer => CsvRecord.Write(result.Trace, writer));
                WholeFile.Write("--trace", RecordPaths.Of(folder, script.Path, ".vcd"), writer => VcdRecord.Write(result.Trace, writer));
            }

            return (verdict, VerdictText.Of(verdict, result, margins || plan.Scripts.Count == 1, verdict.Difference == null ? null : plan.Baselines[index]));
        }
    }
}
