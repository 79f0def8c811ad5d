using LubeController.Plant.Description;

namespace LubeController.Plant.Sensing;

/// <summary>A switch that is actuated while a content is at or below its level, and released above level plus hysteresis.</summary>
internal sealed class LevelSwitch
{
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

    /// <summary>Follows a content that fell. Flow never raises one: the relief valve returns at most what is pumped.</summary>
    internal void Follow(double content)
    {
        if (content <= LevelM3)
            Actuated = true;
    }

    /// <summary>Follows a content that was changed at once.</summary>
    internal void Jump(double content)
    {
        if (content <= LevelM3)
            Actuated = true;
        else if (content >= _release)
            Actuated = false;
    }

    internal void AddTo(ref Fingerprint print)
    {
        print.Add(Actuated);
        print.Add(StuckOn);
        print.Add(StuckOff);
    }
}
