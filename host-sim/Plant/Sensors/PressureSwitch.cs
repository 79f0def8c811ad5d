using LubeController.Plant.Contacts;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Sensors;

/// <summary>A switch that is actuated at and above its trip pressure and released at and below its reset pressure.</summary>
internal sealed class PressureSwitch(PressureSwitchDescription description)
{
    /// <summary>Where it is fitted.</summary>
    internal LinePlace Place => description.Place;

    internal bool Actuated { get; private set; }

    internal bool StuckOn { get; set; }

    internal bool StuckOff { get; set; }

    /// <summary>The contact's level: on is closed.</summary>
    internal bool On => StuckOn || (!StuckOff && Sound);

    private bool Sound => Actuated != (description.Contact == SwitchContact.NormallyClosed);

    /// <summary>Whether a contact that sticks this way makes it read otherwise than a sound one.</summary>
    internal bool Differs(bool stuckOn) => On == stuckOn && Sound != stuckOn;

    /// <summary>Looks for where a pressure that moves so would change it.</summary>
    internal void Look(double start, double end, ref Crossing crossing)
    {
        if (Actuated)
            crossing.Falling(start, end, description.ResetPa, Crossing.NearPa(description.ResetPa));
        else
            crossing.Rising(start, end, description.TripPa, Crossing.NearPa(description.TripPa));
    }

    /// <summary>Follows the pressure.</summary>
    internal void Follow(double pressurePa)
    {
        if (pressurePa >= description.TripPa - Crossing.NearPa(description.TripPa))
            Actuated = true;
        else if (pressurePa <= description.ResetPa + Crossing.NearPa(description.ResetPa))
            Actuated = false;
    }
}
