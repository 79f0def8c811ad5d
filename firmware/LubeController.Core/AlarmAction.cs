namespace LubeController.Core;

/// <summary>How an alarm acts on the pump while it stands.</summary>
public enum AlarmAction
{
    /// <summary>It only informs.</summary>
    None = 0,

    /// <summary>The running dose fails and the phase becomes failed; priming and new tries stay possible.</summary>
    DoseEnding = 1,

    /// <summary>The pump is off while it stands and the phase becomes failed.</summary>
    Interlock = 2,

    /// <summary>The pump is off while it stands; a running dose and its timers wait, nothing latches.</summary>
    Holding = 3,
}
