namespace LubeController.Plant.Sensors;

/// <summary>
/// A switching amplifier for a NAMUR switch (IEC 60947-5-6): 8.2 V behind 1 kohm, switching at 1.2 and 2.1 mA. Limits for
/// a broken wire and a short differ from amplifier to amplifier.
/// </summary>
public sealed record NamurAmplifierDescription
{
    /// <summary>Open-circuit voltage, V.</summary>
    public double OpenV { get; init; } = 8.2;

    /// <summary>Resistance inside, ohm.</summary>
    public double InsideOhms { get; init; } = 1_000;

    /// <summary>At and below this current the switch is taken for blocked, A.</summary>
    public double LowA { get; init; } = 1.2e-3;

    /// <summary>At and above this current the switch is taken for conducting, A.</summary>
    public double HighA { get; init; } = 2.1e-3;

    /// <summary>At and below this current a wire is taken for broken, A.</summary>
    public double BreakA { get; init; } = 0.1e-3;

    /// <summary>At and above this current the wires are taken for shorted, A.</summary>
    public double ShortA { get; init; } = 6.5e-3;

    /// <summary>Whether the output is on at high current; off means on at low current, as an inductive switch draws with metal before it.</summary>
    public bool OnAtHighCurrent { get; init; }

    /// <summary>The output while a break or a short is seen.</summary>
    public bool OnAtFault { get; init; }
}
