namespace LubeController.Emulator.Storage;

/// <summary>What a worn block does to a write.</summary>
public enum WornBlock
{
    /// <summary>It keeps what it held and says that it failed.</summary>
    Refuses,

    /// <summary>It takes the write and says nothing, with one bit wrong.</summary>
    FlipsBit,
}
