using System;
using System.Collections.Generic;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.IO;
using System.Linq;
using LubeController.Scripts.Running;

namespace LubeController.Cli;

/// <summary>The program: finds the command and carries it out.</summary>
/// <param name="bench">Where scripts run.</param>
/// <param name="output">Takes results.</param>
/// <param name="errors">Takes complaints.</param>
/// <param name="progress">Draws how far a long task is, on a terminal; null where nobody watches.</param>
public sealed class Lubebench(IScriptBench bench, TextWriter output, TextWriter errors, Action<string>? progress)
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

    /// <summary>Every command, in the order of the help.</summary>
    private static readonly Func<CommandHost, Command>[] Commands =
    [
        ReplayCommand.Make,
        FaultsCommand.Make,
        AlarmsCommand.Make,
        WiringCommand.Make,
        ExploreCommand.Make,
        PowerCutsCommand.Make,
        LogbookCommand.Make,
        GraphCommand.Make,
        AboutCommand.Make,
    ];

    /// <summary>Carries out a command line.</summary>
    /// <returns>0 all held, 1 something failed or was not exercised, 2 bad input.</returns>
    public int Run(IReadOnlyList<string> arguments)
    {
        var root = new RootCommand(Description);
        var host = new CommandHost(bench, output, errors, progress);
        foreach (Func<CommandHost, Command> make in Commands)
            root.Subcommands.Add(make(host));
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
        return (int)ExitCode.BadInput;
    }

    private static string CommandName(ParseResult parsed) =>
        parsed.CommandResult.Command is RootCommand ? "" : parsed.CommandResult.Command.Name + " ";
}
