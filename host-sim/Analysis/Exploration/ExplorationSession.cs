using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.IO;
using System.Threading;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;

namespace LubeController.Analysis.Exploration;

/// <summary>What the user asks of an exploration.</summary>
/// <param name="Files">Exploration files.</param>
/// <param name="Workers">Threads, 1 or more.</param>
/// <param name="MostBytes">Most memory, bytes.</param>
/// <param name="ScriptFolder">Folder for scripts of violations; null beside the exploration.</param>
public sealed record ExplorationOptions(IReadOnlyList<string> Files, int Workers, long MostBytes, string? ScriptFolder);

/// <summary>Reads explorations, carries them out one after the other and tells what they found.</summary>
/// <param name="rules">The rest rules that are compiled in.</param>
/// <param name="seconds">A clock that runs, for the time each took.</param>
public sealed class ExplorationSession(IReadOnlyList<RestRuleKind> rules, Func<double> seconds)
{
    /// <summary>Exit code: everything holds and nothing new is reached any more.</summary>
    public const int AllHeld = 0;

    /// <summary>Exit code: something is violated, or a search was not complete.</summary>
    public const int NotHeld = 1;

    /// <summary>Exit code: bad input.</summary>
    public const int BadInput = 2;

    /// <summary>Carries them out.</summary>
    public int Run(ExplorationOptions options, TextWriter output, TextWriter errors, IExplorationProgress progress, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(errors);
        var files = new List<ExplorationFile>();
        var problems = new ProblemList();
        foreach (string path in options.Files)
        {
            if (new ExplorationReader(rules).Read(path, problems) is { } file)
                files.Add(file);
        }

        foreach (Problem problem in problems.All)
            errors.WriteLine(problem);
        if (problems.Any || files.Count < options.Files.Count)
            return BadInput;
        var together = new CoreCoverage();
        bool held = true;
        foreach (ExplorationFile file in files)
            held &= Explore(file, options, output, progress, together, cancel);
        if (files.Count > 1)
            ExplorationText.WriteMissing(output, together);
        return held ? AllHeld : NotHeld;
    }

    /// <summary>Explores one file.</summary>
    /// <param name="file">The file.</param>
    /// <param name="options">Threads and memory.</param>
    /// <param name="progress">Is told of each level.</param>
    /// <param name="cancel">Gives it up.</param>
    /// <param name="coverage">What it came by.</param>
    [SuppressMessage("Design", "CA1021", Justification = "Two results of one search.")]
    public static ExplorationResult Explore(ExplorationFile file, ExplorationOptions options, IExplorationProgress progress, CancellationToken cancel, out CoreCoverage coverage)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(options);
        var models = new List<CoreModel>();
        var explorer = new Explorer(Make, new ExplorationBounds(file.MostStates, options.MostBytes, options.Workers), progress);
        ExplorationResult result = explorer.Run(cancel);
        coverage = new CoreCoverage();
        foreach (CoreModel model in models)
            coverage.Add(model.Coverage);
        return result;

        CoreModel Make()
        {
            var model = new CoreModel(file.Core);
            models.Add(model);
            return model;
        }
    }

    private bool Explore(ExplorationFile file, ExplorationOptions options, TextWriter output, IExplorationProgress progress, CoreCoverage together, CancellationToken cancel)
    {
        double from = seconds();
        ExplorationResult result = Explore(file, options, progress, cancel, out CoreCoverage coverage);
        together.Add(coverage);
        ExplorationText.Write(output, file, result, coverage, seconds() - from);
        if (result.Outcome == ExplorationOutcome.Violated)
        {
            string script = ViolationScript.Path(file, result, options.ScriptFolder);
            ViolationScript.Write(file, result, script);
            output.WriteLine($"  shortest script: {script}");
        }

        return result.Outcome == ExplorationOutcome.Complete;
    }
}
