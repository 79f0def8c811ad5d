namespace LubeController.Board;

/// <summary>What an entry of the logbook reports: below <see cref="Started"/> an event of the core under its own number, from there on something that happened to the board.</summary>
public static class LogEvent
{
    /// <summary>The board started; subject is the reset cause, detail the starts of its life.</summary>
    public const int Started = 64;

    /// <summary>The main loop caught an exception; subject is how often in this run, detail how often in the board's life.</summary>
    public const int FaultCaught = 65;

    /// <summary>Settings were stored; detail is how often in the board's life.</summary>
    public const int SettingsStored = 66;

    /// <summary>A bank of settings was rewritten from the other.</summary>
    public const int SettingsMended = 67;

    /// <summary>Blocks or entries lost their check value; subject is how many.</summary>
    public const int StorageCorrupt = 68;

    /// <summary>Settings were stored once and cannot be read; subject is 2 where they are refused, 3 where they are lost.</summary>
    public const int SettingsUnreadable = 69;

    /// <summary>Events of one scan did not fit its list; subject is how many.</summary>
    public const int EventsLost = 70;

    /// <summary>States were found, but all of another version or length: the core started without one.</summary>
    public const int StateForeign = 71;
}
