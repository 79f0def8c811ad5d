using System;

namespace LubeController.Plant.Supplies;

/// <summary>The control supply among what it feeds.</summary>
/// <param name="Supply">The supply.</param>
/// <param name="ShownByWhatItFeeds">Whether anything that it feeds shows that its voltage is not the nominal one.</param>
internal sealed record FeedingSupply(ControlSupply Supply, Func<bool> ShownByWhatItFeeds)
{
    /// <summary>Whether the logic is without power, or the voltage is measured or shown by what it feeds, and not the nominal one.</summary>
    internal bool IsFelt => (Supply.IsRead && Supply.BaseIsOff) || !Supply.Powered || ShownByWhatItFeeds();

    /// <summary>The supply, brought up to a time.</summary>
    internal ControlSupply At(long nowUs)
    {
        Supply.AdvanceTo(nowUs);
        return Supply;
    }
}
