namespace LubeController.Plant.Supplies;

/// <summary>A supply and the voltage at which the logic on it works. SI units. Immutable.</summary>
public sealed record SupplyDescription
{
    /// <summary>Voltage while nothing is wrong, V, above 0 and at most 60.</summary>
    public double NominalV { get; init; } = 24;

    /// <summary>The logic starts at and above this voltage, V. Default 18, assumed.</summary>
    public double LogicOnV { get; init; } = 18;

    /// <summary>The logic stops below this voltage, V; below <see cref="LogicOnV"/>. Default 15, assumed.</summary>
    public double LogicOffV { get; init; } = 15;

    /// <summary>How long the logic works on without enough voltage, from what it has stored, us, 0 or more. Default 10 ms, assumed.</summary>
    public long HoldUpUs { get; init; } = 10_000;
}
