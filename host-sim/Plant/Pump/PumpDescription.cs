namespace LubeController.Plant.Pump;

/// <summary>The source of flow: a <see cref="CamPumpDescription"/> or a <see cref="ConstantFlowPumpDescription"/>.</summary>
public abstract record PumpDescription
{
    /// <summary>A motor fitted to its plant stalls at so many times the relief valve's opening pressure (common practice: two to three).</summary>
    public const double DefaultStallRatio = 2.5;

    /// <summary>
    /// Pressure at the outlet whose torque stalls the motor at its nominal supply, Pa, 1e5 to 1e9; in proportion less at a lower
    /// one. Null: <see cref="DefaultStallRatio"/> times the relief valve's opening pressure.
    /// </summary>
    public double? StallPressurePa { get; init; }

    /// <summary>
    /// Time for which the motor may stand under power before its overload relay trips, s, 0.1 to 600. Null: it has no such relay.
    /// </summary>
    public double? OverloadTripS { get; init; }

    /// <summary>Time after which the tripped relay has cooled and resets by itself, s, 1 to 36000.</summary>
    public double OverloadCoolS { get; init; } = 60;
}
