using LubeController.Plant.Contacts;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Sensors;

/// <summary>A switch that is actuated while a content is at or below its level, and released above level plus hysteresis.</summary>
internal sealed class LevelSwitch
{
    /// <summary>How near to a level a content counts as there, m3.</summary>
    internal const double NearM3 = 1e-15;

    private readonly double _release;
    private readonly SwitchContact _contact;

    internal LevelSwitch(double levelM3, double hysteresisM3, SwitchContact contact, double contentM3)
    {
        LevelM3 = levelM3;
        _release = levelM3 + hysteresisM3;
        _contact = contact;
        Actuated = contentM3 <= levelM3;
    }

    internal double LevelM3 { get; }

    internal bool Actuated { get; private set; }

    internal bool StuckOn { get; set; }

    internal bool StuckOff { get; set; }

    /// <summary>The contact's level: on is closed.</summary>
    internal bool On => StuckOn || (!StuckOff && Sound);

    private bool Sound => Actuated != (_contact == SwitchContact.NormallyClosed);

    /// <summary>Whether a contact that sticks this way makes it read otherwise than a sound one.</summary>
    internal bool Differs(bool stuckOn) => On == stuckOn && Sound != stuckOn;

    /// <summary>Looks for where a content that moves so would change it.</summary>
    internal void Look(double start, double end, ref Crossing crossing)
    {
        if (Actuated)
            crossing.Rising(start, end, _release, NearM3);
        else
            crossing.Falling(start, end, LevelM3, NearM3);
    }

    /// <summary>Follows the content.</summary>
    internal void Follow(double content)
    {
        if (content <= LevelM3 + NearM3)
            Actuated = true;
        else if (content >= _release - NearM3)
            Actuated = false;
    }
}
