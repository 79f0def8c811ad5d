using System.Collections.Generic;
using System.CommandLine;
using System.IO;
using System.Linq;
using LubeController.Emulator.Platform;
using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Scripts.Replaying;

namespace LubeController.Cli.Faults;

/// <summary><c>lubebench faults</c>: the registry of faults, or as much of it as a plant has parts for.</summary>
internal static class FaultsCommand
{
    private const string Description = """
        Lists the faults of plant and board that scripts can set: the part, how it fails, its magnitude, what changes, what a person at the
        machine would notice, what must happen for it to take effect, and what healing leaves.

        Exit code: 0 listed; 2 bad input.
        """;

    private static readonly Dictionary<string, IFaultFormat> Formats = new()
    {
        ["text"] = new TextFormat(),
        ["csv"] = new CsvFormat(),
        ["json"] = new JsonFormat(),
        ["markdown"] = new MarkdownFormat(),
    };

    /// <summary>Makes the command.</summary>
    public static Command Make(TextWriter output, TextWriter errors)
    {
        var plant = new Option<string>("--plant") { HelpName = "FILE", Description = "Only faults that this plant has parts for, with their names" };
        var format = new Option<string>("--format") { HelpName = "FORMAT", Description = "text, csv, json or markdown", DefaultValueFactory = _ => "text" };
        format.AcceptOneOf(Formats.Keys);
        var command = new Command("faults", Description);
        command.Options.Add(plant);
        command.Options.Add(format);
        command.SetAction(parsed => List(parsed.GetValue(plant), Formats[parsed.GetValue(format)!], output, errors));
        return command;
    }

    private static int List(string? plantPath, IFaultFormat format, TextWriter output, TextWriter errors)
    {
        PlantDescription? plant = null;
        if (plantPath != null)
        {
            var problems = new ProblemList();
            plant = PlantReader.Read(plantPath, problems)?.Plant;
            foreach (Problem problem in problems.All)
                errors.WriteLine(problem);
            if (plant == null)
                return ReplaySession.BadInput;
        }

        format.Write(Rows(plant), plant != null, output);
        return ReplaySession.AllHeld;
    }

    private static FaultRow[] Rows(PlantDescription? plant) =>
    [
        .. FaultCatalogue.All
            .Select(fault => new FaultRow(fault, plant == null ? [] : FaultCatalogue.PartNames(fault, plant)))
            .Where(row => plant == null || row.Parts.Count > 0),
        .. BoardFaults.All.Select(fault => new FaultRow(fault, plant == null ? [] : BoardFaults.PartNames(fault))),
    ];
}
