namespace LubeController.Plant.Sensors;

/// <summary>What a switching amplifier makes of a current.</summary>
public enum NamurReading
{
    /// <summary>A broken wire.</summary>
    Break,

    /// <summary>Low current.</summary>
    Low,

    /// <summary>Between the two switching currents: the state before is kept.</summary>
    Between,

    /// <summary>High current.</summary>
    High,

    /// <summary>A short.</summary>
    Short,
}
