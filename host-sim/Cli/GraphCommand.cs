using System;
using System.Collections.Generic;
using System.CommandLine;
using LubeController.Analysis.Specification;

namespace LubeController.Cli;

/// <summary><c>lubebench graph</c>: the diagrams of the executable specification.</summary>
internal static class GraphCommand
{
    private const string Description = """
        Draws the executable specification: the phases with what leads from one to another, or the lifecycle of an alarm.

        Exit code: 0 drawn; 2 bad input.
        """;

    private static readonly Dictionary<string, Func<string>> Graphs = new()
    {
        ["phases mermaid"] = PhaseGraph.Mermaid,
        ["phases dot"] = PhaseGraph.Dot,
        ["lifecycle mermaid"] = LifecycleGraph.Mermaid,
        ["lifecycle dot"] = LifecycleGraph.Dot,
    };

    /// <summary>Makes the command.</summary>
    public static Command Make(CommandHost host)
    {
        var what = new Argument<string>("WHAT") { Description = "phases or lifecycle" };
        var format = new Option<string>("--format") { HelpName = "FORMAT", Description = "mermaid or dot", DefaultValueFactory = _ => "mermaid" };
        what.AcceptOneOf("phases", "lifecycle");
        format.AcceptOneOf("mermaid", "dot");
        var command = new Command("graph", Description) { what, format };
        command.Does(parsed =>
        {
            host.Output.WriteLine(Graphs[$"{parsed.GetRequiredValue(what)} {parsed.GetValue(format)}"]().TrimEnd());
            return ExitCode.Done;
        });
        return command;
    }
}
