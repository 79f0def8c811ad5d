using LubeController.Plant.Contacts;

namespace LubeController.Plant.Sensors;

/// <summary>A pressure switch on the line.</summary>
public sealed record PressureSwitchDescription
{
    /// <summary>It is actuated at and above this pressure, Pa gauge, above 0 and at most 1e8.</summary>
    public required double TripPa { get; init; }

    /// <summary>It releases at and below this pressure, Pa gauge, 0 up to less than <see cref="TripPa"/>.</summary>
    public required double ResetPa { get; init; }

    /// <summary>Where it is fitted.</summary>
    public LinePlace Place { get; init; } = LinePlace.Pump;

    /// <summary>The contact.</summary>
    public SwitchContact Contact { get; init; } = SwitchContact.NormallyOpen;
}
