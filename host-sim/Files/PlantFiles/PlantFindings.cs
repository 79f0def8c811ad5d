using System;
using System.Collections.Generic;
using System.Globalization;
using LubeController.Files.Reading;
using LubeController.Plant.Checking;

namespace LubeController.Files.PlantFiles;

/// <summary>Tells the findings of the plant's own check by the file, line and field that each one comes from.</summary>
internal static class PlantFindings
{
    private static readonly Dictionary<string, string> Fields = new(StringComparer.Ordinal)
    {
        ["Name"] = "name",
        ["Lubricant"] = "lubricant",
        ["TemperatureK"] = "temperature",
        ["Reservoir"] = "reservoir",
        ["CapacityM3"] = "capacity",
        ["ContentM3"] = "content",
        ["LowLevelM3"] = "low-level",
        ["EmptyLevelM3"] = "empty-level",
        ["LevelHysteresisM3"] = "level-hysteresis",
        ["AeratesBelowM3"] = "aerates-below",
        ["EntrainedAir"] = "entrained-air",
        ["LowContact"] = "low-contact",
        ["EmptyContact"] = "empty-contact",
        ["Pump"] = "pump",
        ["FlowM3PerS"] = "flow",
        ["PistonBoreM"] = "bore",
        ["StrokeM"] = "stroke",
        ["SpeedRevPerS"] = "speed",
        ["VolumetricEfficiency"] = "volumetric-efficiency",
        ["SlipM3PerSPa"] = "slip",
        ["FillingLoss"] = "filling-loss",
        ["SpeedSagPerPa"] = "speed-sag",
        ["StallPressurePa"] = "stall-pressure",
        ["OverloadTripS"] = "overload-trip-time",
        ["OverloadCoolS"] = "overload-cool-time",
        ["DeadVolume"] = "dead-volume",
        ["DeliverySegments"] = "delivery-segments",
        ["InitialAngle"] = "initial-angle",
        ["Line"] = "line",
        ["VolumeM3"] = "volume",
        ["BulkModulusPa"] = "bulk-modulus",
        ["AirM3"] = "air",
        ["GasExponent"] = "gas-exponent",
        ["Segments"] = "segments",
        ["LengthM"] = "length",
        ["BoreM"] = "bore",
        ["WallModulusPa"] = "wall-modulus",
        ["Cells"] = "cells",
        ["StrainerLossPa"] = "strainer.loss",
        ["StrainerFlowM3PerS"] = "strainer.at-flow",
        ["Relief"] = "relief-valve",
        ["OpeningPressurePa"] = "opening-pressure",
        ["OverridePa"] = "override",
        ["RatedFlowM3PerS"] = "rated-flow",
        ["ReseatPressurePa"] = "reseat-pressure",
        ["ControlSupply"] = "control-supply",
        ["NominalV"] = "voltage",
        ["LogicOnV"] = "starts-at",
        ["LogicOffV"] = "stops-below",
        ["HoldUpUs"] = "hold-up",
        ["SupplyV"] = "supply",
        ["LeastVoltageV"] = "least-voltage",
        ["LoopOhms"] = "loop-resistance",
        ["VentValve"] = "vent-valve",
        ["OpenM3PerSPa"] = "open-flow",
        ["Divider"] = "divider",
        ["Sections"] = "sections",
        ["Joins"] = "joins",
        ["FirstSection"] = "first",
        ["SecondSection"] = "second",
        ["Side"] = "side",
        ["VolumePerStrokeM3"] = "volume-per-stroke",
        ["Outlets"] = "outlets",
        ["BreakawayPa"] = "breakaway",
        ["FrictionPa"] = "friction",
        ["BypassM3PerSPa"] = "bypass",
        ["InitialTravel"] = "initial-travel",
        ["FlowShare"] = "flow-share",
        ["StrokeFlowLimitM3PerS"] = "stroke-flow-limit",
        ["HalfLimitLossPa"] = "half-limit-loss",
        ["LandClearanceFlowM3PerS"] = "land-clearance",
        ["IndicatorSection"] = "indicator",
        ["Secondaries"] = "secondary-dividers",
        ["FedBy"] = "fed-by",
        ["Injectors"] = "injectors",
        ["Outlet"] = "outlet",
        ["DischargePa"] = "discharge",
        ["RechargePa"] = "recharge",
        ["RechargeS"] = "recharge-time",
        ["Segment"] = "segment",
        ["Ports"] = "ports",
        ["BackPressurePa"] = "back-pressure",
        ["CheckValvePa"] = "check-valve",
        ["LineLengthM"] = "line.length",
        ["LineBoreM"] = "line.bore",
        ["CycleSwitches"] = "cycle-switches",
        ["Section"] = "section",
        ["End"] = "end",
        ["TripTravel"] = "trip-travel",
        ["Hysteresis"] = "hysteresis",
        ["Contact"] = "contact",
        ["PressureSwitch"] = "pressure-switch",
        ["TripPa"] = "trip",
        ["ResetPa"] = "reset",
        ["Place"] = "place",
        ["Transmitter"] = "pressure-transmitter",
        ["Gauge"] = "pressure-gauge",
        ["RangePa"] = "range",
        ["LagS"] = "lag",
        ["Shaft"] = "shaft",
        ["PulsesPerRevolution"] = "pulses-per-revolution",
        ["InitialSpeedRevPerS"] = "speed",
        ["MinimumPulseWidthUs"] = "shortest-pulse",
        ["Duty"] = "duty",
    };

    /// <summary>The problem that a finding is.</summary>
    public static Problem Tell(MapNode file, PlantFinding finding)
    {
        if (finding.Path == "Name")
            return Make(file["plant"] ?? file, "plant", finding);
        YamlNode node = file;
        string field = "";
        foreach (string part in finding.Path.Split('.'))
        {
            (string name, int index) = Split(part);
            string key = Fields.GetValueOrDefault(name, name);
            field = field.Length == 0 ? key : $"{field}.{key}";
            foreach (string level in key.Split('.'))
                node = (node as MapNode)?[level] ?? node;
            if (index < 0)
                continue;
            field += string.Create(CultureInfo.InvariantCulture, $"[{index}]");
            if (node is ListNode list && index < list.Items.Count)
                node = list.Items[index];
        }

        return Make(node, field, finding);
    }

    private static Problem Make(YamlNode node, string field, PlantFinding finding) => new(
        node.Place,
        field,
        node is ScalarNode scalar ? scalar.Text : finding.Value,
        finding.IsRefusal ? "the plant cannot be built so" : "the plant can be built, but this is unusual",
        $"accepted is {finding.Accepted}");

    private static (string Name, int Index) Split(string part)
    {
        int open = part.IndexOf('[');
        return open < 0 ? (part, -1) : (part[..open], int.Parse(part.AsSpan(open + 1, part.Length - open - 2), CultureInfo.InvariantCulture));
    }
}
