using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Scripts.Reporting;

namespace LubeController.Analysis.Wiring;

/// <summary>The matrix for a terminal: what nobody can detect in full, the rest by number.</summary>
public static class WiringText
{
    /// <summary>What every reader of a wiring matrix must know.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "This is not a safety function. Single faults only, each with its preset resistance; contacts and inputs as described.",
        "Electrical work follows local codes and licensed practice: isolate and lock out before opening a terminal box.",
        TotalsText.Caution,
    ];

    /// <summary>What is only assumed of the inputs.</summary>
    public const string Assumed = "assumed: the current over voltage of each digital input, within the bounds that IEC 61131-2 sets for its type.";

    internal const string Wrong = "the wiring itself is wrong: ";

    /// <summary>The lines.</summary>
    public static IEnumerable<string> Of(string plant, WiringMatrix matrix)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        yield return FormattableString.Invariant($"{plant}: {matrix.Conditions.Count} alarms, {matrix.Faults.Count} single faults of the wiring");
        foreach (string wrong in matrix.Wrongs)
            yield return Wrong + wrong;
        IReadOnlyList<WiringGroup> groups = WiringGroup.Of(matrix);
        yield return "";
        yield return "What nobody can detect:";
        foreach (string line in groups.SelectMany(group => Lost(matrix, group)).DefaultIfEmpty("  nothing is lost without being seen"))
            yield return line;
        foreach (WiringGroup group in groups)
        {
            yield return "";
            yield return $"{group.Names}:";
            foreach (string line in Group(matrix, group))
                yield return line;
        }

        yield return "";
        yield return Assumed;
        foreach (string caution in Cautions)
            yield return caution;
    }

    /// <summary>What is lost of alarms that look alike.</summary>
    private static IEnumerable<string> Lost(WiringMatrix matrix, WiringGroup group)
    {
        WiringRow sound = group.Rows.Single(row => row.Fault == null);
        WiringRow[] lost = [.. group.Rows.Where(row => row.Outcome is WiringOutcome.LostUnseen or WiringOutcome.MayBeLost)];
        if (sound.Outcome == WiringOutcome.NeverTold || lost.Length > 0)
            yield return $"  of {group.Names}:";
        if (sound.Outcome == WiringOutcome.NeverTold)
        {
            string remedy = matrix.Wrongs.Count > 0 ? "mend first what is wrong with the wiring itself" : "wire a contact that this alarm moves to a supervisory input";
            yield return $"    {WiringOutcomes.Words(sound.Outcome)}, no fault need come: {remedy}";
            yield break;
        }

        foreach (WiringRow row in lost)
            yield return $"    {WiringOutcomes.Words(row.Outcome)}: {row.Fault}; in health {row.InHealth}; in alarm {row.InAlarm}; would be seen with: {matrix.MeasureWords(row)}";
    }

    private static IEnumerable<string> Group(WiringMatrix matrix, WiringGroup group)
    {
        WiringRow sound = group.Rows.Single(row => row.Fault == null);
        yield return $"  sound wiring: {WiringOutcomes.Words(sound.Outcome)}; in health {sound.InHealth}; in alarm {sound.InAlarm}";
        if (sound.Outcome == WiringOutcome.NeverTold)
            yield break;
        foreach (IGrouping<string, WiringRow> alike in group.Rows.Where(row => row.Outcome == WiringOutcome.ToldFaultUnseen).GroupBy(matrix.MeasureWords))
            yield return $"  {WiringOutcomes.Words(WiringOutcome.ToldFaultUnseen)}: {string.Join(", ", alike.Select(row => row.Fault))}; would be seen with: {alike.Key}";
        foreach (IGrouping<WiringOutcome, WiringRow> seen in group.Rows.Where(row => row.Fault != null && !WiringOutcomes.IsUnseen(row.Outcome)).GroupBy(row => row.Outcome))
            yield return FormattableString.Invariant($"  {WiringOutcomes.Words(seen.Key)}: {seen.Count()}");
    }
}
