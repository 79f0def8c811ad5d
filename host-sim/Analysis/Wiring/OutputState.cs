namespace LubeController.Analysis.Wiring;

/// <summary>What one output of the controller does.</summary>
public enum OutputState
{
    /// <summary>It stays off.</summary>
    Off,

    /// <summary>It stays on.</summary>
    On,

    /// <summary>It goes to and fro: a lamp that flashes, a heartbeat.</summary>
    Beating,
}
