using System.Collections.Generic;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Inputs;

/// <summary>The words for digital inputs by IEC 61131-2.</summary>
public static class InputWords
{
    /// <summary>What an input makes of its undefined zone.</summary>
    public static IReadOnlyList<Choice<UndefinedPolicy>> Policies { get; } =
        [new("low", UndefinedPolicy.Low), new("high", UndefinedPolicy.High), new("hold", UndefinedPolicy.Hold), new("seeded", UndefinedPolicy.Seeded)];

    internal static IReadOnlyList<Choice<InputType>> Types { get; } = [new("1", InputType.Type1), new("2", InputType.Type2), new("3", InputType.Type3)];
}
