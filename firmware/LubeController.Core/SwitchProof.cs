namespace LubeController.Core;

/// <summary>What shows that a cycle switch is wrong: the detail of <see cref="ScanEvent.SwitchFound"/>.</summary>
public enum SwitchProof
{
    /// <summary>Its level changes too often.</summary>
    Chatter = 1,

    /// <summary>Another cycle switch gave pulses and this one gave none.</summary>
    SecondWitness = 2,
}
