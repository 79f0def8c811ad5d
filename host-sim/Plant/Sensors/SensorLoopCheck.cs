using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Circuits;

namespace LubeController.Plant.Sensors;

/// <summary>What a sensor loop may not be.</summary>
public static class SensorLoopCheck
{
    /// <summary>Looks a description through.</summary>
    /// <returns>What was found, none where all is well.</returns>
    public static IReadOnlyList<PlantFinding> Check(SensorLoopDescription loop)
    {
        ArgumentNullException.ThrowIfNull(loop);
        var findings = new Findings();
        Add(findings, "Sensor", loop);
        return findings.All;
    }

    internal static void Refuse(SensorLoopDescription loop)
    {
        if (Check(loop).FirstOrDefault(finding => finding.IsRefusal) is { } first)
            throw new ArgumentException(first.ToString(), nameof(loop));
    }

    internal static void Add(Findings findings, string path, SensorLoopDescription loop)
    {
        findings.Range(path + ".SupplyV", loop.SupplyV, 0, 60, "V");
        findings.Range(path + ".SupplyOhms", loop.SupplyOhms, 1e-3, 1e3, "ohm");
        findings.Range(path + ".CoreOhms", loop.CoreOhms, 1e-3, 1e6, "ohm");
        findings.Defined(path + ".Input", loop.Input);
        findings.Defined(path + ".Undefined", loop.Undefined);
        if (!(loop.PullUpOhms >= 1))
            findings.Refuse(path + ".PullUpOhms", Findings.Show(loop.PullUpOhms), "1 ohm or more");
        Switch(findings, path + ".Switch", loop.Switch);
        Amplifier(findings, path + ".Amplifier", loop.Amplifier);
    }

    private static void Switch(Findings findings, string path, ProximitySwitchDescription sensor)
    {
        findings.Defined(path + ".Output", sensor.Output);
        findings.Defined(path + ".Principle", sensor.Principle);
        findings.Defined(path + ".Contact", sensor.Contact);
        findings.Range(path + ".DropV", sensor.DropV, 0.01, 20, "V");
        findings.Range(path + ".ResidualA", sensor.ResidualA, 0, 0.01, "A");
        findings.Range(path + ".MinimumLoadA", sensor.MinimumLoadA, 0, 1, "A");
        findings.Range(path + ".OwnCurrentA", sensor.OwnCurrentA, 1e-6, 1, "A");
        findings.Range(path + ".LimitA", sensor.LimitA, 1e-3, 10, "A");
        findings.Range(path + ".LeastSupplyV", sensor.LeastSupplyV, 0, 60, "V");
        findings.Range(path + ".ReadyDelayUs", sensor.ReadyDelayUs, 0, 10e6, "us");
        findings.Range(path + ".SwitchingFrequencyHz", sensor.SwitchingFrequencyHz, 0, 1e5, "Hz");
        findings.Range(path + ".ContactOhms", sensor.ContactOhms, Circuit.LeastOhms, 1e6, "ohm");
        findings.Range(path + ".NamurHighOhms", sensor.NamurHighOhms, 1, 1e9, "ohm");
        findings.Range(path + ".NamurLowOhms", sensor.NamurLowOhms, 1, 1e9, "ohm");
        findings.Range(path + ".Bounce.MeanUs", sensor.Bounce.MeanUs, 0, 1e6, "us");
        findings.Range(path + ".Bounce.WorstUs", sensor.Bounce.WorstUs, sensor.Bounce.MeanUs, 1e6, "us");
        Distances(findings, path, sensor);
    }

    private static void Distances(Findings findings, string path, ProximitySwitchDescription sensor)
    {
        if (!(sensor.SensingDistanceM > 0 && sensor.SensingDistanceM <= 1))
            findings.Refuse(path + ".SensingDistanceM", Findings.Show(sensor.SensingDistanceM), "above 0 and at most 1 m");
        findings.Range(path + ".ReleaseDistanceM", sensor.ReleaseDistanceM, sensor.SensingDistanceM, 1, "m");
        findings.Range(path + ".TargetDistanceM", sensor.TargetDistanceM, 0, 10, "m");
        if (!(sensor.AwayDistanceM > sensor.TargetDistanceM))
            findings.Refuse(path + ".AwayDistanceM", Findings.Show(sensor.AwayDistanceM), "above the distance of a present target");
    }

    private static void Amplifier(Findings findings, string path, NamurAmplifierDescription amplifier)
    {
        findings.Range(path + ".OpenV", amplifier.OpenV, 1, 30, "V");
        findings.Range(path + ".InsideOhms", amplifier.InsideOhms, 1, 1e5, "ohm");
        bool rising = amplifier.BreakA >= 0 && amplifier.LowA > amplifier.BreakA && amplifier.HighA >= amplifier.LowA && amplifier.ShortA > amplifier.HighA;
        if (!rising)
            findings.Refuse(path, $"{Findings.Show(amplifier.BreakA)}, {Findings.Show(amplifier.LowA)}, {Findings.Show(amplifier.HighA)}, {Findings.Show(amplifier.ShortA)}", "break, low, high and short currents that rise, A");
    }
}
