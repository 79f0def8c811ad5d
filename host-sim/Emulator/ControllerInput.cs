using System;
using System.Globalization;
using LubeController.Core;
using LubeController.Plant;

namespace LubeController.Emulator;

/// <summary>
/// One input of the controller: a row of <see cref="ControllerInputs"/>, from which board, recorder, script steps and
/// explorations follow. Values are whole numbers as the input image holds them: 0 off and 1 on for a level.
/// </summary>
public sealed class ControllerInput
{
    /// <summary>Name in scripts, explorations and traces, for instance <c>level-low</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What it is.</summary>
    public required InputKind Kind { get; init; }

    /// <summary>Reads its value from an input image.</summary>
    public required Func<Inputs, int> Get { get; init; }

    /// <summary>Puts a value into an input image.</summary>
    public required Action<Inputs, int> Set { get; init; }

    /// <summary>The unit of <see cref="PerUnit"/>: <c>1</c> for counts, empty for levels.</summary>
    public string Unit { get; init; } = "";

    /// <summary>The SI unit of the same quantity: <c>1</c> for counts, empty for levels.</summary>
    public string SiUnit { get; init; } = "";

    /// <summary>By how much the value grows for each <see cref="Unit"/>.</summary>
    public int PerUnit { get; init; } = 1;

    /// <summary>Least value that it may be set to.</summary>
    public int Least { get; init; }

    /// <summary>Most value that it may be set to.</summary>
    public int Most { get; init; } = 1;

    /// <summary>Value of an operated input that nobody touches.</summary>
    public int AtRest { get; init; }

    /// <summary>
    /// Whether people or other machines work it. All others have a source of their own, a sensor or a counter of the board, which
    /// shows through wherever they are not held by hand.
    /// </summary>
    public bool IsOperated { get; init; }

    /// <summary>Reads the plant's sensor behind it; null where it is operated, or where the board counts or times it.</summary>
    public Func<LubricationSystem, int>? Sensor { get; init; }

    /// <summary>Whether a controller with these settings looks at it; null where settings do not decide that.</summary>
    public Func<Settings, bool>? IsHeeded { get; init; }

    /// <summary>Whether a trace has it as <c>input.</c> with its name, as sampled.</summary>
    public bool IsRecorded { get; init; }

    /// <summary>The button it is, or null.</summary>
    public Button? Button { get; init; }

    /// <summary>Its row in <see cref="ControllerInputs.All"/>, from 0.</summary>
    internal int Row { get; set; }

    /// <summary>A value as scripts write it, for instance <c>on</c>, <c>3</c> or <c>20.5 degC</c>.</summary>
    public string Written(int value) => Kind switch
    {
        InputKind.Level => value != 0 ? "on" : "off",
        InputKind.Count => value.ToString(CultureInfo.InvariantCulture),
        _ => ((double)value / PerUnit).ToString("R", CultureInfo.InvariantCulture) + " " + Unit,
    };

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
