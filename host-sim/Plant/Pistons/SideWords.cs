using System.Collections.Generic;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Pistons;

/// <summary>The words for the two sides of a section.</summary>
internal static class SideWords
{
    /// <summary>Both sides.</summary>
    public static IReadOnlyList<Choice<Side>> Sides { get; } = [new("L", Side.L), new("R", Side.R)];
}
