namespace LubeController.Board;

/// <summary>What a block of the non-volatile memory holds.</summary>
public enum BlockKind
{
    /// <summary>The settings.</summary>
    Settings = 1,

    /// <summary>The boot record.</summary>
    Boot = 2,

    /// <summary>The state of the core.</summary>
    State = 3,

    /// <summary>Entries of the logbook.</summary>
    Logbook = 4,
}
