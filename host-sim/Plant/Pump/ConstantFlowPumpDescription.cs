namespace LubeController.Plant.Pump;

/// <summary>A source that delivers the same flow for as long as its motor does not stall.</summary>
public sealed record ConstantFlowPumpDescription : PumpDescription
{
    /// <summary>Flow while the motor runs, m3/s, 1e-12 to 1e-2.</summary>
    public required double FlowM3PerS { get; init; }
}
