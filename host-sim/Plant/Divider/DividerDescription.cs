using System.Collections.Generic;

namespace LubeController.Plant.Divider;

/// <summary>
/// A series-progressive divider: sections in order from the inlet, 3 to 64. At an end of its travel each piston opens the
/// supply to one end of the next; the last sends the first the other way.
/// </summary>
public sealed record DividerDescription
{
    /// <summary>No divider: for a plant whose points are fed by injectors.</summary>
    public static DividerDescription None { get; } = new() { Sections = [] };

    /// <summary>The sections, 3 to 64, in order.</summary>
    public required IReadOnlyList<SectionDescription> Sections { get; init; }

    /// <summary>Ports of neighbouring sections that are connected to each other, same side only.</summary>
    public IReadOnlyList<JoinDescription> Joins { get; init; } = [];

    /// <summary>
    /// The most flow that one piston takes when stored pressure drives it, m3/s, 1e-9 to 1e-2. Default 1e-5 (10 cm3/s).
    /// </summary>
    public double StrokeFlowLimitM3PerS { get; init; } = 1e-5;

    /// <summary>
    /// Loss in a section's passages when its piston takes half of the stroke flow limit, at reference viscosity, Pa, 1 to
    /// 1e7. Default 100: hardly any. A piston takes limit x dp/(dp + loss) of what drives it, so this gives it its travel time.
    /// </summary>
    public double HalfLimitLossPa { get; init; } = 100;

    /// <summary>Name of the section that carries the visual stroke indicator, or null.</summary>
    public string? IndicatorSection { get; init; }

    /// <summary>
    /// The most flow that creeps past closed lands into one piston's chamber, m3/s, 1e-15 up to the stroke flow limit;
    /// null: the lands are tight. It acts only while every piston stands in mid-travel, and towards the side to which the
    /// piston before is nearer to opening.
    /// </summary>
    public double? LandClearanceFlowM3PerS { get; init; }
}
