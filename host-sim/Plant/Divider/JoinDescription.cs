using LubeController.Plant.Pistons;

namespace LubeController.Plant.Divider;

/// <summary>Connects the ports of one side of two neighbouring sections. The other side of each keeps its own outlet.</summary>
/// <param name="FirstSection">Name of a section.</param>
/// <param name="SecondSection">Name of the section before or after it in the row.</param>
/// <param name="Side">The side that is connected.</param>
public sealed record JoinDescription(string FirstSection, string SecondSection, Side Side);
