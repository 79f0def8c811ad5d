using System;
using System.Globalization;
using System.Linq;
using System.Text;
using LubeController.Scripts.Records;

namespace LubeController.Analysis.Exploration;

/// <summary>
/// The way to a violation as a bench script: the inputs are held by hand, step by step, and what must hold is expected. Replayed
/// against the same core, it fails there.
/// </summary>
public static class ViolationScript
{
    /// <summary>Where the script of a violation goes.</summary>
    public static string Path(ExplorationFile file, ExplorationResult result, string? folder)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(result);
        string name = System.IO.Path.GetFileName(file.Path).Replace(".exploration.yaml", "", StringComparison.Ordinal).Replace(".yaml", "", StringComparison.Ordinal);
        return System.IO.Path.Combine(folder ?? System.IO.Path.GetDirectoryName(file.Path) ?? "", $"{name}.{CoreProperties.Names[result.Property]}.yaml");
    }

    /// <summary>Writes the script, whole or not at all.</summary>
    public static void Write(ExplorationFile file, ExplorationResult result, string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        string text = Text(file, result, System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path))!);
        WholeFile.Write(path, writer => writer.Write(text));
    }

    /// <summary>The script.</summary>
    /// <param name="file">The exploration.</param>
    /// <param name="result">A violation of it.</param>
    /// <param name="folder">Folder in which the script will stand: paths in it are relative to that.</param>
    public static string Text(ExplorationFile file, ExplorationResult result, string folder)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(result);
        var text = new StringBuilder();
        CoreSetup core = file.Core;
        string from = System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(file.Path))!;
        Letter[] letters = [.. result.Letters.Select(letter => core.Alphabet.Letters[letter])];
        ViolationPath way = ViolationPath.Follow(core, letters, result.InProbe ? result.Property : -1);
        text.Append("# Written by an exploration. Inputs are held by hand, whatever the plant's sensors show.\n");
        text.Append(CultureInfo.InvariantCulture, $"script: \"Violated: {CoreProperties.Meanings[result.Property]}\"\n");
        text.Append(CultureInfo.InvariantCulture, $"plant: {Relative(folder, from, file.PlantPath)}\n");
        text.Append(CultureInfo.InvariantCulture, $"settings: {Relative(folder, from, file.SettingsPath)}\n");
        text.Append(CultureInfo.InvariantCulture, $"scan-period: {way.PeriodMs} ms\n");
        text.Append(CultureInfo.InvariantCulture, $"duration: {way.EndMs + (2 * core.StepMs)} ms\n\nsteps:\n");
        foreach (string step in way.Steps)
            text.Append(CultureInfo.InvariantCulture, $"  - {step}\n");
        if (way.Steps.Count == 0)
            text.Append("  - { at: 0 ms, mark: nothing is done }\n");
        text.Append("\nexpect:\n");
        foreach ((string name, string demand) in way.Expectations((CoreProperty)result.Property))
            text.Append(CultureInfo.InvariantCulture, $"  - name: {name}\n    {demand.Replace("\n", "\n    ", StringComparison.Ordinal)}\n");
        return text.ToString();
    }

    private static string Relative(string folder, string from, string path) =>
        System.IO.Path.GetRelativePath(folder, System.IO.Path.GetFullPath(System.IO.Path.Combine(from, path))).Replace('\\', '/');
}
