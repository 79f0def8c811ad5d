using System.Collections.Generic;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.IO;
using System.Linq;
using LubeController.Cli.About;
using LubeController.Cli.Alarms;
using LubeController.Cli.Explore;
using LubeController.Cli.Faults;
using LubeController.Cli.Graph;
using LubeController.Cli.Logbook;
using LubeController.Cli.PowerCuts;
using LubeController.Cli.Replay;
using LubeController.Cli.Wiring;
using LubeController.Scripts.Replaying;
using LubeController.Scripts.Running;

namespace LubeController.Cli;

/// <summary>The program: finds the command and carries it out.</summary>
/// <param name="bench">Where scripts run.</param>
/// <param name="output">Takes results.</param>
/// <param name="errors">Takes complaints.</param>
/// <param name="progress">Shows how far a replay is.</param>
public sealed class Lubebench(IScriptBench bench, TextWriter output, TextWriter errors, IReplayProgress progress)
{
    private const string Description = """
        The bench on which lubrication control logic is proved before it meets a machine.

        Examples:
          lubebench replay hil-scripts/faults                 every script of a folder
          lubebench replay 'hil-scripts/**/*blocked*.yaml'    every script that matches
          lubebench replay my.yaml --trace records            one script, records kept as CSV and VCD
          lubebench replay hil-scripts --baseline records     compared with records kept before
          lubebench faults --plant my.plant.yaml              the faults that a script can set on a plant
          lubebench alarms divider-stalled                    what an alarm means and what to do
          lubebench explore my.exploration.yaml               everything the core can reach, and what must hold
          lubebench power-cuts --hours 24                     the power cut at every byte of every write, and what must hold
          lubebench logbook my.yaml --csv logbook.csv         what the board's logbook holds after a script
          lubebench graph phases                              the specification as a diagram
          lubebench wiring my.plant.yaml --html wiring.html   what the supervisor sees of each alarm and wire fault

        A simulated pass does not replace the test on the machine. This is not a safety function.
        """;

    /// <summary>Carries out a command line.</summary>
    /// <returns>0 all held, 1 something failed or was not exercised, 2 bad input.</returns>
    public int Run(IReadOnlyList<string> arguments)
    {
        var root = new RootCommand(Description);
        root.Subcommands.Add(ReplayCommand.Make(bench, output, errors, progress));
        root.Subcommands.Add(FaultsCommand.Make(output, errors));
        root.Subcommands.Add(AlarmsCommand.Make(output, errors));
        root.Subcommands.Add(WiringCommand.Make(output, errors));
        root.Subcommands.Add(ExploreCommand.Make(output, errors, ExploreProgress.ForThisTerminal()));
        root.Subcommands.Add(PowerCutsCommand.Make(output, errors));
        root.Subcommands.Add(LogbookCommand.Make(bench, output, errors));
        root.Subcommands.Add(GraphCommand.Make(output));
        root.Subcommands.Add(AboutCommand.Make(output));
        foreach (Command command in root.Subcommands)
            UnknownOptions.RefuseIn(command);
        // 'help replay' is what many a hand types for 'replay --help'.
        if (arguments is ["help", ..])
            arguments = [.. arguments.Skip(1), "--help"];
        ParseResult parsed = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count == 0)
            return parsed.Invoke(new InvocationConfiguration { Output = output, Error = errors });
        foreach (ParseError error in parsed.Errors)
            errors.WriteLine($"lubebench: {error.Message} 'lubebench {CommandName(parsed)}--help' lists what is known.");
        return ReplaySession.BadInput;
    }

    private static string CommandName(ParseResult parsed) =>
        parsed.CommandResult.Command is RootCommand ? "" : parsed.CommandResult.Command.Name + " ";
}
