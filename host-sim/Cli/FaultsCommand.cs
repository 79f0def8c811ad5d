using System.CommandLine;
using System.Linq;
using LubeController.Emulator.Platform;
using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Plant;
using LubeController.Plant.Description;

namespace LubeController.Cli;

/// <summary><c>lubebench faults</c>: the registry of faults, or as much of it as a plant has parts for.</summary>
internal static class FaultsCommand
{
    private const string Description = """
        Lists the faults of plant and board that scripts can set: the part, how it fails, its magnitude, what changes, what a person at the
        machine would notice, what must happen for it to take effect, and what healing leaves.

        Exit code: 0 listed; 2 bad input.
        """;

    /// <summary>Makes the command.</summary>
    public static Command Make(CommandHost host)
    {
        var plant = new Option<string>("--plant") { HelpName = "FILE", Description = "Only faults that this plant has parts for, with their names" };
        var format = new Option<string>("--format") { HelpName = "FORMAT", Description = "text, csv, json or markdown", DefaultValueFactory = _ => "text" };
        format.AcceptOneOf([.. FaultFormats.ByName.Keys]);
        var command = new Command("faults", Description) { plant, format };
        command.Does(parsed => List(parsed.GetValue(plant), FaultFormats.ByName[parsed.GetValue(format)!], host));
        return command;
    }

    private static ExitCode List(string? plantFile, FaultFormat format, CommandHost host)
    {
        if (plantFile == null)
        {
            format(Rows(null), false, host.Output);
            return ExitCode.Done;
        }

        var problems = new ProblemList();
        if (PlantReader.Read(plantFile, problems) is not { } read)
            return host.Refuse(problems.All);
        foreach (Problem problem in problems.All)
            host.Errors.WriteLine(problem);
        format(Rows(read.Plant), true, host.Output);
        return ExitCode.Done;
    }

    private static FaultRow[] Rows(PlantDescription? plant) =>
    [
        .. FaultCatalogue.All
            .Select(fault => new FaultRow(fault, plant == null ? [] : FaultCatalogue.PartNames(fault, plant)))
            .Where(row => plant == null || row.Parts.Count > 0),
        .. BoardFaults.All.Select(fault => new FaultRow(fault, plant == null ? [] : BoardFaults.PartNames(fault))),
    ];
}
