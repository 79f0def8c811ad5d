using System.Collections.Generic;

namespace LubeController.Analysis.Exploration;

/// <summary>What must hold in every state and step of the core.</summary>
public enum CoreProperty
{
    /// <summary>The pump is off while an interlock alarm stands.</summary>
    PumpOffUnderInterlock,

    /// <summary>The pump is off while stop is on, and while an alarm that holds it stands.</summary>
    PumpOffOnStop,

    /// <summary>The healthy relay is energised only if no failure stands.</summary>
    RelayTellsFailure,

    /// <summary>In the phase failed a pump-stopping failure stands.</summary>
    FailedHasCause,

    /// <summary>Pump, relay, warning output and lamp are what phase and alarms demand, in the same scan.</summary>
    OutputsFollow,

    /// <summary>A switch that falls silent is alarmed within its bound, counted in saved time.</summary>
    StallIsAlarmed,

    /// <summary>A dose is completed within its bound, unless stopped, primed, failed, or the rest is held.</summary>
    DoseComesRound,

    /// <summary>A cause that lasts raises its alarm within its bound, after a power cut again.</summary>
    CauseIsAlarmed,

    /// <summary>An alarm that was saved stands after a power cut.</summary>
    AlarmSurvivesCut,

    /// <summary>Once its cause is gone reset leads out of failed.</summary>
    ResetLeavesFailed,

    /// <summary>Start leads out of stopped.</summary>
    StartLeavesStopped,

    /// <summary>The pump never starts at power-up, nor by a reset, in the same scan.</summary>
    NoStartByReset,

    /// <summary>A dose-ending alarm that comes to stand ends the running dose in the same scan, a new try too.</summary>
    DoseEnds,
}

/// <summary>The properties in words.</summary>
public static class CoreProperties
{
    /// <summary>Names, by value.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        "pump-off-under-interlock", "pump-off-on-stop", "relay-tells-failure", "failed-has-cause", "outputs-follow", "stall-is-alarmed",
        "dose-comes-round", "cause-is-alarmed", "alarm-survives-cut", "reset-leaves-failed", "start-leaves-stopped", "no-start-by-reset",
        "dose-ends",
    ];

    /// <summary>What each says, by value.</summary>
    public static IReadOnlyList<string> Meanings { get; } =
    [
        "the pump is off while an interlock alarm stands",
        "the pump is off while stop is on, and while an alarm that holds it stands",
        "the healthy relay is energised only if no failure stands",
        "in failed a pump-stopping failure stands",
        "outputs are what phase and alarms demand, in the same scan",
        "a switch that falls silent is alarmed within its bound",
        "a dose comes round unless stopped, primed, failed, or the rest is held",
        "a cause that lasts raises its alarm within its bound, after a power cut too",
        "an alarm that was saved stands after a power cut",
        "once its cause is gone reset leads out of failed",
        "start leads out of stopped",
        "neither power-up nor reset starts the pump",
        "a dose-ending alarm that comes to stand ends the running dose",
    ];

    /// <summary>The bit of a property among several.</summary>
    internal static int Bit(this CoreProperty property) => 1 << (int)property;
}
