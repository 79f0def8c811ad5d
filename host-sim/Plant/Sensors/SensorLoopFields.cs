using System;
using System.Collections.Generic;
using LubeController.Plant.Checking;
using LubeController.Plant.Circuits;
using LubeController.Plant.Contacts;
using LubeController.Plant.Fields;
using LubeController.Plant.Inputs;

namespace LubeController.Plant.Sensors;

/// <summary>The fields of the loop behind a cycle switch. A file writes those of switch and loop as one group.</summary>
public static class SensorLoopFields
{
    private static readonly ChoiceField<SensorLoopDescription, SwitchOutput> Output = new(
        "output",
        "",
        [new("pnp", SwitchOutput.Pnp), new("npn", SwitchOutput.Npn), new("two-wire", SwitchOutput.TwoWire), new("namur", SwitchOutput.Namur), new("dry-contact", SwitchOutput.DryContact)],
        l => l.Switch.Output,
        (l, v) => l with { Switch = l.Switch with { Output = v } });

    private static readonly ChoiceField<SensorLoopDescription, BounceDescription> Bounce = new("bounce", "Of a dry contact: usual is 1.6 ms in the mean and 6.2 ms at worst, reed under 1 ms.", ContactWords.Bounces, l => l.Switch.Bounce, (l, v) => l with { Switch = l.Switch with { Bounce = v } }) { TakesOthers = true };

    // Where only this distance is written the others keep their proportion to it.
    private static readonly NumberField<SensorLoopDescription> Sensing = Number("sensing-distance", "A target at or within this distance is sensed.", Measure.Length, "mm", 0, 1, s => s.SensingDistanceM, (s, v) => s with { SensingDistanceM = v, ReleaseDistanceM = v * 1.1, TargetDistanceM = v / 2 });
    private static readonly NumberField<SensorLoopDescription> Release = Number("release-distance", "A sensed target is lost beyond this distance; 1.1 times the sensing distance if only that is written.", Measure.Length, "mm", 0, 1, s => s.ReleaseDistanceM, (s, v) => s with { ReleaseDistanceM = v });
    private static readonly NumberField<SensorLoopDescription> Away = Number("away-distance", "Distance of an absent target.", Measure.Length, "mm", 0, 10, s => s.AwayDistanceM, (s, v) => s with { AwayDistanceM = v }, "far away");

    /// <summary>All of them.</summary>
    public static FieldSet<SensorLoopDescription> All { get; } = new(
        "a sensor",
        new SensorLoopDescription(),
        [
            Output,
            new ChoiceField<SensorLoopDescription, SensingPrinciple>(
                "principle",
                "",
                [new("inductive", SensingPrinciple.Inductive), new("capacitive", SensingPrinciple.Capacitive), new("magnetic", SensingPrinciple.Magnetic), new("mechanical", SensingPrinciple.Mechanical)],
                l => l.Switch.Principle,
                (l, v) => l with { Switch = l.Switch with { Principle = v } }),
            .. DataSheet(),
            Sensing,
            Release,
            Number("target-distance", "Distance of a present target; half the sensing distance if only that is written.", Measure.Length, "mm", 0, 10, s => s.TargetDistanceM, (s, v) => s with { TargetDistanceM = v }),
            Away,
            Number("contact-resistance", "Of a closed dry contact.", Measure.Resistance, "ohm", Circuit.LeastOhms, 1e6, s => s.ContactOhms, (s, v) => s with { ContactOhms = v }),
            Bounce,
            .. Loop(),
        ])
    {
        Verdict = "the sensor cannot be so",
        Rules =
        [
            new(Output, l => IsResistance(l.Switch.NamurLowOhms) && IsResistance(l.Switch.NamurHighOhms), l => "a NAMUR switch of 1 to 1E+09 ohm"),
            new(Sensing, l => l.Switch.SensingDistanceM > 0, l => "above 0 and at most 1 m"),
            new(Release, l => l.Switch.ReleaseDistanceM >= l.Switch.SensingDistanceM, l => $"{Findings.Show(l.Switch.SensingDistanceM)} to 1 m"),
            new(Away, l => l.Switch.AwayDistanceM > l.Switch.TargetDistanceM, l => "above the distance of a present target"),
            new(Bounce, l => l.Switch.Bounce.MeanUs >= 0 && l.Switch.Bounce.WorstUs >= l.Switch.Bounce.MeanUs && l.Switch.Bounce.WorstUs <= 1_000_000, l => "a mean of 0 us or more, and a worst of the mean to 1E+06 us"),
        ],
    };

