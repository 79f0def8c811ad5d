using System.Collections.Generic;
using System.Linq;
using LubeController.Core;

namespace LubeController.Emulator;

/// <summary>What the core's codes are called, wherever people read of them.</summary>
public static class CoreWords
{
    /// <summary>Phases, by code.</summary>
    public static IReadOnlyList<string> Phases { get; } = ["rest", "dose", "retry-pause", "prime", "stopped", "failed", "output-test"];

    /// <summary>Steps of a dose by pressure, by code.</summary>
    public static IReadOnlyList<string> DoseSteps { get; } = ["none", "recharge", "pressurise", "hold", "vent"];

    /// <summary>Alarms, by code.</summary>
    public static IReadOnlyList<string> Alarms { get; } = [.. Enumerable.Range(0, AlarmTable.Count).Select(index => AlarmTable.NameOf((AlarmId)index))];

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

    /// <summary>Names of the alarms of which there is one bit each.</summary>
    /// <returns>In the order of their codes.</returns>
    public static IEnumerable<string> AlarmsOf(int bits) => Alarms.Where((_, index) => (bits & (1 << index)) != 0);
}
