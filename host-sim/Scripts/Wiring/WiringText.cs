using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Scripts.Reporting;

namespace LubeController.Scripts.Wiring;

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

    /// <summary>The lines.</summary>
    public static IEnumerable<string> Of(string plant, WiringMatrix matrix)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        yield return FormattableString.Invariant($"{plant}: {matrix.Conditions.Count} alarms, {matrix.Faults.Count} single faults of the wiring");
        IReadOnlyList<WiringGroup> groups = WiringGroup.Of(matrix);
        foreach (WiringGroup group in groups)
        {
            yield return "";
            yield return $"{group.Names}:";
            foreach (string line in Group(group))
                yield return line;
        }

        yield return "";
        foreach (string caution in Cautions)
            yield return caution;
    }

    private static IEnumerable<string> Group(WiringGroup group)
    {
        WiringRow sound = group.Rows.Single(row => row.Fault == null);
        yield return $"  sound wiring: {WiringOutcomes.Words(sound.Outcome)}; in health {sound.InHealth}; in alarm {sound.InAlarm}";
        if (sound.Outcome == WiringOutcome.NeverTold)
        {
            yield return "  no fault need come: wire a contact that this alarm moves to a supervisory input";
            yield break;
        }

        foreach (WiringRow row in group.Rows.Where(row => row.Outcome is WiringOutcome.LostUnseen or WiringOutcome.MayBeLost))
            yield return $"  {WiringOutcomes.Words(row.Outcome)}: {row.Fault}; in health {row.InHealth}; in alarm {row.InAlarm}; would be seen with: {WiringOutcomes.Words(row.MadeVisibleBy)}";
        foreach (IGrouping<WiringMeasures, WiringRow> alike in group.Rows.Where(row => row.Outcome == WiringOutcome.ToldFaultUnseen).GroupBy(row => row.MadeVisibleBy))
            yield return $"  {WiringOutcomes.Words(WiringOutcome.ToldFaultUnseen)}, would be seen with {WiringOutcomes.Words(alike.Key)}: {string.Join(", ", alike.Select(row => row.Fault))}";
        foreach (IGrouping<WiringOutcome, WiringRow> seen in group.Rows.Where(row => row.Fault != null && !WiringOutcomes.IsUnseen(row.Outcome)).GroupBy(row => row.Outcome))
            yield return FormattableString.Invariant($"  {WiringOutcomes.Words(seen.Key)}: {seen.Count()}");
    }
}
