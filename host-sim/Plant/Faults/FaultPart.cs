namespace LubeController.Plant.Faults;

/// <summary>A kind of part that faults can have.</summary>
/// <param name="words">What a fault's part name must name, for instance <c>outlet</c>; empty where there is nothing to choose.</param>
public abstract class FaultPart(string words)
{
    /// <summary>What a fault's part name must name, for instance <c>outlet</c>; empty where there is nothing to choose.</summary>
    public string Words { get; } = words;

    /// <summary>Whether a fault of it names one of several.</summary>
    public bool IsNamed => Words.Length > 0;
}
