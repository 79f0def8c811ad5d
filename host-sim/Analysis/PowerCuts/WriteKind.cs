namespace LubeController.Analysis.PowerCuts;

/// <summary>The distinct kinds of write that the board makes.</summary>
public enum WriteKind
{
    /// <summary>Settings, into the older bank.</summary>
    Settings,

    /// <summary>The same settings into the other bank.</summary>
    SettingsMirror,

    /// <summary>The boot record at a start.</summary>
    BootStart,

    /// <summary>The boot record once what waited in it stands as an alarm in a saved state.</summary>
    BootTold,

    /// <summary>The boot record as the main loop gives up.</summary>
    BootFault,

    /// <summary>The state at a start.</summary>
    StateStart,

    /// <summary>The state because of an event.</summary>
    StateEvent,

    /// <summary>The state because the save interval is over.</summary>
    StateInterval,

    /// <summary>An entry of the logbook.</summary>
    LogEntry,

    /// <summary>The turn of the logbook to a block that was never written.</summary>
    LogTurn,

    /// <summary>The turn of the logbook to its oldest block.</summary>
    LogWrap,
}
