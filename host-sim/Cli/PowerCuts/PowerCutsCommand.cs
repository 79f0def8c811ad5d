using System;
using System.CommandLine;
using System.Globalization;
using System.IO;
using System.Threading.Tasks;
using LubeController.Analysis.PowerCuts;
using LubeController.Scripts.SettingsFiles;

namespace LubeController.Cli.PowerCuts;

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

    /// <summary>Makes the command.</summary>
    public static Command Make(TextWriter output, TextWriter errors)
    {
        var settings = new Argument<string?>("SETTINGS") { Description = "Settings file", Arity = ArgumentArity.ZeroOrOne };
        Option<int> hours = Whole("--hours", "Hours of the run, 1 to 1000", 1, 1000, 1);
        Option<int> jobs = Whole("--jobs", "Threads, 1 to 64", 1, 64, Math.Clamp(Environment.ProcessorCount, 1, 64));
        var command = new Command("power-cuts", Description);
        command.Arguments.Add(settings);
        command.Options.Add(hours);
        command.Options.Add(jobs);
        command.SetAction((parsed, cancel) =>
            Task.FromResult(new PowerCutSession(RestRules.All).Run(new PowerCutOptions(parsed.GetValue(settings), parsed.GetValue(hours), parsed.GetValue(jobs)), output, errors, cancel)));
        return command;
    }

    private static Option<int> Whole(string name, string description, int least, int most, int preset)
    {
        var option = new Option<int>(name) { HelpName = "N", Description = description, DefaultValueFactory = _ => preset };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && (!int.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number < least || number > most))
                result.AddError($"{name} is '{result.Tokens[0].Value}': give a whole number from {least} to {most}.");
        });
        return option;
    }
}
