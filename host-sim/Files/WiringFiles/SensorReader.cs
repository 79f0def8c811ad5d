using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant.Checking;
using LubeController.Plant.Contacts;
using LubeController.Plant.Inputs;
using LubeController.Plant.Sensors;

namespace LubeController.Files.WiringFiles;

/// <summary>Reads the loop of a cycle switch, then judged as a whole by the loop's own check.</summary>
internal sealed class SensorReader(MapReader group)
{
    private static readonly string[] Outputs = ["pnp", "npn", "two-wire", "namur", "dry-contact"];
    private static readonly string[] Principles = ["inductive", "capacitive", "magnetic", "mechanical"];
    private static readonly string[] Types = ["1", "2", "3"];
    internal static readonly string[] Bounces = ["none", "usual", "reed"];

    private static readonly QuantityRange Volts = new(UnitFamily.Voltage, 0, 60, "V");
    private static readonly QuantityRange Drop = new(UnitFamily.Voltage, 0.01, 20, "V");
    private static readonly QuantityRange Residual = new(UnitFamily.Current, 0, 10, "mA");
    private static readonly QuantityRange Load = new(UnitFamily.Current, 0, 1000, "mA");
    private static readonly QuantityRange Own = new(UnitFamily.Current, 0.001, 1000, "mA");
    private static readonly QuantityRange Limit = new(UnitFamily.Current, 1, 10_000, "mA");
    private static readonly QuantityRange Ready = new(UnitFamily.Time, 0, 10, "s");
    private static readonly QuantityRange Frequency = new(UnitFamily.Frequency, 0, 100_000, "Hz");
    private static readonly QuantityRange Distance = new(UnitFamily.Length, 0, 10_000, "mm");
    private static readonly QuantityRange Ohms = new(UnitFamily.Resistance, 0.0001, 1e6, "ohm");
    private static readonly QuantityRange PullUp = new(UnitFamily.Resistance, 1, 1e9, "ohm");

    private static readonly Dictionary<string, string> Fields = new(StringComparer.Ordinal)
    {
        ["SupplyV"] = "supply",
        ["SupplyOhms"] = "supply-resistance",
        ["CoreOhms"] = "core-resistance",
        ["PullUpOhms"] = "pull-up",
        ["DropV"] = "drop",
        ["ResidualA"] = "residual-current",
        ["MinimumLoadA"] = "minimum-load",
        ["OwnCurrentA"] = "own-current",
        ["LimitA"] = "limit-current",
        ["LeastSupplyV"] = "least-supply",
        ["ReadyDelayUs"] = "ready-delay",
        ["SwitchingFrequencyHz"] = "switching-frequency",
        ["ContactOhms"] = "contact-resistance",
        ["SensingDistanceM"] = "sensing-distance",
        ["ReleaseDistanceM"] = "release-distance",
        ["TargetDistanceM"] = "target-distance",
        ["AwayDistanceM"] = "away-distance",
        ["Amplifier"] = "amplifier",
        ["OpenV"] = "voltage",
        ["InsideOhms"] = "resistance",
    };

    /// <summary>The loop of a cycle switch; null where none is written or a problem was added.</summary>
    public static SensorLoopDescription? ReadIn(MapReader cycleSwitch) =>
        cycleSwitch.Group("sensor", SensorKeys.Sensor) is { } group ? new SensorReader(group).Read() : null;

    private SensorLoopDescription? Read()
    {
        int before = group.Problems.Count;
        var plain = new SensorLoopDescription();
        SensorLoopDescription loop = plain with
        {
            Switch = Switch(),
            SupplyV = Si("supply", Volts) ?? plain.SupplyV,
            SupplyOhms = Si("supply-resistance", Ohms) ?? plain.SupplyOhms,
            CoreOhms = Si("core-resistance", Ohms) ?? plain.CoreOhms,
            PullUpOhms = Si("pull-up", PullUp) ?? plain.PullUpOhms,
            Input = group.Choice("input-type", Types) is { } type ? (InputType)type : plain.Input,
            Undefined = group.Choice("undefined", InputWords.Policies) is { } policy ? (UndefinedPolicy)policy : plain.Undefined,
            Amplifier = Amplifier(),
        };
        foreach (PlantFinding finding in group.Problems.Count > before ? [] : SensorLoopCheck.Check(loop))
            group.Problems.Add(Tell(finding));
        return group.Problems.Count > before ? null : loop;
    }

