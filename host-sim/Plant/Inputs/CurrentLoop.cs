using System;

namespace LubeController.Plant.Inputs;

/// <summary>
/// A 4-20 mA loop at rest: the current that a value becomes, and the value that a current means. A transmitter can drive
/// no more current than leaves it the voltage it needs: (supply - need) / loop resistance. Its lag belongs to what it
/// measures and is not modelled here.
/// </summary>
public sealed class CurrentLoop
{
    private const double ZeroA = 4e-3;
    private const double SpanA = 16e-3;

    private readonly CurrentLoopDescription _description;

    /// <summary>Makes a loop.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An empty range, or a loop without resistance.</exception>
    public CurrentLoop(CurrentLoopDescription description)
    {
        ArgumentNullException.ThrowIfNull(description);
        if (!(Math.Abs(description.HighValue - description.LowValue) > 0))
            throw new ArgumentOutOfRangeException(nameof(description), description.HighValue, "the value at 20 mA must differ from the value at 4 mA");
        if (!(description.LoopOhms > 0))
            throw new ArgumentOutOfRangeException(nameof(description), description.LoopOhms, "the loop needs a resistance above 0 ohm");
        _description = description;
    }

    /// <summary>Supply of the loop, V.</summary>
    public double SupplyV { get; set; } = 24;

    /// <summary>Resistance in the loop beyond the described one, ohm, as corroded terminals add.</summary>
    public double ExtraOhms { get; set; }

    /// <summary>What is wrong.</summary>
    public LoopFault Fault { get; set; }

    /// <summary>The current at the input for a measured value, A.</summary>
    public double CurrentA(double value)
    {
        double loopOhms = _description.LoopOhms + ExtraOhms;
        double reachA = Math.Max(0, (SupplyV - _description.LeastVoltageV) / loopOhms);
        return Fault switch
        {
            LoopFault.WireBroken => 0,
            LoopFault.Shorted => Math.Min(Math.Max(0, SupplyV) / loopOhms, _description.InputLimitA),
            LoopFault.DrivesLow => Math.Min(_description.FailureLowA, reachA),
            LoopFault.DrivesHigh => Math.Min(_description.FailureHighA, reachA),
            _ => Math.Min(Math.Clamp(Wanted(value), _description.LeastA, _description.MostA), reachA),
        };
    }

    /// <summary>The value that a current means, whether valid or not.</summary>
    public double ValueOf(double currentA) =>
        _description.LowValue + ((currentA - ZeroA) / SpanA * (_description.HighValue - _description.LowValue));

    private double Wanted(double value) =>
        ZeroA + (SpanA * ((value - _description.LowValue) / (_description.HighValue - _description.LowValue)));
}
