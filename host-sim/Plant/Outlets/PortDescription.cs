using LubeController.Plant.Pistons;

namespace LubeController.Plant.Outlets;

/// <summary>One port of the divider: a section and a side.</summary>
/// <param name="Section">Name of the section.</param>
/// <param name="Side">The side; the port discharges while the piston moves to it.</param>
public readonly record struct PortDescription(string Section, Side Side)
{
    /// <summary>Section name and side, for instance <c>2L</c>.</summary>
    public override string ToString() => Section + (Side == Side.L ? "L" : "R");
}
