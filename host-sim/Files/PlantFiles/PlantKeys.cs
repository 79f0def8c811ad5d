using System.Collections.Generic;
using System.Linq;
using LubeController.Files.LubricantFiles;
using LubeController.Files.Reading;
using LubeController.Files.Sorts;
using LubeController.Files.WiringFiles;

namespace LubeController.Files.PlantFiles;

/// <summary>The fields of a plant file, group by group.</summary>
public static class PlantKeys
{
    /// <summary>The reservoir.</summary>
    public static KeySet Reservoir { get; } = new(
        "a reservoir", "capacity", "content", "low-level", "empty-level", "level-hysteresis", "aerates-below", "entrained-air", "low-contact", "empty-contact");

    /// <summary>The pump, whatever its kind.</summary>
    public static KeySet Pump { get; } = new(
        "a pump", "kind", "flow", "bore", "stroke", "speed", "volumetric-efficiency", "slip", "filling-loss", "speed-sag", "stall-pressure", "overload-trip-time", "overload-cool-time", "dead-volume", "delivery-segments", "initial-angle");

    /// <summary>A cam pump.</summary>
    public static KeySet CamPump { get; } = new(
        "a cam pump", "kind", "bore", "stroke", "speed", "volumetric-efficiency", "slip", "filling-loss", "speed-sag", "stall-pressure", "overload-trip-time", "overload-cool-time", "dead-volume", "delivery-segments", "initial-angle");

    /// <summary>A constant-flow pump.</summary>
    public static KeySet ConstantFlowPump { get; } = new("a constant-flow pump", "kind", "flow", "stall-pressure", "overload-trip-time", "overload-cool-time");

    /// <summary>The line.</summary>
    public static KeySet Line { get; } = new("a line", "volume", "bulk-modulus", "air", "gas-exponent", "segments", "strainer");

    /// <summary>A segment of the line.</summary>
    public static KeySet Segment { get; } = new("a segment", "length", "bore", "wall-modulus", "cells");

    /// <summary>The strainer in the line.</summary>
    public static KeySet Strainer { get; } = new("a strainer", "loss", "at-flow");

    /// <summary>The relief valve.</summary>
    public static KeySet Relief { get; } = new("a relief valve", "opening-pressure", "override", "rated-flow", "reseat-pressure");

    /// <summary>The vent valve of a single-line system.</summary>
    public static KeySet VentValve { get; } = new("a vent valve", "open-flow", "normally-open");

    /// <summary>The divider.</summary>
    public static KeySet Divider { get; } = new("a divider", "sections", "joins", "stroke-flow-limit", "half-limit-loss", "land-clearance", "indicator");

    /// <summary>A section of the divider.</summary>
    public static KeySet Section { get; } = new(
        "a section", "name", "volume-per-stroke", "outlets", "breakaway", "friction", "bypass", "initial-travel", "flow-share");

    /// <summary>A join of two neighbouring sections.</summary>
    public static KeySet Join { get; } = new("a join", "first", "second", "side");

    /// <summary>A divider that an outlet of another one feeds.</summary>
    public static KeySet Secondary { get; } = new("a secondary divider", "name", "fed-by", "volume", "bulk-modulus", "divider");

    /// <summary>An injector of a single-line system.</summary>
    public static KeySet Injector { get; } = new(
        "an injector", "name", "outlet", "volume", "discharge", "recharge", "recharge-time", "segment");

    /// <summary>An outlet.</summary>
    public static KeySet Outlet { get; } = new("an outlet", "name", "ports", "back-pressure", "check-valve", "line");

    /// <summary>The line from an outlet to its point.</summary>
    public static KeySet OutletLine { get; } = new("an outlet's line", "length", "bore");

    /// <summary>A cycle switch.</summary>
    public static KeySet CycleSwitch { get; } = new("a cycle switch", "name", "section", "end", "trip-travel", "hysteresis", "contact", "sensor");

    /// <summary>The pressure switch.</summary>
    public static KeySet PressureSwitch { get; } = new("a pressure switch", "trip", "reset", "place", "contact");

    /// <summary>The pressure transmitter.</summary>
    public static KeySet Transmitter { get; } = new("a pressure transmitter", "range", "lag", "place", "supply", "least-voltage", "loop-resistance");

    /// <summary>The pressure gauge.</summary>
    public static KeySet Gauge { get; } = new("a pressure gauge", "range", "lag", "place");

    /// <summary>The supply of controller and cycle switches.</summary>
    public static KeySet ControlSupply { get; } = new("a control supply", "voltage", "starts-at", "stops-below", "hold-up");

    /// <summary>The shaft.</summary>
    public static KeySet Shaft { get; } = new("a shaft", "pulses-per-revolution", "speed", "shortest-pulse", "duty");

    /// <summary>Each group by the place it has in the file, as the JSON Schema names it.</summary>
    public static IReadOnlyDictionary<string, KeySet> ByPlace { get; } = new Dictionary<string, KeySet>(LubricantKeys.ByPlaceInPlant.Concat(WiringKeys.ByPlaceInPlant).Concat(SensorKeys.ByPlaceInPlant))
    {
        [""] = FileKeys.Plant,
        ["reservoir"] = Reservoir,
        ["pump"] = Pump,
        ["line"] = Line,
        ["line.segments[]"] = Segment,
        ["line.strainer"] = Strainer,
        ["relief-valve"] = Relief,
        ["vent-valve"] = VentValve,
        ["divider"] = Divider,
        ["divider.sections[]"] = Section,
        ["divider.joins[]"] = Join,
        ["secondary-dividers[]"] = Secondary,
        ["secondary-dividers[].divider"] = Divider,
        ["injectors[]"] = Injector,
        ["outlets[]"] = Outlet,
        ["outlets[].line"] = OutletLine,
        ["cycle-switches[]"] = CycleSwitch,
        ["pressure-switch"] = PressureSwitch,
        ["pressure-transmitter"] = Transmitter,
        ["pressure-gauge"] = Gauge,
        ["shaft"] = Shaft,
        ["control-supply"] = ControlSupply,
    };
}
