using LubeController.Plant.Inputs;

namespace LubeController.Plant.Sensors;

/// <summary>
/// A switch, its cable, its supply and the input it drives. As made by default: an ideal switch on a type 3 input, which
/// reads what the switch senses.
/// </summary>
public sealed record SensorLoopDescription
{
    /// <summary>The switch.</summary>
    public ProximitySwitchDescription Switch { get; init; } = new();

    /// <summary>Supply, V.</summary>
    public double SupplyV { get; init; } = 24;

    /// <summary>Resistance of the supply, ohm, above 0.</summary>
    public double SupplyOhms { get; init; } = 0.1;

    /// <summary>Resistance of one whole core, ohm, 0.001 or more.</summary>
    public double CoreOhms { get; init; } = 0.5;

    /// <summary>Type of the input.</summary>
    public InputType Input { get; init; } = InputType.Type3;

    /// <summary>What the input makes of its undefined zone.</summary>
    public UndefinedPolicy Undefined { get; init; } = UndefinedPolicy.Low;

    /// <summary>Resistance from supply to the input terminal, ohm, as an NPN switch needs at a sinking input; infinite for none.</summary>
    public double PullUpOhms { get; init; } = double.PositiveInfinity;

    /// <summary>The amplifier of a NAMUR switch, whose output drives the input.</summary>
    public NamurAmplifierDescription Amplifier { get; init; } = new();
}
