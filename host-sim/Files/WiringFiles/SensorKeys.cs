using System.Collections.Generic;
using LubeController.Files.Reading;

namespace LubeController.Files.WiringFiles;

/// <summary>The fields of a cycle switch's loop in a plant file.</summary>
public static class SensorKeys
{
    /// <summary>The loop: switch, cable, supply and input.</summary>
    public static KeySet Sensor { get; } = new(
        "a sensor",
        "output", "principle", "drop", "residual-current", "minimum-load", "own-current", "limit-current", "least-supply", "ready-delay", "switching-frequency",
        "sensing-distance", "release-distance", "target-distance", "away-distance", "contact-resistance", "bounce",
        "supply", "supply-resistance", "core-resistance", "pull-up", "input-type", "undefined", "amplifier");

    /// <summary>The switching amplifier of a NAMUR switch.</summary>
    public static KeySet Amplifier { get; } = new(
        "an amplifier", "voltage", "resistance", "low", "high", "broken", "shorted", "on-at", "at-fault");

    /// <summary>Each group by the place it has in a plant file, as the JSON Schema names it.</summary>
    public static IReadOnlyDictionary<string, KeySet> ByPlaceInPlant { get; } = new Dictionary<string, KeySet>
    {
        ["cycle-switches[].sensor"] = Sensor,
        ["cycle-switches[].sensor.amplifier"] = Amplifier,
    };
}
