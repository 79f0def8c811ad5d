using System.Collections.Generic;
using LubeController.Core;
using LubeController.Emulator;

namespace LubeController.Scripts.Steps;

/// <summary>Maintained inputs that a script may set.</summary>
public enum BenchInput
{
    /// <summary>Operating stop.</summary>
    Stop,

    /// <summary>Machine running.</summary>
    MachineRunning,
}

/// <summary>Buttons and inputs as scripts name them.</summary>
public static class BenchWords
{
    /// <summary>Names of the buttons, by value.</summary>
    public static IReadOnlyList<string> Buttons { get; } = CoreWords.Buttons;

    /// <summary>Names of the maintained inputs, by value.</summary>
    public static IReadOnlyList<string> Inputs { get; } = ["stop", "machine-running"];

    /// <summary>Names of the inputs that may be held by hand, by value.</summary>
    public static IReadOnlyList<string> HandInputs { get; } =
    [
        "cycle-switch-1", "cycle-switch-2", "cycle-switch-3", "cycle-switch-4", "level-low", "level-empty", "pressure-switch", "pump-overload",
        "pressure", "supply", "temperature", "shaft-pulses", "pump-revolutions", "scan-late",
    ];

    /// <summary>What a person does to what is shown of an alarm, by value.</summary>
    public static IReadOnlyList<string> AlarmDeeds { get; } = ["shelve", "unshelve", "out-of-service", "in-service"];

    /// <summary>Names of the alarms, by value.</summary>
    public static IReadOnlyList<string> Alarms { get; } = CoreWords.Alarms;

    /// <summary>Name of a deed.</summary>
    public static string Of(AlarmDeed deed) => AlarmDeeds[(int)deed];

    /// <summary>Name of a button.</summary>
    public static string Of(Button button) => Buttons[(int)button];

    /// <summary>Name of an input.</summary>
    public static string Of(BenchInput input) => Inputs[(int)input];
}
