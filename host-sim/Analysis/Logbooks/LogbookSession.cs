using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using LubeController.Scripts.Reading;
using LubeController.Scripts.Records;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.SettingsFiles;

namespace LubeController.Analysis.Logbooks;

/// <summary>What the user asks of a logbook.</summary>
/// <param name="ScriptFile">The script to replay.</param>
/// <param name="CsvFile">File for CSV; null for none.</param>
/// <param name="JsonFile">File for JSON; null for none.</param>
public sealed record LogbookOptions(string ScriptFile, string? CsvFile, string? JsonFile);

/// <summary>Replays a script and tells what the board's logbook holds at the end.</summary>
/// <param name="bench">Where the script runs.</param>
/// <param name="rules">The rest rules that are compiled in.</param>
public sealed class LogbookSession(IScriptBench bench, IReadOnlyList<RestRuleKind> rules)
{
    /// <summary>Exit code: it was told.</summary>
    public const int Done = 0;

    /// <summary>Exit code: bad input; nothing was written.</summary>
    public const int BadInput = 2;

    /// <summary>Carries it out.</summary>
    /// <returns>The exit code.</returns>
    public int Run(LogbookOptions options, TextWriter output, TextWriter errors)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(errors);
        if (!File.Exists(options.ScriptFile))
        {
            errors.WriteLine(Directory.Exists(options.ScriptFile) ? $"SCRIPT '{options.ScriptFile}' is a folder; name a script in it" : $"SCRIPT '{options.ScriptFile}' is missing; looked for {Path.GetFullPath(options.ScriptFile)}");
            return BadInput;
        }

        var problems = new ProblemList();
        BenchScript? script = new ScriptReader(bench, rules).Read(options.ScriptFile, problems);
        if (script == null)
        {
            foreach (Problem problem in problems.All)
                errors.WriteLine(problem);
            return BadInput;
        }

        IReadOnlyList<LogOccurrence> occurrences = LogOccurrences.Of(bench.Run(script).Logbook);
        try
        {
            if (options.CsvFile is { } csv)
                WholeFile.Write("--csv", csv, writer => LogbookCsv.Write(occurrences, writer));
            if (options.JsonFile is { } json)
                WholeFile.Write("--json", json, writer => LogbookJson.Write(occurrences, writer));
        }
        catch (IOException reason)
        {
            errors.WriteLine(reason.Message);
            return BadInput;
        }

        foreach (LogOccurrence one in occurrences)
            output.WriteLine(Text(one));
        return Done;
    }

    private static string Text(LogOccurrence one)
    {
        var said = new List<string>();
        if (one.Detail.Length > 0)
            said.Add(one.Detail);
        if (one.LastedMs is { } lasted)
            said.Add($"lasted {Seconds(lasted)}");
        else if (one.ConditionEnded is { } ended)
            said.Add($"condition ended at {Seconds(ended.UptimeMs)}, latched still");
        else if (one.Kind is "alarm" or "phase")
            said.Add("lasts still");
        if (one.Kind == "alarm")
            said.Add(one.Acknowledged is { } seen ? $"acknowledged at {Seconds(seen.UptimeMs)} by {one.AcknowledgedBy}" : "not acknowledged");
        if (one.Reset is { } reset)
            said.Add($"reset at {Seconds(reset.UptimeMs)}");
        if (one.FirstUp)
            said.Add("first up");
        if (one.SuppressedBy.Count > 0)
            said.Add($"suppressed, as it follows from {string.Join(" and ", one.SuppressedBy)}");
        if (one.Hidden.Length > 0)
            said.Add(one.Hidden);
        string at = LogbookTimes.At(one.Began);
        return $"{Seconds(one.Began.UptimeMs),12}  {(at.Length > 0 ? at + "  " : "")}{one.Kind,-16}{one.What}: {string.Join(", ", said)}".TrimEnd(' ', ':');
    }

    private static string Seconds(long milliseconds) => (milliseconds / 1000m).ToString("0.###", CultureInfo.InvariantCulture) + " s";
}
