namespace LubeController.Emulator;

/// <summary>What an input of the controller is.</summary>
public enum InputKind
{
    /// <summary>A digital level, off or on.</summary>
    Level,

    /// <summary>A quantity with a unit.</summary>
    Quantity,

    /// <summary>Events since the last scan: what is set is counted once, in the next scan.</summary>
    Count,
}
