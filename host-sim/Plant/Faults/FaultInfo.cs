namespace LubeController.Plant.Faults;

/// <summary>One kind of fault of the plant: an entry of its registry.</summary>
public sealed record FaultInfo : FaultDescription
{
    /// <summary>The kind.</summary>
    public required FaultKind Kind { get; init; }

    /// <summary>What the part name must name.</summary>
    public required FaultPart Part { get; init; }
}
