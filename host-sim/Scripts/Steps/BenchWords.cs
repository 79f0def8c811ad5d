using System.Collections.Generic;
using LubeController.Core;

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
    public static IReadOnlyList<string> Buttons { get; } = ["start", "acknowledge", "reset", "dose-now", "prime"];

    /// <summary>Names of the maintained inputs, by value.</summary>
    public static IReadOnlyList<string> Inputs { get; } = ["stop", "machine-running"];

    /// <summary>Name of a button.</summary>
    public static string Of(Button button) => Buttons[(int)button];

    /// <summary>Name of an input.</summary>
    public static string Of(BenchInput input) => Inputs[(int)input];
}
