using System.Collections.Generic;

namespace LubeController.Plant.Outlets;

/// <summary>
/// A lubrication point and the connected ports that feed it. Single sections and joins decide which ports are connected
/// (<c>PortGroups</c>): each such group feeds exactly one outlet.
/// </summary>
public sealed record OutletDescription
{
    /// <summary>Name, unique within the plant, not empty.</summary>
    public required string Name { get; init; }

    /// <summary>At least one port of the group; naming more is allowed, naming ports of two groups is not.</summary>
    public required IReadOnlyList<PortDescription> Ports { get; init; }

    /// <summary>Pressure that the point holds against the lubricant, Pa gauge, 0 to 5e7. Default 0.</summary>
    public double BackPressurePa { get; init; }

    /// <summary>Pressure that opens the check valve at the point, Pa, 0 to 5e7. Default 0.</summary>
    public double CheckValvePa { get; init; }

    /// <summary>Length of the outlet's own line, m, 0 to 1000. Default 0: no line.</summary>
    public double LineLengthM { get; init; }

    /// <summary>Bore of that line, m, 5e-4 to 0.1. Default 4e-3.</summary>
    public double LineBoreM { get; init; } = 4e-3;
}
