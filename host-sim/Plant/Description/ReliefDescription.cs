namespace LubeController.Plant.Description;

/// <summary>The relief valve. It passes whatever flow arrives at its opening pressure, back to the reservoir.</summary>
public sealed record ReliefDescription
{
    /// <summary>Opening pressure, Pa gauge, 1e4 to 1e8.</summary>
    public required double OpeningPressurePa { get; init; }
}
