namespace LubeController.Plant.Faults;

/// <summary>A fault that is in place.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Part">Name of the part, empty where there is nothing to choose.</param>
/// <param name="Value">The magnitude, SI; 0 where there is none.</param>
public readonly record struct ActiveFault(FaultKind Kind, string Part, double Value)
{
    /// <summary>The second number, SI; 0 where there is none.</summary>
    public double Second { get; init; }

    /// <summary>Its entry in the <see cref="FaultLog"/>.</summary>
    public int Entry { get; init; }
}
