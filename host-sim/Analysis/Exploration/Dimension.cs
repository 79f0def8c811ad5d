using System;
using System.Collections.Generic;
using LubeController.Core;
using LubeController.Emulator;

namespace LubeController.Analysis.Exploration;

/// <summary>One input of the controller with the values it may take. The first is the one with nothing wrong.</summary>
/// <param name="Input">Which.</param>
/// <param name="Values">Its values: 0 off and 1 on for a level, else a number in the unit of the input image. At least one.</param>
public sealed record Dimension(ControllerInput Input, IReadOnlyList<int> Values)
{
    /// <summary>Puts a value into an input image.</summary>
    /// <param name="inputs">The image.</param>
    /// <param name="index">Index of the value.</param>
    public void Apply(Inputs inputs, int index)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        Input.Set(inputs, Values[index]);
    }
}
