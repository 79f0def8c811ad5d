using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LubeController.Plant.Circuits;
using LubeController.Scripts.PlantFiles;
using LubeController.Scripts.Reading;
using LubeController.Scripts.Records;
using LubeController.Scripts.SettingsFiles;

namespace LubeController.Analysis.Wiring;

/// <summary>Reads a plant, works its wiring matrix out, prints it and writes it where asked.</summary>
/// <param name="rules">The rest rules that are compiled in.</param>
public sealed class WiringSession(IReadOnlyList<RestRuleKind> rules)
{
    /// <summary>The matrix was worked out, whatever it says.</summary>
    public const int Done = 0;

    /// <summary>What was asked cannot be done.</summary>
    public const int BadInput = 2;

    /// <summary>Carries it out.</summary>
    /// <returns>The exit code.</returns>
    public int Run(WiringOptions options, TextWriter output, TextWriter errors)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(errors);
        var complaints = new List<string>();
        if (Read(options, complaints) is not { } asked)
        {
            foreach (string complaint in complaints)
                errors.WriteLine(complaint);
            return BadInput;
        }

        try
        {
            WiringMatrix matrix = WiringMatrix.Of(asked.Plant.Plant.Wiring!, asked.Conditions);
            string name = asked.Plant.Plant.Name;
            if (options.CsvFile is { } csv)
                WholeFile.Write("--csv", csv, writer => WiringCsv.Write(matrix, writer));
            if (options.HtmlFile is { } html)
                WholeFile.Write("--html", html, writer => WiringHtml.Write(name, matrix, writer));
            foreach (string line in WiringText.Of(name, matrix))
                output.WriteLine(line);
            return Done;
        }
        catch (CircuitException reason)
        {
            errors.WriteLine($"{options.PlantFile}: field 'wiring': the circuit has no answer: {reason.Message}");
            return BadInput;
        }
        catch (Exception reason) when (reason is IOException or UnauthorizedAccessException)
        {
            errors.WriteLine(reason.Message);
            return BadInput;
        }
    }

    private (LoadedPlant Plant, IReadOnlyList<WiringCondition> Conditions)? Read(WiringOptions options, List<string> complaints)
    {
        CheckTargets(options, complaints);
        var problems = new ProblemList();
        LoadedPlant? plant = Present(options.PlantFile, "PLANT", complaints) ? PlantReader.Read(options.PlantFile, problems) : null;
        ControlSettings? settings = options.SettingsFile is { } file && Present(file, "--settings", complaints) ? SettingsReader.Read(file, rules, problems) : null;
        complaints.AddRange(problems.All.Select(problem => problem.ToString()));
        if (plant is { Plant.Wiring: null })
            complaints.Add($"{options.PlantFile}: field 'wiring' is '': the plant has no wiring; add 'wiring' with supplies, wires, contacts and inputs");
        return complaints.Count > 0 || plant == null ? null : (plant, settings == null ? WiringCondition.All : WiringCondition.Of(settings));
    }

    private static bool Present(string file, string argument, List<string> complaints)
    {
        if (File.Exists(file))
            return true;
        complaints.Add(Directory.Exists(file) ? $"{argument} '{file}' is a folder; name a file inside it" : $"{argument} '{file}' is missing; looked for {Path.GetFullPath(file)}");
        return false;
    }

    private static void CheckTargets(WiringOptions options, List<string> complaints)
    {
        if (options.CsvFile is { } csv && Directory.Exists(csv))
            complaints.Add($"--csv '{csv}' is a folder; name a file");
        if (options.HtmlFile is { } html && Directory.Exists(html))
            complaints.Add($"--html '{html}' is a folder; name a file");
        if (options.CsvFile is { } one && options.HtmlFile is { } two && Path.GetFullPath(one) == Path.GetFullPath(two))
            complaints.Add($"--csv and --html name the same file '{one}'; give each its own");
        foreach (string? target in (string?[])[options.CsvFile, options.HtmlFile])
        {
            if (target != null && (Same(target, options.PlantFile) || Same(target, options.SettingsFile)))
                complaints.Add($"'{target}' would be written over what is read; name another file");
        }
    }

    private static bool Same(string target, string? source) => source != null && Path.GetFullPath(target) == Path.GetFullPath(source);
}
