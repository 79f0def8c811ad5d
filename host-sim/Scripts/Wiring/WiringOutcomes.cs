using System;

namespace LubeController.Scripts.Wiring;

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
        WiringOutcome.ToldFaultUnseen => "told, fault not detected",
        WiringOutcome.ToldOtherwise => "told otherwise, fault not detected in health",
        WiringOutcome.FaultSeenAlarmHidden => "fault detected, alarm hidden meanwhile",
        WiringOutcome.FaultSeenAlarmTold => "fault detected, alarm still told",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "an outcome"),
    };
}
