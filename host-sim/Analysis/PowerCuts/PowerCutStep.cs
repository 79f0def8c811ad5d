namespace LubeController.Analysis.PowerCuts;

/// <summary>What a step does.</summary>
public enum PowerCutDeed
{
    /// <summary>Presses a button and lets it go; the number is the button.</summary>
    Press,

    /// <summary>The operating stop, on (1) or off (0).</summary>
    Stop,

    /// <summary>The low switch of the reservoir, on or off.</summary>
    LevelLow,

    /// <summary>The empty switch, on or off.</summary>
    LevelEmpty,

    /// <summary>No pulse comes although the pump runs, on or off.</summary>
    Blocked,

    /// <summary>Shelves an alarm for a minute; the number is the alarm.</summary>
    Shelve,

    /// <summary>Stores settings with another rest; the number is what is added to it, seconds.</summary>
    Store,

    /// <summary>The main loop meets an exception.</summary>
    Fault,

    /// <summary>Power goes and comes back.</summary>
    PowerOff,
}

/// <summary>One thing that is done to the board.</summary>
/// <param name="AtMs">When, milliseconds since the start of the run.</param>
/// <param name="Deed">What.</param>
/// <param name="Number">More about it.</param>
public sealed record PowerCutStep(long AtMs, PowerCutDeed Deed, int Number = 0);
