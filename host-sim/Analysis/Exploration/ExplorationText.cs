using System;
using System.Globalization;
using System.IO;
using System.Linq;
using LubeController.Core;
using LubeController.Emulator;

namespace LubeController.Analysis.Exploration;

/// <summary>Tells people what an exploration found.</summary>
public static class ExplorationText
{
    /// <summary>Writes the result of one file.</summary>
    public static void Write(TextWriter output, ExplorationFile file, ExplorationResult result, CoreCoverage coverage, double seconds)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(coverage);
        output.WriteLine($"{Verdict(file, result)}  {file.Path}  {file.Title}");
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"  {result.States} states, {result.Transitions} transitions, depth {result.Depth}, {file.Core.Alphabet.Letters.Count} combinations in a step of {file.Core.StepMs} ms, {seconds:F1} s, {result.Bytes / 1048576.0:F0} MB"));
        output.WriteLine($"  phases: {string.Join(", ", Enum.GetValues<Phase>().Where(coverage.Reached).Select(phase => CoreWords.Phases[phase]))}");
        output.WriteLine($"  alarms: {string.Join(", ", CoreWords.AlarmsOf(coverage.Alarms).DefaultIfEmpty("none"))}");
    }

    /// <summary>What none of several explorations came by.</summary>
    public static void WriteMissing(TextWriter output, CoreCoverage all)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(all);
        string[] phases = [.. Enum.GetValues<Phase>().Where(phase => !all.Reached(phase)).Select(phase => CoreWords.Phases[phase])];
        string[] alarms = [.. CoreWords.AlarmsOf(~all.Alarms)];
        output.WriteLine($"together: not reached are the phases {string.Join(", ", phases.DefaultIfEmpty("(none)"))}; the alarms {string.Join(", ", alarms.DefaultIfEmpty("(none)"))}");
        output.WriteLine($"together: {all.Transitions.Count()} changes of phase: {string.Join(", ", all.Transitions.Select(one => $"{CoreWords.Phases[one.From]} > {CoreWords.Phases[one.To]}"))}");
    }

    private static string Verdict(ExplorationFile file, ExplorationResult result) => result.Outcome switch
    {
        ExplorationOutcome.Complete => "complete  ",
        ExplorationOutcome.Violated => $"VIOLATED   {CoreProperties.Names[result.Property]}: {CoreProperties.Meanings[result.Property]}, after {result.Letters.Count} steps",
        ExplorationOutcome.TooManyStates => $"NOT COMPLETE: the bound of {file.MostStates} states is reached; let fewer inputs vary, make times smaller, or raise 'most-states'",
        _ => "NOT COMPLETE: the bound of memory is reached; let fewer inputs vary, make times smaller, or raise --memory",
    };
}
