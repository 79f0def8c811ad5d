using System.Collections.Generic;
using LubeController.Core;
using LubeController.Emulator;

namespace LubeController.Scripts.Steps;

/// <summary>Buttons and alarms as scripts name them.</summary>
public static class BenchWords
{
    /// <summary>Names of the buttons, by value.</summary>
    public static IReadOnlyList<string> Buttons { get; } = CoreWords.Buttons;

    /// <summary>What a person does to what is shown of an alarm, by value.</summary>
    public static IReadOnlyList<string> AlarmDeeds { get; } = ["shelve", "unshelve", "out-of-service", "in-service"];

    /// <summary>Names of the alarms, by value.</summary>
    public static IReadOnlyList<string> Alarms { get; } = CoreWords.Alarms;

    /// <summary>Name of a deed.</summary>
    public static string Of(AlarmDeed deed) => AlarmDeeds[(int)deed];

    /// <summary>Name of a button.</summary>
    public static string Of(Button button) => Buttons[(int)button];
}
