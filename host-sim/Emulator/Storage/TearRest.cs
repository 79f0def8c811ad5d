namespace LubeController.Emulator.Storage;

/// <summary>What stands, after a torn write, where the write did not come to.</summary>
public enum TearRest
{
    /// <summary>What stood there before, as in a memory written byte by byte.</summary>
    Old,

    /// <summary>Every byte FF, as in flash that is erased before it is written.</summary>
    Erased,

    /// <summary>Anything, as after an erase that was cut short.</summary>
    Garbage,
}
