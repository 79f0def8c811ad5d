namespace LubeController.Plant.Inputs;

/// <summary>What voltage and current at a digital input mean.</summary>
public enum InputReading
{
    /// <summary>Certainly off.</summary>
    Off,

    /// <summary>Certainly on.</summary>
    On,

    /// <summary>Neither: an input may take it for either.</summary>
    Undefined,
}
