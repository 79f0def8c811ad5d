using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Line;
using LubeController.Plant.Sensors;

namespace LubeController.Plant.Description;

/// <summary>What switches and shaft may not be.</summary>
internal static class SensorCheck
{
    internal const int MaximumCycleSwitches = 64;

    internal static void Add(Findings findings, PlantDescription plant)
    {
        if (plant.CycleSwitches.Count > MaximumCycleSwitches)
            findings.Refuse("CycleSwitches", plant.CycleSwitches.Count.ToString(CultureInfo.InvariantCulture), $"0 to {MaximumCycleSwitches} switches");
        var names = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < plant.CycleSwitches.Count; i++)
            CycleSwitch(findings, $"CycleSwitches[{i}]", plant.CycleSwitches[i], plant, names);
        if (plant.PressureSwitch is { } pressure)
            PressureSwitch(findings, pressure, plant.Relief);
        if (plant.Shaft is { } shaft)
            Shaft(findings, shaft);
    }

    private static void CycleSwitch(Findings findings, string path, CycleSwitchDescription cycle, PlantDescription plant, HashSet<string> names)
    {
        findings.Unique(path + ".Name", cycle.Name, names);
        if (!plant.AllSections.Any(section => string.Equals(section.Name, cycle.Section, StringComparison.Ordinal)))
            findings.Refuse(path + ".Section", $"'{cycle.Section}'", "the name of a section");
        findings.Defined(path + ".End", cycle.End);
        findings.Between(path + ".TripTravel", cycle.TripTravel, 0, 1, "of the travel");
        if (!(cycle.Hysteresis >= 0 && cycle.TripTravel + cycle.Hysteresis < 1))
            findings.Refuse(path + ".Hysteresis", Findings.Show(cycle.Hysteresis), $"0 up to, not including, {Findings.Show(1 - cycle.TripTravel)} of the travel");
        findings.Defined(path + ".Contact", cycle.Contact);
        if (cycle.Sensor is { } sensor)
            SensorLoopCheck.Add(findings, path + ".Sensor", sensor);
    }

    private static void PressureSwitch(Findings findings, PressureSwitchDescription pressure, ReliefDescription relief)
    {
        if (!(pressure.TripPa > 0 && pressure.TripPa <= 1e8))
            findings.Refuse("PressureSwitch.TripPa", Findings.Show(pressure.TripPa), "above 0 and at most 1E+08 Pa");
        if (!(pressure.ResetPa >= 0 && pressure.ResetPa < pressure.TripPa))
            findings.Refuse("PressureSwitch.ResetPa", Findings.Show(pressure.ResetPa), $"0 up to, not including, {Findings.Show(pressure.TripPa)} Pa (the trip pressure)");
        findings.Defined("PressureSwitch.Place", pressure.Place);
        findings.Defined("PressureSwitch.Contact", pressure.Contact);
        if (pressure.TripPa > relief.OpeningPressurePa)
            findings.Warn("PressureSwitch.TripPa", pressure.TripPa, $"at most {Findings.Show(relief.OpeningPressurePa)} Pa, where the relief valve opens, or it never trips");
    }

    private static void Shaft(Findings findings, ShaftDescription shaft)
    {
        findings.Range("Shaft.PulsesPerRevolution", shaft.PulsesPerRevolution, 1, 10_000, "pulses");
        findings.Range("Shaft.InitialSpeedRevPerS", shaft.InitialSpeedRevPerS, 0, 1000, "rev/s");
        findings.Range("Shaft.MinimumPulseWidthUs", shaft.MinimumPulseWidthUs, 0, 1e6, "us");
        findings.Between("Shaft.Duty", shaft.Duty, 0, 1, "of the pulse period");
    }
}
