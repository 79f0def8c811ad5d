using System;
using System.CommandLine;
using System.Threading;
using LubeController.Analysis.PowerCuts;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Cli;

/// <summary><c>lubebench power-cuts</c>: the power cut at every byte of every write of a long run.</summary>
internal static class PowerCutsCommand
{
    private const string Description = """
        Runs the deployed main loop on a simple board for some hours, with alarms, presses, faults, stored settings and power
        cuts in each, and cuts the power at every byte of every write to the non-volatile memory, with the old bytes, erased
        ones and garbage after the cut. Each time the board is started again, twice, and it is judged what is promised:
        settings and state old or new and never mixed, committed alarms, counts, rest, boot record, logbook.

        SETTINGS is a settings file; without one, settings are used that come by every kind of write. Exit code: 0
        everything holds; 1 something does not, with the place; 2 bad input.
        """;

    private const int MostHours = 1000;
    private const int MostJobs = 64;
    private const int RefusalsAnHour = 150;

    /// <summary>Makes the command.</summary>
    public static Command Make(CommandHost host)
    {
        var settings = new Argument<string?>("SETTINGS") { Description = "Settings file", Arity = ArgumentArity.ZeroOrOne };
        Option<long?> hours = CommandOptions.Whole("--hours", 1, MostHours, "Hours of the run, 1 to 1000", 1);
        Option<long?> jobs = CommandOptions.Whole("--jobs", 1, MostJobs, "Threads, 1 to 64", Math.Clamp(Environment.ProcessorCount, 1, MostJobs));
        var command = new Command("power-cuts", Description) { settings, hours, jobs };
        command.Does((parsed, cancel) => Run(parsed.GetValue(settings), (int)parsed.GetValue(hours)!, (int)parsed.GetValue(jobs)!, host, cancel));
        return command;
    }

    /// <summary>Says what a sweep found.</summary>
    internal static ExitCode Report(PowerCutResult result, int hours, CommandHost host)
    {
        foreach (string line in PowerCutText.Lines(result, hours))
            host.Output.WriteLine(line);
        return result.Violations.Count == 0 ? ExitCode.Done : ExitCode.NotHeld;
    }

    private static ExitCode Run(string? settingsFile, int hours, int jobs, CommandHost host, CancellationToken cancel)
    {
        var problems = new ProblemList();
        ControlSettings? settings = settingsFile == null ? new ControlSettings(PowerCutSetup.UsualSettings(), null) : SettingsReader.Read(settingsFile, RestRules.All, problems);
        if (settings == null)
            return host.Refuse(problems.All);
        foreach (Problem problem in problems.All)
            host.Errors.WriteLine(problem);
        var setup = new PowerCutSetup
        {
            Settings = settings.Values,
            MakeRule = settings.Rule is { } rule ? rule.Make : null,
            Steps = PowerCutSchedule.Hours(hours, RefusalsAnHour),
            DurationMs = PowerCutSchedule.LengthMs(hours),
            Jobs = jobs,
        };
        return Report(PowerCutSweep.Run(setup, cancel), hours, host);
    }
}
