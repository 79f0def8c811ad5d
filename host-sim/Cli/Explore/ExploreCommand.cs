using System;
using System.CommandLine;
using System.Globalization;
using System.IO;
using LubeController.Analysis.Exploration;
using LubeController.Scripts.SettingsFiles;

namespace LubeController.Cli.Explore;

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

    private const long Megabyte = 1 << 20;

    /// <summary>Makes the command.</summary>
    public static Command Make(TextWriter output, TextWriter errors, IExplorationProgress progress)
    {
        var files = new Argument<string[]>("FILE") { Description = "Exploration files", Arity = ArgumentArity.OneOrMore };
        var jobs = new Option<int>("--jobs") { HelpName = "N", Description = "Threads, 1 to 64", DefaultValueFactory = _ => Math.Clamp(Environment.ProcessorCount, 1, 64) };
        var memory = new Option<int>("--memory") { HelpName = "MB", Description = "Most memory for states, 16 MB or more", DefaultValueFactory = _ => 4096 };
        Option<string> scripts = TextOption.Make("--scripts", "FOLDER", "Folder for scripts of violations; beside the exploration if not given");
        jobs.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && (!int.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number is < 1 or > 64))
                result.AddError($"--jobs is '{result.Tokens[0].Value}': give a whole number from 1 to 64.");
        });
        memory.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && (!int.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number is < 16 or > 1_000_000))
                result.AddError($"--memory is '{result.Tokens[0].Value}': give a whole number of megabytes from 16 to 1000000.");
        });
        var command = new Command("explore", Description);
        command.Arguments.Add(files);
        command.Options.Add(jobs);
        command.Options.Add(memory);
        command.Options.Add(scripts);
        command.SetAction((parsed, cancel) =>
        {
            long from = TimeProvider.System.GetTimestamp();
            var session = new ExplorationSession(RestRules.All, () => TimeProvider.System.GetElapsedTime(from).TotalSeconds);
            var options = new ExplorationOptions(parsed.GetRequiredValue(files), parsed.GetValue(jobs), parsed.GetValue(memory) * Megabyte, parsed.GetValue(scripts));
            return System.Threading.Tasks.Task.FromResult(session.Run(options, output, errors, progress, cancel));
        });
        return command;
    }
}
