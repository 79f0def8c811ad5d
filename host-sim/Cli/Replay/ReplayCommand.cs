using System;
using System.CommandLine;
using System.Globalization;
using System.IO;
using LubeController.Scripts.Replaying;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Cli.Replay;

/// <summary><c>lubebench replay</c>: runs bench scripts and prints what became of them.</summary>
internal static class ReplayCommand
{
    private const int MostJobs = 256;

    private const string Description = """
        Replays bench scripts and says which expectation held, which failed, when, and by how much.

        PATH is a script, a folder (all .yaml below it but .plant.yaml, .lubricant.yaml, .settings.yaml and .base.yaml) or
        a pattern with *, ? and **. Exit code: 0 all held; 1 something failed or was not exercised; 2 bad input, then nothing ran and
        nothing was written.
        """;

    /// <summary>Makes the command.</summary>
    public static Command Make(IScriptBench bench, TextWriter output, TextWriter errors, IReplayProgress progress)
    {
        var paths = new Argument<string[]>("PATH") { Description = "Scripts, folders and patterns", Arity = ArgumentArity.OneOrMore };
        Option<long> jobs = Whole("--jobs", "N", "Runs at a time; the results do not depend on it", 1, MostJobs);
        Option<long> seed = Whole("--seed", "S", "Seed in place of the scripts' own", 0, long.MaxValue);
        Option<long> bound = Whole("--scan-bound", "N", "Most scans of one run in place of the scripts' own", 1, long.MaxValue);
        Option<string> filter = TextOption.Make("--filter", "TEXT", "Only scripts with this text in path or title");
        Option<string> trace = TextOption.Make("--trace", "DIR", "Write each run to this folder, as CSV and as VCD");
        Option<string> baseline = TextOption.Make("--baseline", "FILE-OR-DIR", "Compare each run with one that --trace wrote");
        Option<string> junit = TextOption.File("--junit", "Write the verdicts as JUnit XML");
        var margins = new Option<bool>("--margins") { Description = "List what held too, each expectation with its margin; always so for a single script" };
        var command = new Command("replay", Description);
        command.Arguments.Add(paths);
        foreach (Option option in (Option[])[jobs, seed, bound, filter, margins, trace, baseline, junit])
            command.Options.Add(option);
        command.SetAction(parsed => new ReplaySession(new ScriptReader(bench, RestRules.All), new ScriptRunner(bench), progress).Run(
            new ReplayOptions
            {
                Paths = parsed.GetRequiredValue(paths),
                Jobs = parsed.GetResult(jobs) == null ? Environment.ProcessorCount : (int)parsed.GetValue(jobs),
                Seed = parsed.GetResult(seed) == null ? null : (ulong)parsed.GetValue(seed),
                ScanBound = parsed.GetResult(bound) == null ? null : parsed.GetValue(bound),
                Filter = parsed.GetValue(filter),
                ShowMargins = parsed.GetValue(margins),
                TraceFolder = parsed.GetValue(trace),
                Baseline = parsed.GetValue(baseline),
                JunitFile = parsed.GetValue(junit),
            },
            output,
            errors));
        return command;
    }

    private static Option<long> Whole(string name, string help, string description, long minimum, long maximum) => new(name)
    {
        HelpName = help,
        Description = description,
        CustomParser = result =>
        {
            string text = result.Tokens.Count == 0 ? "" : result.Tokens[0].Value;
            if (long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out long number) && number >= minimum && number <= maximum)
                return number;
            result.AddError(string.Create(CultureInfo.InvariantCulture, $"{name} is '{text}': give a whole number from {minimum} to {maximum}."));
            return 0;
        },
    };
}
