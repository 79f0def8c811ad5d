using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Globalization;
using System.IO;
using LubeController.Analysis.Logbooks;
using LubeController.Files.Reading;
using LubeController.Scripts.Records;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Cli;

/// <summary><c>lubebench logbook</c>: what the board's own logbook holds after a script.</summary>
internal static class LogbookCommand
{
    private const string Description = """
        Replays a bench script and tells what the board's logbook holds at the end, joined so that a person can read it:
        what happened, when, for how long, who acknowledged it, whether it was first up, and what suppressed or hid it.
        Times are seconds powered in the board's life; with --clock the board has a clock and knows the time of day too.

        SCRIPT is a bench script; its expectations are not judged. Exit code: 0 it was told; 2 bad input, then nothing was
        written.
        """;

    /// <summary>Makes the command.</summary>
    public static Command Make(CommandHost host)
    {
        var script = new Argument<string>("SCRIPT") { Description = "Bench script" };
        Option<string> csv = CommandOptions.File("--csv", "Write the occurrences as CSV (RFC 4180)");
        Option<string> json = CommandOptions.File("--json", "Write the occurrences as JSON");
        var clock = new Option<string>("--clock") { HelpName = "TIME", Description = "Time of day at the start, UTC, as 2026-01-31T06:00:00Z" };
        clock.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && ClockSeconds(result.Tokens[0].Value) == 0)
                result.AddError($"--clock is '{result.Tokens[0].Value}': give a time of day after 1970 and before 2106, UTC, as 2026-01-31T06:00:00Z.");
        });
        var command = new Command("logbook", Description) { script, csv, json, clock };
        command.Does(parsed =>
        {
            string? time = parsed.GetValue(clock);
            IScriptBench bench = time == null ? host.Bench : new EmulatedBench { WallTimeAtStartS = ClockSeconds(time) };
            return Run(new Asked(parsed.GetRequiredValue(script), parsed.GetValue(csv), parsed.GetValue(json)), bench, host);
        });
        return command;
    }

    private static ExitCode Run(Asked asked, IScriptBench bench, CommandHost host)
    {
        if (!File.Exists(asked.ScriptFile))
            return host.Refuse(Directory.Exists(asked.ScriptFile) ? $"SCRIPT '{asked.ScriptFile}' is a folder; name a script in it" : $"SCRIPT '{asked.ScriptFile}' is missing; looked for {Path.GetFullPath(asked.ScriptFile)}");
        var problems = new ProblemList();
        BenchScript? script = new ScriptReader(bench, RestRules.All).Read(asked.ScriptFile, problems);
        if (script == null)
            return host.Refuse(problems.All);
        IReadOnlyList<LogOccurrence> occurrences = LogOccurrences.Of(bench.Run(script).Logbook);
        try
        {
            if (asked.CsvFile is { } csv)
                WholeFile.Write("--csv", csv, writer => LogbookCsv.Write(occurrences, writer));
            if (asked.JsonFile is { } json)
                WholeFile.Write("--json", json, writer => LogbookJson.Write(occurrences, writer));
        }
        catch (IOException reason)
        {
            return host.Refuse(reason.Message);
        }

        foreach (LogOccurrence occurrence in occurrences)
            host.Output.WriteLine(LogbookText.Line(occurrence));
        return ExitCode.Done;
    }

    /// <summary>Seconds since 1970; 0 for what is no such time.</summary>
    private static uint ClockSeconds(string text)
    {
        bool read = DateTimeOffset.TryParseExact(text, "yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out DateTimeOffset time);
        return read && time.ToUnixTimeSeconds() is > 0 and <= uint.MaxValue ? (uint)time.ToUnixTimeSeconds() : 0;
    }

    private sealed record Asked(string ScriptFile, string? CsvFile, string? JsonFile);
}
