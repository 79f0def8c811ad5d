using System;
using System.Collections.Generic;

namespace LubeController.Analysis.Wiring;

/// <summary>Outcomes in words.</summary>
public static class WiringOutcomes
{
    /// <summary>Whether nobody can detect it before it matters.</summary>
    public static bool IsUnseen(WiringOutcome outcome) => outcome <= WiringOutcome.ToldFaultUnseen;

    /// <summary>A few words.</summary>
    public static string Words(WiringOutcome outcome) => outcome switch
    {
        WiringOutcome.NeverTold => "never told",
        WiringOutcome.LostUnseen => "lost, nobody can detect it",
        WiringOutcome.MayBeLost => "may be lost, an input stands in its undefined zone",
        WiringOutcome.ToldFaultUnseen => "told, fault not detected",
        WiringOutcome.ToldOtherwise => "told otherwise, fault not detected in health",
        WiringOutcome.FaultSeenAlarmHidden => "fault detected, alarm hidden meanwhile",
        WiringOutcome.FaultSeenAlarmTold => "fault detected, alarm still told",
        WiringOutcome.Told => "told",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "an outcome"),
    };

    /// <summary>Measures in words; what none of those tried would show asks for another way.</summary>
    /// <param name="measures">The measures.</param>
    /// <param name="hasHeartbeat">Whether the wiring has a heartbeat already, which then has to come through the contact at fault.</param>
    public static string Words(WiringMeasures measures, bool hasHeartbeat)
    {
        string[] words =
        [
            .. Word(WiringMeasures.NormallyClosedContact, "normally closed contact"),
            .. Word(WiringMeasures.EndOfLineResistor, "end-of-line resistor"),
            .. Word(WiringMeasures.Heartbeat, hasHeartbeat ? "heartbeat through this contact" : "heartbeat"),
            // Worth a word only where neither does alone.
            .. (measures & (WiringMeasures.NormallyClosedContact | WiringMeasures.EndOfLineResistor)) == 0
                ? Word(WiringMeasures.NormallyClosedWithEndOfLine, "normally closed contact with end-of-line resistor") : [],
        ];
        return words.Length == 0 ? "none of those tried" : string.Join(" or ", words);

        IEnumerable<string> Word(WiringMeasures measure, string word) => (measures & measure) != 0 ? [word] : [];
    }
}
