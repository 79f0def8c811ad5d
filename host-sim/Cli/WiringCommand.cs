using System;
using System.Collections.Generic;
using System.CommandLine;
using System.IO;
using System.Linq;
using LubeController.Analysis.Wiring;
using LubeController.Files.PlantFiles;
using LubeController.Files.Reading;
using LubeController.Files.SettingsFiles;
using LubeController.Plant.Circuits;
using LubeController.Scripts.Records;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Cli;

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
    public static Command Make(CommandHost host)
    {
        var plant = new Argument<string>("PLANT") { Description = "Plant file with the wiring" };
        Option<string> settings = CommandOptions.File("--settings", "Leave out alarms that these settings cannot raise");
        Option<string> csv = CommandOptions.File("--csv", "Write the whole matrix as CSV");
        Option<string> html = CommandOptions.File("--html", "Write the whole matrix as one HTML page");
        var command = new Command("wiring", Description) { plant, settings, csv, html };
        command.Does(parsed => Run(new Asked(parsed.GetRequiredValue(plant), parsed.GetValue(settings), parsed.GetValue(csv), parsed.GetValue(html)), host));
        return command;
    }

    private static ExitCode Run(Asked asked, CommandHost host)
    {
        var complaints = new List<string>();
        if (Read(asked, complaints) is not { } read)
            return host.Refuse(complaints);
        try
        {
            WiringMatrix matrix = WiringMatrix.Of(read.Plant.Plant.Wiring!, read.Conditions);
            string name = read.Plant.Plant.Name;
            if (asked.CsvFile is { } csv)
                WholeFile.Write("--csv", csv, writer => WiringCsv.Write(matrix, writer));
            if (asked.HtmlFile is { } html)
                WholeFile.Write("--html", html, writer => WiringHtml.Write(name, matrix, writer));
            foreach (string line in WiringText.Of(name, matrix))
                host.Output.WriteLine(line);
            return ExitCode.Done;
        }
        catch (CircuitException reason)
        {
            return host.Refuse($"{asked.PlantFile}: field 'wiring': the circuit has no answer: {reason.Message}");
        }
        catch (Exception reason) when (reason is IOException or UnauthorizedAccessException)
        {
            return host.Refuse(reason.Message);
        }
    }

    private static (LoadedPlant Plant, IReadOnlyList<WiringCondition> Conditions)? Read(Asked asked, List<string> complaints)
    {
        CheckTargets(asked, complaints);
        var problems = new ProblemList();
        LoadedPlant? plant = IsThere(asked.PlantFile, "PLANT", complaints) ? PlantReader.Read(asked.PlantFile, problems) : null;
        ControlSettings? settings = asked.SettingsFile is { } file && IsThere(file, "--settings", complaints) ? SettingsReader.Read(file, RestRules.All, problems) : null;
        complaints.AddRange(problems.All.Select(problem => problem.ToString()));
        if (plant is { Plant.Wiring: null })
            complaints.Add($"{asked.PlantFile}: field 'wiring' is '': the plant has no wiring; add 'wiring' with supplies, wires, contacts and inputs");
        return complaints.Count > 0 || plant == null ? null : (plant, settings == null ? WiringCondition.All : WiringCondition.Of(settings));
    }

    private static bool IsThere(string file, string argument, List<string> complaints)
    {
        if (File.Exists(file))
            return true;
        complaints.Add(Directory.Exists(file) ? $"{argument} '{file}' is a folder; name a file inside it" : $"{argument} '{file}' is missing; looked for {Path.GetFullPath(file)}");
        return false;
    }

    private static void CheckTargets(Asked asked, List<string> complaints)
    {
        if (asked.CsvFile is { } csv && Directory.Exists(csv))
            complaints.Add($"--csv '{csv}' is a folder; name a file");
        if (asked.HtmlFile is { } html && Directory.Exists(html))
            complaints.Add($"--html '{html}' is a folder; name a file");
        if (asked.CsvFile is { } one && IsSame(one, asked.HtmlFile))
            complaints.Add($"--csv and --html name the same file '{one}'; give each its own");
        foreach (string? target in (string?[])[asked.CsvFile, asked.HtmlFile])
        {
            if (target != null && (IsSame(target, asked.PlantFile) || IsSame(target, asked.SettingsFile)))
                complaints.Add($"'{target}' would be written over what is read; name another file");
        }
    }

    private static bool IsSame(string file, string? other) => other != null && Path.GetFullPath(file) == Path.GetFullPath(other);

    private sealed record Asked(string PlantFile, string? SettingsFile, string? CsvFile, string? HtmlFile);
}
