using LubeController.Plant.Contacts;

namespace LubeController.Plant.Sensors;

/// <summary>
/// A switch by its data sheet. SI units. Immutable. As made by default: an ideal three-wire PNP switch, normally open.
/// </summary>
public sealed record ProximitySwitchDescription
{
    /// <summary>How it tells what it senses.</summary>
    public SwitchOutput Output { get; init; } = SwitchOutput.Pnp;

    /// <summary>What it responds to.</summary>
    public SensingPrinciple Principle { get; init; } = SensingPrinciple.Inductive;

    /// <summary>Whether the output conducts with or without a target. A NAMUR switch draws low current where another is closed.</summary>
    public SwitchContact Contact { get; init; } = SwitchContact.NormallyOpen;

    /// <summary>Voltage lost across a closed output, V, 0.01 to 20. IEC 60947-5-2 allows 3.5 (three-wire) and 8 (two-wire).</summary>
    public double DropV { get; init; } = 0.1;

    /// <summary>Current through an open output, A, 0 to 0.01. IEC 60947-5-2 allows 0.5 mA (three-wire) and 1.5 mA (two-wire).</summary>
    public double ResidualA { get; init; } = 1e-6;

    /// <summary>Least current that a closed two-wire output needs, A, 0 or more; under it the level is undefined.</summary>
    public double MinimumLoadA { get; init; }

    /// <summary>Current a three-wire switch draws for itself at 24 V, A, above 0.</summary>
    public double OwnCurrentA { get; init; } = 10e-3;

    /// <summary>Current at which a closed output limits, A. Default 0.3, assumed.</summary>
    public double LimitA { get; init; } = 0.3;

    /// <summary>Least supply at its terminals, V; below it a three-wire output is open. Default 10, assumed.</summary>
    public double LeastSupplyV { get; init; } = 10;

    /// <summary>Time from supply to a valid output, us. IEC 60947-5-2 allows 300 ms.</summary>
    public long ReadyDelayUs { get; init; }

    /// <summary>Most changes there and back, Hz; 0 sets no limit. A state shorter than half this period is not shown.</summary>
    public double SwitchingFrequencyHz { get; init; }

    /// <summary>A target at or within this distance is sensed, m, above 0.</summary>
    public double SensingDistanceM { get; init; } = 2e-3;

    /// <summary>A sensed target is lost beyond this distance, m, <see cref="SensingDistanceM"/> or more.</summary>
    public double ReleaseDistanceM { get; init; } = 2.2e-3;

    /// <summary>Distance at which a present target stands, m, 0 or more.</summary>
    public double TargetDistanceM { get; init; } = 1e-3;

    /// <summary>Distance at which an absent target stands, m; infinite by default.</summary>
    public double AwayDistanceM { get; init; } = double.PositiveInfinity;

    /// <summary>Resistance of a closed dry contact, ohm, 1e-4 or more.</summary>
    public double ContactOhms { get; init; } = 0.1;

    /// <summary>Bounce of a dry contact.</summary>
    public BounceDescription Bounce { get; init; } = BounceDescription.None;

    /// <summary>Resistance of a NAMUR switch that draws low current, ohm. Default 12 000, 0.63 mA of 8.2 V behind 1 kohm; assumed.</summary>
    public double NamurHighOhms { get; init; } = 12_000;

    /// <summary>Resistance of a NAMUR switch that draws high current, ohm. Default 1 500, 3.3 mA of 8.2 V behind 1 kohm; assumed.</summary>
    public double NamurLowOhms { get; init; } = 1_500;
}
