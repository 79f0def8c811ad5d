using System;
using LubeController.Plant.Description;
using LubeController.Plant.Sensing;

namespace LubeController.Plant.Hydraulics;

/// <summary>What the pump draws from and the relief valve returns to, with its two level switches.</summary>
internal sealed class Reservoir
{
    private Sum _content;

    internal Reservoir(ReservoirDescription description)
    {
        _content.Set(description.ContentM3);
        Low = new LevelSwitch(description.LowLevelM3, description.LevelHysteresisM3, description.LowContact, ContentM3);
        Empty = new LevelSwitch(description.EmptyLevelM3, description.LevelHysteresisM3, description.EmptyContact, ContentM3);
    }

    internal double ContentM3 => _content.Value;

    /// <summary>What flows in less what flows out; never positive.</summary>
    internal double RateM3PerS { get; set; }

    internal LevelSwitch Low { get; }

    internal LevelSwitch Empty { get; }

    internal void Advance(double seconds) => _content.Add(RateM3PerS * seconds);

    internal void Place(double contentM3) => _content.Set(contentM3);

    /// <summary>The content at which the next thing happens, or not a number while it stands still.</summary>
    internal double NextTarget()
    {
        if (RateM3PerS >= 0)
            return double.NaN;
        double low = Low.Actuated ? 0 : Low.LevelM3;
        double empty = Empty.Actuated ? 0 : Empty.LevelM3;
        return Math.Max(low, empty);
    }

    internal void FollowSwitches()
    {
        Low.Follow(ContentM3);
        Empty.Follow(ContentM3);
    }

    /// <summary>Sets the content at once.</summary>
    /// <returns>By how much it rose, m3.</returns>
    internal double Jump(double contentM3)
    {
        double before = ContentM3;
        _content.Set(contentM3);
        Low.Jump(ContentM3);
        Empty.Jump(ContentM3);
        return ContentM3 - before;
    }

    internal void AddTo(ref Fingerprint print)
    {
        _content.AddTo(ref print);
        print.Add(RateM3PerS);
        Low.AddTo(ref print);
        Empty.AddTo(ref print);
    }
}
