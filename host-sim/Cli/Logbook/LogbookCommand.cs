using System;
using System.CommandLine;
using System.Globalization;
using System.IO;
using LubeController.Analysis.Logbooks;
using LubeController.Scripts.Running;
using LubeController.Scripts.SettingsFiles;

namespace LubeController.Cli.Logbook;

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
    public static Command Make(IScriptBench bench, TextWriter output, TextWriter errors)
    {
        var script = new Argument<string>("SCRIPT") { Description = "Bench script" };
        Option<string> csv = TextOption.File("--csv", "Write the occurrences as CSV (RFC 4180)");
        Option<string> json = TextOption.File("--json", "Write the occurrences as JSON");
        var clock = new Option<string>("--clock") { HelpName = "TIME", Description = "Time of day at the start, UTC, as 2026-01-31T06:00:00Z" };
        clock.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && Seconds(result.Tokens[0].Value) == 0)
                result.AddError($"--clock is '{result.Tokens[0].Value}': give a time of day after 1970 and before 2106, UTC, as 2026-01-31T06:00:00Z.");
        });
        var command = new Command("logbook", Description);
        command.Arguments.Add(script);
        command.Options.Add(csv);
        command.Options.Add(json);
        command.Options.Add(clock);
        command.SetAction(parsed =>
        {
            string? time = parsed.GetValue(clock);
            IScriptBench where = time == null ? bench : new EmulatedBench { WallTimeAtStartS = Seconds(time) };
            return new LogbookSession(where, RestRules.All).Run(new LogbookOptions(parsed.GetRequiredValue(script), parsed.GetValue(csv), parsed.GetValue(json)), output, errors);
        });
        return command;
    }

    /// <summary>Seconds since 1970; 0 for what is no such time.</summary>
    private static uint Seconds(string text)
    {
        bool read = DateTimeOffset.TryParseExact(text, "yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out DateTimeOffset time);
        return read && time.ToUnixTimeSeconds() is > 0 and <= uint.MaxValue ? (uint)time.ToUnixTimeSeconds() : 0;
    }
}
