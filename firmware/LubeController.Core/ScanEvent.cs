namespace LubeController.Core;

/// <summary>What sort of thing a scan saw or did.</summary>
public enum ScanEvent
{
    /// <summary>The phase changed; subject is the old phase, detail the new one.</summary>
    PhaseChanged = 0,

    /// <summary>An alarm became active; subject is the alarm.</summary>
    AlarmRaised = 1,

    /// <summary>An alarm's condition ended; subject is the alarm.</summary>
    AlarmEnded = 2,

    /// <summary>Reset cleared an alarm's latch; subject is the alarm.</summary>
    LatchCleared = 3,

    /// <summary>An edge of a cycle switch was accepted and counted; subject is the switch, detail the dose's count.</summary>
    PulseCounted = 4,

    /// <summary>An accepted edge of a switch that ends no dose, or at a time when none runs; subject is the switch.</summary>
    PulseSeen = 5,

    /// <summary>An accepted edge that opened the counting, the divider's position not being known; subject is the switch.</summary>
    PulseOpened = 6,

    /// <summary>A run-on pulse was credited to the next dose; subject is the switch, detail the credit.</summary>
    PulseCredited = 7,

    /// <summary>An edge came too fast and was ignored; subject is the switch.</summary>
    PulseTooFast = 8,

    /// <summary>An edge of a switch under cycle-switch-fault was ignored; subject is the switch.</summary>
    PulseDistrusted = 9,

    /// <summary>A cycle switch was found wrong; subject is the switch, detail a <see cref="SwitchProof"/>.</summary>
    SwitchFound = 10,

    /// <summary>A press was obeyed; subject is the button.</summary>
    PressObeyed = 11,

    /// <summary>A press was refused in this phase; subject is the button.</summary>
    PressRefused = 12,

    /// <summary>A dose was completed; subject is its count: edges, or pressure cycles.</summary>
    DoseCompleted = 13,

    /// <summary>A dose by pressure took its next step; subject is the step, detail the pressure cycles counted so far.</summary>
    DoseStepTaken = 14,

    /// <summary>An alarm is suppressed by design; subject is the alarm, detail the alarms it follows from, one bit each.</summary>
    AlarmSuppressed = 15,

    /// <summary>An alarm is no longer suppressed; subject is the alarm.</summary>
    SuppressionEnded = 16,

    /// <summary>An alarm was shelved; subject is the alarm, detail the time in milliseconds.</summary>
    AlarmShelved = 17,

    /// <summary>Shelving ended, by a person or by its time; subject is the alarm.</summary>
    ShelvingEnded = 18,

    /// <summary>An alarm was taken out of service; subject is the alarm.</summary>
    TakenOutOfService = 19,

    /// <summary>An alarm was put into service again; subject is the alarm.</summary>
    PutIntoService = 20,

    /// <summary>Two sensors were found to disagree; subject is a <see cref="SensorPair"/>, detail for volume the per cent pumped.</summary>
    SensorsDisagree = 21,
}
