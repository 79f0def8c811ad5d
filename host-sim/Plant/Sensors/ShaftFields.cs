using LubeController.Plant.Fields;

namespace LubeController.Plant.Sensors;

/// <summary>The fields of the machine's shaft.</summary>
public static class ShaftFields
{
    private static readonly NumberField<ShaftDescription> Duty = new("duty", "Part of each pulse period for which the switch is on.", Measure.Ratio, "%", 0, 1, s => s.Duty, (s, v) => s with { Duty = v });

    /// <summary>All of them.</summary>
    public static FieldSet<ShaftDescription> All { get; } = new(
        "a shaft",
        new ShaftDescription(),
        new WholeField<ShaftDescription>("pulses-per-revolution", "", 1, 10_000, s => s.PulsesPerRevolution, (s, v) => s with { PulsesPerRevolution = v }),
        new NumberField<ShaftDescription>("speed", "Speed at the start.", Measure.Speed, "rpm", 0, 1000, s => s.InitialSpeedRevPerS, (s, v) => s with { InitialSpeedRevPerS = v }),
        new MicrosecondsField<ShaftDescription>("shortest-pulse", "A shorter pulse is not seen.", "s", 0, 1, s => s.MinimumPulseWidthUs, (s, v) => s with { MinimumPulseWidthUs = v }),
        Duty)
    {
        Rules = [new(Duty, s => s.Duty is > 0 and < 1, s => "above 0 and below 1 of the pulse period")],
    };
}
