using System.Collections.Generic;
using LubeController.Plant.Checking;
using LubeController.Plant.Line;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Supplies;
using LubeController.Plant.Wiring;

namespace LubeController.Plant.Description;

/// <summary>Says everything that is wrong with a description, as data.</summary>
public static class PlantCheck
{
    private const int MaximumSegments = 16;

    /// <summary>All findings, refusals and warnings, in the order of the description's fields. Empty: nothing to say.</summary>
    public static IReadOnlyList<PlantFinding> Of(PlantDescription plant)
    {
        System.ArgumentNullException.ThrowIfNull(plant);
        var findings = new Findings();
        findings.Text("Name", plant.Name);
        LubricantCheck.Add(findings, plant.Lubricant);
        Reservoir(findings, plant.Reservoir);
        Pump(findings, plant.Pump, plant.Relief);
        Line(findings, plant.Line);
        Relief(findings, plant.Relief);
        DividerCheck.Add(findings, plant);
        InjectorCheck.Add(findings, plant);
        OutletCheck.Add(findings, plant);
        SensorCheck.Add(findings, plant);
        Supply(findings, plant.ControlSupply);
        if (plant.Wiring is { } wiring)
            WiringCheck.Add(findings, "Wiring", wiring);
        findings.Range("TemperatureK", plant.TemperatureK, 200, 500, "K");
        return findings.All;
    }

    /// <summary>The refusals among <see cref="Of"/>; a plant with none can be built.</summary>
    public static IReadOnlyList<PlantFinding> Refusals(PlantDescription plant)
    {
        var refusals = new List<PlantFinding>();
        foreach (PlantFinding finding in Of(plant))
        {
            if (finding.IsRefusal)
                refusals.Add(finding);
        }

        return refusals;
    }

    private static void Supply(Findings findings, SupplyDescription supply)
    {
        findings.Range("ControlSupply.NominalV", supply.NominalV, 1, 48, "V");
        findings.Range("ControlSupply.LogicOnV", supply.LogicOnV, 0.5, supply.NominalV, "V (the nominal voltage)");
        findings.Range("ControlSupply.LogicOffV", supply.LogicOffV, 0.1, supply.LogicOnV - 0.1, "V (below the voltage at which the logic starts)");
        findings.Range("ControlSupply.HoldUpUs", supply.HoldUpUs, 0, 10_000_000, "us");
    }

    private static void Reservoir(Findings findings, ReservoirDescription reservoir)
    {
        findings.Range("Reservoir.CapacityM3", reservoir.CapacityM3, 1e-5, 10, "m3");
        findings.Range("Reservoir.ContentM3", reservoir.ContentM3, 0, reservoir.CapacityM3, "m3 (the capacity)");
        findings.Range("Reservoir.EmptyLevelM3", reservoir.EmptyLevelM3, 0, reservoir.LowLevelM3, "m3 (the low level)");
        findings.Range("Reservoir.LowLevelM3", reservoir.LowLevelM3, 0, reservoir.CapacityM3, "m3 (the capacity)");
        findings.Range("Reservoir.LevelHysteresisM3", reservoir.LevelHysteresisM3, 0, reservoir.CapacityM3 / 2, "m3 (half the capacity)");
        findings.Range("Reservoir.AeratesBelowM3", reservoir.AeratesBelowM3, 0, reservoir.CapacityM3, "m3 (the capacity)");
        findings.Range("Reservoir.EntrainedAir", reservoir.EntrainedAir, 0, 0.2, "(a fraction at atmosphere)");
        findings.Defined("Reservoir.LowContact", reservoir.LowContact);
        findings.Defined("Reservoir.EmptyContact", reservoir.EmptyContact);
        if (reservoir.ContentM3 <= reservoir.LowLevelM3)
            findings.Warn("Reservoir.ContentM3", reservoir.ContentM3, "more than the low level, or the low switch is on from the start");
    }

