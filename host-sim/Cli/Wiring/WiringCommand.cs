using System.CommandLine;
using System.IO;
using LubeController.Analysis.Wiring;
using LubeController.Scripts.SettingsFiles;

namespace LubeController.Cli.Wiring;

/// <summary><c>lubebench wiring</c>: each alarm under each single wiring fault, and what the supervisory system sees.</summary>
internal static class WiringCommand
{
    private const string Description = """
        Says for each alarm and each single fault of the alarm wiring what the supervisory system sees, in health and in
        alarm. What nobody can detect comes first, with what would make it visible: a normally closed contact, an
        end-of-line resistor or a heartbeat, each tried on the circuit.

        PLANT is a plant file with 'wiring'. Exit code: 0 the matrix was worked out, whatever it says; 2 bad input, then
        nothing was written.
        """;

    /// <summary>Makes the command.</summary>
    public static Command Make(TextWriter output, TextWriter errors)
    {
        var plant = new Argument<string>("PLANT") { Description = "Plant file with the wiring" };
        Option<string> settings = TextOption.File("--settings", "Leave out alarms that these settings cannot raise");
        Option<string> csv = TextOption.File("--csv", "Write the whole matrix as CSV");
        Option<string> html = TextOption.File("--html", "Write the whole matrix as one HTML page");
        var command = new Command("wiring", Description);
        command.Arguments.Add(plant);
        command.Options.Add(settings);
        command.Options.Add(csv);
        command.Options.Add(html);
        command.SetAction(parsed => new WiringSession(RestRules.All).Run(
            new WiringOptions
            {
                PlantFile = parsed.GetRequiredValue(plant),
                SettingsFile = parsed.GetValue(settings),
                CsvFile = parsed.GetValue(csv),
                HtmlFile = parsed.GetValue(html),
            },
            output,
            errors));
        return command;
    }
}
