using System;
using System.Collections.Generic;
using System.IO;
using LubeController.Files.PlantFiles;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;
using LubeController.Files.Sorts;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Predicates;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>Reads a script with its plant and its settings, for one bench.</summary>
/// <param name="bench">Says which signals and faults there are.</param>
/// <param name="rules">The rest rules that are compiled in.</param>
public sealed class ScriptReader(IVocabularySource bench, IReadOnlyList<RestRuleKind> rules)
{
    /// <summary>Longest scan period that a script may have.</summary>
    public const int LongestScanPeriodMs = 1000;

    /// <summary>Time between two scans where a script says nothing, milliseconds.</summary>
    public const int PresetScanPeriodMs = 10;

    /// <summary>Seed where a script says nothing.</summary>
    public const ulong PresetSeed = 1;

    /// <summary>Most scans a run may execute where nothing is said: a day of scans at 10 ms.</summary>
    public const long PresetScanBound = 8_640_000;

    private const long LargestScanBound = 10_000_000_000;

    /// <summary>Reads a script, or returns null where a problem was added.</summary>
    /// <param name="path">Path as the user gave it.</param>
    /// <param name="problems">Takes what is wrong with the script, its plant and its settings.</param>
    public BenchScript? Read(string path, ProblemList problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        int before = problems.Count;
        MapNode? top = Inheritance.Read(path, problems);
        if (top == null || FileSort.IsOther(top, FileKeys.Script, problems))
            return null;
        var file = new MapReader(top, FileKeys.Script, problems);
        if (!file.Has("script"))
            file.Missing("script", "write what it shows, for instance 'a blocked outlet stops the divider'");
        string title = file.Text("script") ?? "";
        bool boardJudges = SettingsCheckChoice.IsTheBoards(file);
        LoadedPlant? plant = Other(file, "plant") is { } plantPath ? PlantReader.Read(plantPath, problems) : null;
        ControlSettings? settings = Other(file, "settings") is { } settingsPath ? SettingsReader.Read(settingsPath, rules, problems, judged: !boardJudges) : null;
        if (plant != null)
            plant = plant with { Plant = UndefinedInputs.Apply(file, plant.Plant) };
        if (boardJudges && settings != null)
            SettingsCheckChoice.Confirm(file, settings);
        if (plant != null && settings != null)
            FittedParts.Check(file, plant.Plant, settings, problems);
        long duration = Time(file, "duration", ScriptRanges.Duration, needed: true);
        long periodUs = file.Has("scan-period") ? Time(file, "scan-period", ScriptRanges.ScanPeriod, needed: false) : PresetScanPeriodMs * 1000L;
        if (periodUs % 1000 != 0)
            problems.Add(file.Map["scan-period"]!, "the controller's clock counts whole milliseconds", "write a multiple of 1 ms");
        ulong seed = (ulong)(file.Whole("seed", 0, long.MaxValue) ?? (long)PresetSeed);
        long bound = file.Whole("scan-bound", 1, LargestScanBound) ?? PresetScanBound;
        BenchVocabulary? vocabulary = plant == null || settings == null ? null : bench.Describe(plant.Plant, settings);
        PredicateReader? predicates = vocabulary == null ? null : new PredicateReader(vocabulary.Signals, problems);
        var steps = new StepReader(file, vocabulary, plant?.Plant, predicates);
        IReadOnlyList<Step> read = steps.Read();
        IReadOnlyList<Expectation> expectations = new ExpectationReader(file, steps.Names, predicates).Read();
        if (problems.Count > before || plant == null || settings == null)
            return null;
        return new BenchScript
        {
            Path = path,
            Title = title,
            Plant = plant.Plant,
            Settings = settings,
            DurationUs = duration,
            ScanPeriodMs = (int)(periodUs / 1000),
            Seed = seed,
            ScanBound = bound,
            Steps = read,
            Expectations = expectations,
            Remarks = [.. plant.Remarks, .. boardJudges ? [] : FittedParts.Remarks(file, plant.Plant, settings)],
        };
    }

    private static long Time(MapReader file, string key, QuantityRange range, bool needed)
    {
        if (needed && !file.Has(key))
            file.Missing(key, $"write for instance '{key}: 30 min'");
        return file.Quantity(key, range) is { } time ? Microseconds.Of(time) : 0;
    }

    /// <summary>The path of another file that a script names, if it is there.</summary>
    private static string? Other(MapReader file, string key)
    {
        if (!file.Has(key))
            file.Missing(key, $"write the path of the {key} file, relative to the script");
        if (file.Single(key) is not { } named)
            return null;
        string path = Inheritance.Resolve(named);
        if (File.Exists(path))
            return path;
        bool folder = Directory.Exists(path);
        string full = System.IO.Path.GetFullPath(path);
        file.Problems.Add(
            named,
            folder ? $"a folder stands where the {key} file should; looked at {full}" : $"the {key} file is missing; looked for {full}",
            folder ? $"name the {key} file inside it" : "correct the path, which is relative to the file that names it");
        return null;
    }
}
