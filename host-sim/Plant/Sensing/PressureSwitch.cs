using LubeController.Plant.Description;

namespace LubeController.Plant.Sensing;

/// <summary>A switch that is actuated at and above its trip pressure and released at and below its reset pressure.</summary>
internal sealed class PressureSwitch(PressureSwitchDescription description)
{
    internal bool Actuated { get; private set; }

    internal bool StuckOn { get; set; }

    internal bool StuckOff { get; set; }

    /// <summary>The contact's level: on is closed.</summary>
    internal bool On => StuckOn || (!StuckOff && Sound);

    private bool Sound => Actuated != (description.Contact == SwitchContact.NormallyClosed);

    /// <summary>Whether a contact that sticks this way makes it read otherwise than a sound one.</summary>
    internal bool Differs(bool stuckOn) => On == stuckOn && Sound != stuckOn;

    /// <summary>The pressure at which it changes, if the pressure moves at this rate; not a number if it does not.</summary>
    internal double Target(double rate)
    {
        if (rate > 0 && !Actuated)
            return description.TripPa;
        return rate < 0 && Actuated ? description.ResetPa : double.NaN;
    }

    /// <summary>Follows the pressure.</summary>
    internal void Follow(double pressurePa)
    {
        if (pressurePa >= description.TripPa)
            Actuated = true;
        else if (pressurePa <= description.ResetPa)
            Actuated = false;
    }

    internal void AddTo(ref Fingerprint print)
    {
        print.Add(Actuated);
        print.Add(StuckOn);
        print.Add(StuckOff);
    }
}