    private static void Pump(Findings findings, PumpDescription pump, ReliefDescription relief)
    {
        if (pump.StallPressurePa is { } stall)
        {
            findings.Range("Pump.StallPressurePa", stall, 1e5, 1e9, "Pa");
            if (stall <= relief.OpeningPressurePa)
                findings.Warn("Pump.StallPressurePa", stall, "more than the relief valve's opening pressure, or the motor stalls before the valve opens");
        }

        if (pump.OverloadTripS is { } trip)
            findings.Range("Pump.OverloadTripS", trip, 0.1, 600, "s");
        findings.Range("Pump.OverloadCoolS", pump.OverloadCoolS, 1, 36000, "s");
        switch (pump)
        {
            case CamPumpDescription cam:
                findings.Range("Pump.PistonBoreM", cam.PistonBoreM, 1e-3, 0.1, "m");
                findings.Range("Pump.StrokeM", cam.StrokeM, 1e-4, 0.2, "m");
                findings.Range("Pump.SpeedRevPerS", cam.SpeedRevPerS, 1e-3, 100, "rev/s");
                findings.Range("Pump.VolumetricEfficiency", cam.VolumetricEfficiency, 0.01, 1, "(a fraction)");
                findings.Range("Pump.SlipM3PerSPa", cam.SlipM3PerSPa, 0, 1e-9, "m3/s per Pa");
                findings.Range("Pump.FillingLoss", cam.FillingLoss, 0, 10, "(a ratio)");
                findings.Range("Pump.SpeedSagPerPa", cam.SpeedSagPerPa, 0, 1e-6, "1/Pa");
                findings.Range("Pump.DeadVolume", cam.DeadVolume, 0, 1, "of the stroke");
                findings.Range("Pump.DeliverySegments", cam.DeliverySegments, 1, 64, "segments");
                findings.BelowOne("Pump.InitialAngle", cam.InitialAngle, 0, "revolution");
                break;
            case ConstantFlowPumpDescription constant:
                findings.Range("Pump.FlowM3PerS", constant.FlowM3PerS, 1e-12, 1e-2, "m3/s");
                break;
            default:
                findings.Refuse("Pump", pump.GetType().Name, "a cam pump or a constant-flow pump");
                break;
        }
    }

    private static void Line(Findings findings, LineDescription line)
    {
        findings.Range("Line.VolumeM3", line.VolumeM3, 1e-7, 1, "m3");
        findings.Range("Line.BulkModulusPa", line.BulkModulusPa, 1e6, 1e10, "Pa");
        findings.Range("Line.AirM3", line.AirM3, 0, WholeM3(line) / 2, "m3 (half the line)");
        findings.Range("Line.GasExponent", line.GasExponent, 1, 1.67, "(an exponent)");
        findings.Range("Line.StrainerLossPa", line.StrainerLossPa, 0, 1e7, "Pa");
        findings.Range("Line.StrainerFlowM3PerS", line.StrainerFlowM3PerS, 1e-12, 1e-2, "m3/s");
        if (line.Segments.Count > MaximumSegments)
            findings.Refuse("Line.Segments", $"{line.Segments.Count}", $"0 to {MaximumSegments} segments");
        for (int i = 0; i < line.Segments.Count; i++)
        {
            string path = $"Line.Segments[{i}]";
            LineSegmentDescription segment = line.Segments[i];
            findings.Range(path + ".LengthM", segment.LengthM, 0.01, 1000, "m");
            findings.Range(path + ".BoreM", segment.BoreM, 5e-4, 0.1, "m");
            findings.Range(path + ".WallModulusPa", segment.WallModulusPa, 1e6, 1e13, "Pa");
            findings.Range(path + ".Cells", segment.Cells, 1, 8, "cells");
        }
    }

    private static double WholeM3(LineDescription line)
    {
        double whole = line.VolumeM3;
        foreach (LineSegmentDescription segment in line.Segments)
            whole += System.Math.PI / 4 * segment.BoreM * segment.BoreM * segment.LengthM;
        return whole;
    }

    private static void Relief(Findings findings, ReliefDescription relief)
    {
        findings.Range("Relief.OpeningPressurePa", relief.OpeningPressurePa, 1e4, 1e8, "Pa");
        findings.Range("Relief.OverridePa", relief.OverridePa, 0, 1e8, "Pa");
        findings.Range("Relief.RatedFlowM3PerS", relief.RatedFlowM3PerS, 1e-9, 1e-2, "m3/s");
        if (relief.ReseatPressurePa is { } reseat)
            findings.Range("Relief.ReseatPressurePa", reseat, 1, relief.OpeningPressurePa, "Pa (the opening pressure)");
    }
}
