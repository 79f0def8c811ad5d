using System;
using System.Collections.Generic;
using LubeController.Plant.Checking;
using LubeController.Plant.Injectors;
using LubeController.Plant.Outlets;
using LubeController.Plant.Sensors;

namespace LubeController.Plant.Description;

/// <summary>What injectors, vent valve and pressure transmitter may not be.</summary>
internal static class InjectorCheck
{
    internal const int MaximumInjectors = 64;

    internal static void Add(Findings findings, PlantDescription plant)
    {
        Reading(findings, "Transmitter", plant.Transmitter);
        if (plant.Gauge is { } gauge)
            Reading(findings, "Gauge", gauge);
        if (plant.VentValve is { } vent)
            findings.Range("VentValve.OpenM3PerSPa", vent.OpenM3PerSPa, 1e-15, 1e-6, "m3/s per Pa");
        if (plant.Injectors.Count == 0)
            return;
        if (plant.Injectors.Count > MaximumInjectors)
            findings.Refuse("Injectors", $"{plant.Injectors.Count}", $"at most {MaximumInjectors} injectors");
        if (plant.Divider.Sections.Count > 0)
            findings.Refuse("Injectors", "beside a divider", "either a divider or injectors");
        if (plant.VentValve is null)
            findings.Refuse("VentValve", "none", "a vent valve, or the injectors never recharge");
        var names = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < plant.Injectors.Count; i++)
            One(findings, $"Injectors[{i}]", plant, plant.Injectors[i], names);
    }

    private static void Reading(Findings findings, string path, PressureTransmitterDescription reading)
    {
        findings.Range(path + ".RangePa", reading.RangePa, 1e5, 1e8, "Pa");
        findings.Range(path + ".LagS", reading.LagS, 0, 60, "s");
        findings.Defined(path + ".Place", reading.Place);
        findings.Range(path + ".SupplyV", reading.Loop.SupplyV, 1, 48, "V");
        findings.Range(path + ".LeastVoltageV", reading.Loop.LeastVoltageV, 0.1, reading.Loop.SupplyV - 0.1, "V (below the supply)");
        findings.Range(path + ".LoopOhms", reading.Loop.LoopOhms, 1, 10_000, "ohm");
    }

    private static void One(Findings findings, string path, PlantDescription plant, InjectorDescription injector, HashSet<string> names)
    {
        findings.Unique(path + ".Name", injector.Name, names);
        findings.Range(path + ".VolumeM3", injector.VolumeM3, 1e-9, 1e-3, "m3");
        findings.Range(path + ".DischargePa", injector.DischargePa, 1e4, 5e7, "Pa");
        if (!(injector.RechargePa >= 0 && injector.RechargePa < injector.DischargePa))
            findings.Refuse(path + ".RechargePa", Findings.Show(injector.RechargePa), $"0 up to, not including, {Findings.Show(injector.DischargePa)} Pa (the discharge pressure)");
        findings.Range(path + ".RechargeS", injector.RechargeS, 1e-3, 3600, "s");
        findings.Range(path + ".Segment", injector.Segment, 0, plant.Line.Segments.Count, "(segments of the line)");
        if (!HasOutlet(plant, injector.Outlet))
            findings.Refuse(path + ".Outlet", $"'{injector.Outlet}'", "the name of an outlet");
        if (injector.DischargePa > plant.Relief.OpeningPressurePa)
            findings.Warn(path + ".DischargePa", injector.DischargePa, $"at most {Findings.Show(plant.Relief.OpeningPressurePa)} Pa, where the relief valve opens, or it never discharges");
    }

    private static bool HasOutlet(PlantDescription plant, string name)
    {
        foreach (OutletDescription outlet in plant.Outlets)
        {
            if (string.Equals(outlet.Name, name, StringComparison.Ordinal))
                return true;
        }

        return false;
    }
}
