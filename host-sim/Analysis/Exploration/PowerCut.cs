namespace LubeController.Analysis.Exploration;

/// <summary>What happens to the power at the end of a step.</summary>
public enum PowerCut
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>It is cut and comes back: what was saved last is restored.</summary>
    Cut,

    /// <summary>It is cut in the middle of the save that is due: the one before is restored.</summary>
    CutInSave,

    /// <summary>The main loop caught an exception and restarts the board.</summary>
    LoopFault,

    /// <summary>It is cut, and when it comes back a block of the memory other than the settings has lost its check value.</summary>
    BlockLost,

    /// <summary>It is cut, and when it comes back neither bank of the settings can be read, until the next restart.</summary>
    SettingsLost,
}
