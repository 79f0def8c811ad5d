using System.Collections.Generic;
using ScottPlot;

namespace LubeController.Plots;

/// <summary>All pictures of the README, each of the same plant: with one number changed where its script says so.</summary>
internal static class Album
{
    private const double WindowS = 100;

    private static readonly Lane Pump = new("output.pump", "pump", Colors.SteelBlue);
    private static readonly Lane Pulses = new("switch.s4-switch", "cycle switch", Colors.DarkOrange);
    private static readonly Lane Stalled = new("alarm.divider-stalled", "divider-stalled", Colors.FireBrick);
    private static readonly Lane Healthy = new("output.healthy-relay", "healthy relay", Colors.SeaGreen);

    private static readonly Dose FirstEver = new("hil-scripts/faults/outlet-blocked.yaml", 0);
    private static readonly Dose Normal = FirstEver with { Number = 1 };
    private static readonly Dose Blocked = FirstEver with { Number = -1 };
    private static readonly Dose Warm = new("hil-scripts/running/salt-works-warm-and-cold.yaml", 1);
    private static readonly Dose Cold = Warm with { Number = 2 };
    private static readonly Dose Aired = new("hil-scripts/faults/air-in-line.yaml", 0);
    private static readonly Dose Worn = new("hil-scripts/faults/pump-worn-against-pressure.yaml", 1);
    private static readonly Dose WornAgainstPressure = Worn with { Number = 2 };
    private static readonly Dose SoundAgainstPressure = new("hil-scripts/faults/outlet-back-pressure-kicks.yaml", 2);
    private static readonly Dose Empty = new("hil-scripts/faults/reservoir-empty-unseen.yaml", 1);

    /// <summary>In the order of the README.</summary>
    public static IReadOnlyList<Picture> Pictures { get; } =
    [
        new("outlet-blocked", 80, 250,
        [
            new(Normal, "A normal dose: three pulses, then the pump stops", [Pump, Pulses, Stalled, Healthy]),
            new(Blocked, "An outlet is blocked: pistons stop, pressure climbs to the relief valve, the alarm comes", [Pump, Pulses, Stalled, Healthy]),
        ]),
        new("dose-warm", WindowS, 100, [new(Warm, "A warm dose, 30 \u00b0C", [Pump, Pulses])]),
        new("dose-cold", WindowS, 100, [new(Cold, "A cold dose, \u221215 \u00b0C: the same plant, the same grease", [Pump, Pulses, At(Warm, "when warm")])]),
        new("relief-valve-open", WindowS, 250, [new(Blocked, "An outlet is blocked, the relief valve opens", [Pump, Pulses, Stalled])]),
        new("air-in-line", WindowS, 60, [new(Aired, "Air in the line, 3 cm\u00b3 at atmosphere, in the first dose after filling", [Pump, Pulses, At(FirstEver, "without air")])]),
        new("pump-worn", WindowS, 100,
        [
            new(Worn, "A worn pump at usual pressure", [Pump, Pulses, At(Normal, "sound pump")]),
            new(WornAgainstPressure, "A worn pump, one point holding against 40 bar", [Pump, Pulses, At(SoundAgainstPressure, "sound pump")]),
        ]),
        new("reservoir-empty", WindowS, 60, [new(Empty, "The reservoir runs empty behind stuck level switches", [Pump, Pulses, At(Normal, "when full"), Stalled])]),
    ];

    /// <summary>The pulses of another dose, for comparison.</summary>
    private static Lane At(Dose dose, string label) => Pulses with { Label = label, Colour = Colors.Gray, Of = dose };
}
