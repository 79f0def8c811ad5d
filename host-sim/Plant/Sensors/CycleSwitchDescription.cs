using LubeController.Plant.Contacts;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Sensors;

/// <summary>A switch that senses one piston near one end of its travel.</summary>
public sealed record CycleSwitchDescription
{
    /// <summary>Name, unique within the plant, not empty.</summary>
    public required string Name { get; init; }

    /// <summary>Name of the section whose piston it senses.</summary>
    public required string Section { get; init; }

    /// <summary>The end of travel near which it is actuated; the other end is its off side.</summary>
    public Side End { get; init; } = Side.R;

    /// <summary>It is actuated at and within this distance from its end, fraction of the travel, above 0 and below 1. Default 0.1.</summary>
    public double TripTravel { get; init; } = 0.1;

    /// <summary>It releases this much further away, fraction of the travel; 0 up to less than 1 - <see cref="TripTravel"/>. Default 0.05.</summary>
    public double Hysteresis { get; init; } = 0.05;

    /// <summary>The contact.</summary>
    public SwitchContact Contact { get; init; } = SwitchContact.NormallyOpen;

    /// <summary>
    /// The loop behind it: switch, cable, supply and input. Null: the level is the contact's own. Its switch takes
    /// <see cref="Contact"/> from here.
    /// </summary>
    public SensorLoopDescription? Sensor { get; init; }
}
