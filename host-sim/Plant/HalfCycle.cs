using System;
using System.Linq;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Sensors;

namespace LubeController.Plant;

/// <summary>
/// What flows between the two edges of a cycle switch. The two do not halve a cycle: while the switch is on, its piston
/// ends one stroke and begins the next, and every other piston moves once.
/// </summary>
/// <param name="OnM3">Volume from the on-edge to the off-edge, m3.</param>
/// <param name="OffM3">Volume from the off-edge to the on-edge, m3; both together are a full cycle, 2 sum(Vi).</param>
public readonly record struct HalfCycle(double OnM3, double OffM3)
{
    /// <summary>Computes both from trip point and hysteresis, with one wave going round.</summary>
    public static HalfCycle Of(PlantDescription plant, CycleSwitchDescription cycleSwitch)
    {
        ArgumentNullException.ThrowIfNull(plant);
        ArgumentNullException.ThrowIfNull(cycleSwitch);
        DividerDescription divider = plant.Secondaries.Select(secondary => secondary.Divider)
            .Prepend(plant.Divider).First(candidate => candidate.Sections.Any(section => section.Name == cycleSwitch.Section));
        double half = divider.Sections.Sum(section => section.VolumePerStrokeM3);
        double own = divider.Sections.First(section => section.Name == cycleSwitch.Section).VolumePerStrokeM3;
        double on = half - own + (own * ((2 * cycleSwitch.TripTravel) + cycleSwitch.Hysteresis));
        return new HalfCycle(on, (2 * half) - on);
    }
}
