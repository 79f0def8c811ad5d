using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Globalization;
using System.Threading;
using LubeController.Analysis.Exploration;
using LubeController.Files.Reading;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Cli;

/// <summary><c>lubebench explore</c>: everything that the core can reach under small settings, and what must hold there.</summary>
internal static class ExploreCommand
{
    private const string Description = """
        Goes from every state that the deployed core can reach to every next one, under settings made small, with every
        combination of the inputs that a file lets vary, with presses of buttons and with power cuts, until nothing new is
        reached. In each state and step it is judged what must hold: the pump under an interlock, the healthy relay, a
        stall that is alarmed within its bound, and so on. A violation is written as the shortest script; 'lubebench
        replay' reproduces it.

        FILE is an exploration file. Exit code: 0 everything holds and nothing new is reached any more; 1 something is
        violated, or a search was not complete; 2 bad input.
        """;

    private const int MostJobs = 64;
    private const long Megabyte = 1 << 20;

    /// <summary>Makes the command.</summary>
    public static Command Make(CommandHost host)
    {
        var files = new Argument<string[]>("FILE") { Description = "Exploration files", Arity = ArgumentArity.OneOrMore };
        Option<long?> jobs = CommandOptions.Whole("--jobs", 1, MostJobs, "Threads, 1 to 64", Math.Clamp(Environment.ProcessorCount, 1, MostJobs));
        Option<long?> memory = CommandOptions.Whole("--memory", 16, 1_000_000, "Most memory for states, 16 MB or more", 4096, "MB", " of megabytes");
        Option<string> scripts = CommandOptions.Text("--scripts", "FOLDER", "Folder for scripts of violations; beside the exploration if not given");
        var command = new Command("explore", Description) { files, jobs, memory, scripts };
        command.Does((parsed, cancel) =>
            new Session(host, (int)parsed.GetValue(jobs)!, parsed.GetValue(memory)!.Value * Megabyte, parsed.GetValue(scripts), cancel).Run(parsed.GetRequiredValue(files)));
        return command;
    }

    /// <summary>How far a search is.</summary>
    internal static string Line(ExplorationLevel level) =>
        string.Create(CultureInfo.InvariantCulture, $"depth {level.Depth}: {level.States} states, {level.Transitions} transitions, {level.Frontier} to go on from");

    /// <summary>Reads explorations, carries them out one after the other and says what they found.</summary>
    private sealed class Session(CommandHost host, int jobs, long mostBytes, string? scriptFolder, CancellationToken cancel)
    {
        private readonly CoreCoverage _together = new();

        public ExitCode Run(string[] paths)
        {
            var files = new List<ExplorationFile>();
            var problems = new ProblemList();
            foreach (string path in paths)
            {
                if (new ExplorationReader(RestRules.All).Read(path, problems) is { } file)
                    files.Add(file);
            }

            if (problems.Any || files.Count < paths.Length)
                return host.Refuse(problems.All);
            bool held = true;
            foreach (ExplorationFile file in files)
                held &= Explore(file);
            if (files.Count > 1)
                ExplorationText.WriteMissing(host.Output, _together);
            return held ? ExitCode.Done : ExitCode.NotHeld;
        }

        private bool Explore(ExplorationFile file)
        {
            long from = TimeProvider.System.GetTimestamp();
            (ExplorationResult result, CoreCoverage coverage) = Search(file);
            _together.Add(coverage);
            ExplorationText.Write(host.Output, file, result, coverage, TimeProvider.System.GetElapsedTime(from).TotalSeconds);
            if (result.Outcome == ExplorationOutcome.Violated)
            {
                string script = ViolationScript.Path(file, result, scriptFolder);
                ViolationScript.Write(file, result, script);
                host.Output.WriteLine($"  shortest script: {script}");
            }

            return result.Outcome == ExplorationOutcome.Complete;
        }

        private (ExplorationResult Result, CoreCoverage Coverage) Search(ExplorationFile file)
        {
            var reached = new ExplorationLevel(0, 0, 0, 0);
            using var progress = new ProgressLine(host.Progress, () => Line(Volatile.Read(ref reached)));
            return CoreExploration.Run(file, mostBytes, jobs, level => Volatile.Write(ref reached, level), cancel);
        }
    }
}
