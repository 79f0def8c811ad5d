using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Files.Reading;
using LubeController.Scripts.Records;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Scripts.Replaying;

/// <summary>Everything a replay will do, read and checked before anything runs.</summary>
/// <param name="Scripts">The scripts, seeds and bounds replaced where asked.</param>
/// <param name="Baselines">Path of each script's stored record; empty where none is compared.</param>
public sealed record ReplayPlan(IReadOnlyList<BenchScript> Scripts, IReadOnlyList<string> Baselines)
{
    /// <summary>Makes a plan, or returns null where anything is wrong with what was asked.</summary>
    /// <param name="options">What was asked.</param>
    /// <param name="reader">Reads the scripts.</param>
    /// <param name="complaints">Takes what is wrong, one line each.</param>
    public static ReplayPlan? Make(ReplayOptions options, ScriptReader reader, ICollection<string> complaints)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(reader);
        ArgumentNullException.ThrowIfNull(complaints);
        IReadOnlyList<string> paths = ScriptPaths.Find(options.Paths, complaints);
        BenchScript[] scripts = Read(paths, reader, complaints).Select(script => script with { Seed = options.Seed ?? script.Seed, ScanBound = options.ScanBound ?? script.ScanBound }).ToArray();
        CheckTargets(options, complaints);
        if (complaints.Count > 0)
            return null;
        BenchScript[] chosen = scripts.Where(script => Passes(script, options.Filter)).ToArray();
        if (chosen.Length == 0)
            complaints.Add($"none of the {scripts.Length} scripts has '{options.Filter}' in path or title; change --filter");
        string[] baselines = chosen.Length == 0 ? [] : Stored(options.Baseline, chosen, complaints);
        return complaints.Count > 0 ? null : new ReplayPlan(chosen, baselines);
    }

    private static List<BenchScript> Read(IReadOnlyList<string> paths, ScriptReader reader, ICollection<string> complaints)
    {
        var scripts = new List<BenchScript>();
        var told = new HashSet<Problem>();
        foreach (string path in paths)
        {
            var problems = new ProblemList();
            if (reader.Read(path, problems) is { } script)
                scripts.Add(script);
            foreach (Problem problem in problems.All.Where(told.Add))
                complaints.Add(problem.ToString());
        }

        return scripts;
    }

    private static bool Passes(BenchScript script, string? filter) =>
        filter == null || script.Path.Contains(filter, StringComparison.OrdinalIgnoreCase) || script.Title.Contains(filter, StringComparison.OrdinalIgnoreCase);

    private static void CheckTargets(ReplayOptions options, ICollection<string> complaints)
    {
        if (options.TraceFolder != null && File.Exists(options.TraceFolder))
            complaints.Add($"--trace '{options.TraceFolder}' is a file; name a folder");
        if (options.JunitFile != null && Directory.Exists(options.JunitFile))
            complaints.Add($"--junit '{options.JunitFile}' is a folder; name a file in it");
    }

    private static string[] Stored(string? baseline, BenchScript[] scripts, ICollection<string> complaints)
    {
        if (baseline == null)
            return [];
        bool folder = Directory.Exists(baseline);
        if (!folder && scripts.Length > 1)
        {
            complaints.Add($"--baseline '{baseline}' is one record, but {scripts.Length} scripts are to run; name a folder that --trace wrote, or one script");
            return [];
        }

        string[] stored = scripts.Select(script => folder ? RecordPaths.Of(baseline, script.Path, ".csv") : baseline).ToArray();
        foreach (string path in stored)
            CheckRecord(path, complaints);
        return stored;
    }

    private static void CheckRecord(string path, ICollection<string> complaints)
    {
        try
        {
            using var reader = new StreamReader(path);
            foreach (TraceRecord record in CsvRecord.Read(reader))
                _ = record;
        }
        catch (Exception reason) when (reason is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            complaints.Add($"the baseline '{path}' cannot be used: {reason.Message}; write it with --trace");
        }
    }
}