    private static bool IsResistance(double ohms) => ohms is >= 1 and <= 1e9;

    private static NumberField<SensorLoopDescription> Number(string key, string meaning, Measure measure, string unit, double least, double most, Func<ProximitySwitchDescription, double?> get, Func<ProximitySwitchDescription, double, ProximitySwitchDescription> with, string? absent = null) =>
        new(key, meaning, measure, unit, least, most, l => get(l.Switch), (l, v) => l with { Switch = with(l.Switch, v) }) { Absent = absent };

    private static IReadOnlyList<Field<SensorLoopDescription>> DataSheet() =>
    [
        Number("drop", "Voltage lost across a closed output; IEC 60947-5-2 allows 3.5 V (three-wire) and 8 V (two-wire).", Measure.Voltage, "V", 0.01, 20, s => s.DropV, (s, v) => s with { DropV = v }),
        Number("residual-current", "Current through an open output; the standard allows 0.5 mA (three-wire) and 1.5 mA (two-wire).", Measure.Current, "mA", 0, 0.01, s => s.ResidualA, (s, v) => s with { ResidualA = v }),
        Number("minimum-load", "Least current of a closed two-wire output; under it the level is undefined.", Measure.Current, "mA", 0, 1, s => s.MinimumLoadA, (s, v) => s with { MinimumLoadA = v }),
        Number("own-current", "What a three-wire switch draws for itself at 24 V.", Measure.Current, "mA", 1e-6, 1, s => s.OwnCurrentA, (s, v) => s with { OwnCurrentA = v }),
        Number("limit-current", "Current at which the output limits.", Measure.Current, "mA", 1e-3, 10, s => s.LimitA, (s, v) => s with { LimitA = v }),
        Number("least-supply", "Below this supply the output is open.", Measure.Voltage, "V", 0, 60, s => s.LeastSupplyV, (s, v) => s with { LeastSupplyV = v }),
        new MicrosecondsField<SensorLoopDescription>("ready-delay", "From supply to a valid output; the standard allows 300 ms.", "s", 0, 10, l => l.Switch.ReadyDelayUs, (l, v) => l with { Switch = l.Switch with { ReadyDelayUs = v } }),
        Number("switching-frequency", "A state shorter than half this period is not shown; 0 Hz sets no limit.", Measure.Frequency, "Hz", 0, 1e5, s => s.SwitchingFrequencyHz, (s, v) => s with { SwitchingFrequencyHz = v }),
    ];

    private static IReadOnlyList<Field<SensorLoopDescription>> Loop() =>
    [
        new NumberField<SensorLoopDescription>("supply", "", Measure.Voltage, "V", 0, 60, l => l.SupplyV, (l, v) => l with { SupplyV = v }),
        new NumberField<SensorLoopDescription>("supply-resistance", "", Measure.Resistance, "ohm", 1e-3, 1e3, l => l.SupplyOhms, (l, v) => l with { SupplyOhms = v }),
        new NumberField<SensorLoopDescription>("core-resistance", "Of each whole core.", Measure.Resistance, "ohm", 1e-3, 1e6, l => l.CoreOhms, (l, v) => l with { CoreOhms = v }),
        new NumberField<SensorLoopDescription>("pull-up", "From supply to the input, as an npn switch needs.", Measure.Resistance, "ohm", 1, 1e9, l => l.PullUpOhms, (l, v) => l with { PullUpOhms = v }),
        new ChoiceField<SensorLoopDescription, InputType>("input-type", "Type of IEC 61131-2.", InputWords.Types, l => l.Input, (l, v) => l with { Input = v }),
        new ChoiceField<SensorLoopDescription, UndefinedPolicy>("undefined", "What the input makes of the zone that the standard leaves undefined.", InputWords.Policies, l => l.Undefined, (l, v) => l with { Undefined = v }),
        new GroupField<SensorLoopDescription, NamurAmplifierDescription>("amplifier", "Of a NAMUR switch (IEC 60947-5-6); its output drives the input.", AmplifierFields.All, l => l.Amplifier, (l, v) => l with { Amplifier = v }),
    ];
}
