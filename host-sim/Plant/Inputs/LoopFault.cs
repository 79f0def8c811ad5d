namespace LubeController.Plant.Inputs;

/// <summary>What is wrong with a 4-20 mA loop.</summary>
public enum LoopFault
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The transmitter reports a failure by too low a current.</summary>
    DrivesLow,

    /// <summary>The transmitter reports a failure by too high a current.</summary>
    DrivesHigh,

    /// <summary>A wire is broken.</summary>
    WireBroken,

    /// <summary>The two wires touch.</summary>
    Shorted,
}
