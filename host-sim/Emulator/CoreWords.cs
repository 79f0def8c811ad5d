using System.Collections.Generic;

namespace LubeController.Emulator;

/// <summary>What the core's codes are called, wherever people read of them.</summary>
public static class CoreWords
{
    /// <summary>Phases, by code.</summary>
    public static IReadOnlyList<string> Phases { get; } = ["rest", "dose", "retry-pause", "prime", "stopped", "failed", "output-test"];

    /// <summary>Steps of a dose by pressure, by code.</summary>
    public static IReadOnlyList<string> DoseSteps { get; } = ["none", "recharge", "pressurise", "hold", "vent"];

    /// <summary>States of an alarm, by code.</summary>
    public static IReadOnlyList<string> AlarmStates { get; } =
    [
        "normal", "unacknowledged", "acknowledged", "returned-unacknowledged", "latched-unacknowledged", "latched-acknowledged",
        "shelved", "suppressed-by-design", "out-of-service",
    ];

    /// <summary>Buttons, by code.</summary>
    public static IReadOnlyList<string> Buttons { get; } = ["start", "acknowledge", "reset", "dose-now", "prime", "output-test"];

    /// <summary>Pairs of sensors that can disagree, by the code with which the core tells of it, from 1; none has 0.</summary>
    public static IReadOnlyList<string> Witnesses { get; } = ["", "volume and pulses", "pressure and pulses", "shaft and machine running"];
}
