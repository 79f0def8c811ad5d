namespace LubeController.Emulator.Platform;

/// <summary>What may be wrong with the microcontroller's platform, in the order of the registry.</summary>
public enum BoardFaultKind
{
    /// <summary>The main loop hangs at its next scan.</summary>
    LoopHangs,

    /// <summary>Reading the inputs throws an exception.</summary>
    LoopThrows,

    /// <summary>Scans come later than planned.</summary>
    ScanDelayed,

    /// <summary>Scans come a little earlier or later than planned.</summary>
    ScanJitters,

    /// <summary>The oscillator runs fast or slow.</summary>
    ClockDrifts,

    /// <summary>The queue of pin events holds few records.</summary>
    PinQueueShort,

    /// <summary>A bit of the memory turns round.</summary>
    StorageBitFlip,

    /// <summary>The memory's blocks stand so many writes.</summary>
    StorageWorn,

    /// <summary>Power goes in the middle of the memory's next write.</summary>
    StorageWriteTorn,
}