    private ProximitySwitchDescription Switch()
    {
        var plain = new ProximitySwitchDescription();
        double sensing = Si("sensing-distance", Distance) ?? plain.SensingDistanceM;
        return plain with
        {
            Output = group.Choice("output", Outputs) is { } output ? (SwitchOutput)output : plain.Output,
            Principle = group.Choice("principle", Principles) is { } principle ? (SensingPrinciple)principle : plain.Principle,
            DropV = Si("drop", Drop) ?? plain.DropV,
            ResidualA = Si("residual-current", Residual) ?? plain.ResidualA,
            MinimumLoadA = Si("minimum-load", Load) ?? plain.MinimumLoadA,
            OwnCurrentA = Si("own-current", Own) ?? plain.OwnCurrentA,
            LimitA = Si("limit-current", Limit) ?? plain.LimitA,
            LeastSupplyV = Si("least-supply", Volts) ?? plain.LeastSupplyV,
            ReadyDelayUs = group.Quantity("ready-delay", Ready) is { } ready ? Microseconds.Of(ready) : plain.ReadyDelayUs,
            SwitchingFrequencyHz = Si("switching-frequency", Frequency) ?? plain.SwitchingFrequencyHz,
            SensingDistanceM = sensing,
            // Where only one distance is written the others keep their proportion to it.
            ReleaseDistanceM = Si("release-distance", Distance) ?? sensing * 1.1,
            TargetDistanceM = Si("target-distance", Distance) ?? sensing / 2,
            AwayDistanceM = Si("away-distance", Distance) ?? plain.AwayDistanceM,
            ContactOhms = Si("contact-resistance", Ohms) ?? plain.ContactOhms,
            Bounce = group.Choice("bounce", Bounces) switch
            {
                1 => BounceDescription.Usual,
                2 => BounceDescription.Reed,
                _ => plain.Bounce,
            },
        };
    }

    private NamurAmplifierDescription Amplifier()
    {
        var plain = new NamurAmplifierDescription();
        if (group.Group("amplifier", SensorKeys.Amplifier) is not { } own)
            return plain;
        return plain with
        {
            OpenV = own.Quantity("voltage", Volts)?.Si ?? plain.OpenV,
            InsideOhms = own.Quantity("resistance", Ohms)?.Si ?? plain.InsideOhms,
            LowA = own.Quantity("low", Load)?.Si ?? plain.LowA,
            HighA = own.Quantity("high", Load)?.Si ?? plain.HighA,
            BreakA = own.Quantity("broken", Load)?.Si ?? plain.BreakA,
            ShortA = own.Quantity("shorted", Load)?.Si ?? plain.ShortA,
            OnAtHighCurrent = own.Either("on-at", "high-current", "low-current") ?? plain.OnAtHighCurrent,
            OnAtFault = own.Either("at-fault", "on", "off") ?? plain.OnAtFault,
        };
    }

    private double? Si(string key, QuantityRange range) => group.Quantity(key, range)?.Si;

    private Problem Tell(PlantFinding finding)
    {
        YamlNode node = group.Map;
        string field = group.Map.Path;
        foreach (string part in finding.Path.Split('.').Where(Fields.ContainsKey))
        {
            field += "." + Fields[part];
            node = (node as MapNode)?[Fields[part]] ?? node;
        }

        return new Problem(node.Place, field, node is ScalarNode scalar ? scalar.Text : finding.Value, "the sensor cannot be so", $"accepted is {finding.Accepted}");
    }
}
