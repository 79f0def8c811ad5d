namespace LubeController.Board;

/// <summary>Why the board started, as far as its microcontroller can tell.</summary>
public enum ResetCause
{
    /// <summary>Power came.</summary>
    PowerOn = 0,

    /// <summary>The supply fell below what the microcontroller needs, and came back.</summary>
    BrownOut = 1,

    /// <summary>The board's own watchdog was not kicked in time: a loop that hung.</summary>
    Watchdog = 2,

    /// <summary>The main loop caught an exception and asked for the restart.</summary>
    LoopFault = 3,
}
