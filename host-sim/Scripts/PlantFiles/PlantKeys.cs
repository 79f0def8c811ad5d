using System.Collections.Generic;
using System.Linq;
using LubeController.Scripts.LubricantFiles;
using LubeController.Scripts.Reading;
using LubeController.Scripts.WiringFiles;

namespace LubeController.Scripts.PlantFiles;

/// <summary>The fields of a plant file, group by group.</summary>
public static class PlantKeys
{
    /// <summary>The file itself.</summary>
    public static KeySet Plant { get; } = new(
        "a plant file", "plant", Inheritance.Key, "lubricant", "temperature", "reservoir", "pump", "line", "relief-valve", "divider", "outlets", "cycle-switches", "pressure-switch", "pressure-transmitter", "shaft", "wiring");

    /// <summary>The reservoir.</summary>
    public static KeySet Reservoir { get; } = new(
        "a reservoir", "capacity", "content", "low-level", "empty-level", "level-hysteresis", "low-contact", "empty-contact");

    /// <summary>The pump, whatever its kind.</summary>
    public static KeySet Pump { get; } = new(
        "a pump", "kind", "flow", "bore", "stroke", "speed", "volumetric-efficiency", "delivery-segments", "initial-angle");

    /// <summary>A cam pump.</summary>
    public static KeySet CamPump { get; } = new(
        "a cam pump", "kind", "bore", "stroke", "speed", "volumetric-efficiency", "delivery-segments", "initial-angle");

    /// <summary>A constant-flow pump.</summary>
    public static KeySet ConstantFlowPump { get; } = new("a constant-flow pump", "kind", "flow");

    /// <summary>The line.</summary>
    public static KeySet Line { get; } = new("a line", "volume", "bulk-modulus", "air");

    /// <summary>The relief valve.</summary>
    public static KeySet Relief { get; } = new("a relief valve", "opening-pressure");

    /// <summary>The divider.</summary>
    public static KeySet Divider { get; } = new("a divider", "sections", "joins", "stroke-flow-limit", "land-clearance");

    /// <summary>A section of the divider.</summary>
    public static KeySet Section { get; } = new(
        "a section", "name", "volume-per-stroke", "outlets", "breakaway", "initial-travel", "flow-share");

    /// <summary>A join of two neighbouring sections.</summary>
    public static KeySet Join { get; } = new("a join", "first", "second", "side");

    /// <summary>An outlet.</summary>
    public static KeySet Outlet { get; } = new("an outlet", "name", "ports", "back-pressure");

    /// <summary>A cycle switch.</summary>
    public static KeySet CycleSwitch { get; } = new("a cycle switch", "name", "section", "end", "trip-travel", "hysteresis", "contact");

    /// <summary>The pressure switch.</summary>
    public static KeySet PressureSwitch { get; } = new("a pressure switch", "trip", "reset", "contact");

    /// <summary>The shaft.</summary>
    public static KeySet Shaft { get; } = new("a shaft", "pulses-per-revolution", "speed", "shortest-pulse", "duty");

    /// <summary>Each group by the place it has in the file, as the JSON Schema names it.</summary>
    public static IReadOnlyDictionary<string, KeySet> ByPlace { get; } = new Dictionary<string, KeySet>(LubricantKeys.ByPlaceInPlant.Concat(WiringKeys.ByPlaceInPlant))
    {
        [""] = Plant,
        ["reservoir"] = Reservoir,
        ["pump"] = Pump,
        ["line"] = Line,
        ["relief-valve"] = Relief,
        ["divider"] = Divider,
        ["divider.sections[]"] = Section,
        ["divider.joins[]"] = Join,
        ["outlets[]"] = Outlet,
        ["cycle-switches[]"] = CycleSwitch,
        ["pressure-switch"] = PressureSwitch,
        ["shaft"] = Shaft,
    };
}
