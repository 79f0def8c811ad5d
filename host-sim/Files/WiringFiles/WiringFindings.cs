using System;
using System.Collections.Generic;
using System.Globalization;
using LubeController.Files.Reading;
using LubeController.Plant.Checking;

namespace LubeController.Files.WiringFiles;

/// <summary>Tells the findings of the wiring's own check by the file, line and field that each one comes from.</summary>
internal static class WiringFindings
{
    private static readonly Dictionary<string, string> Fields = new(StringComparer.Ordinal)
    {
        ["Supplies"] = "supplies",
        ["Fuses"] = "fuses",
        ["Wires"] = "wires",
        ["Contacts"] = "contacts",
        ["Relays"] = "relays",
        ["OperateUs"] = "operate",
        ["ReleaseUs"] = "release",
        ["Lamps"] = "lamps",
        ["Coils"] = "coils",
        ["CoilContacts"] = "coil-contacts",
        ["Resistors"] = "resistors",
        ["Inputs"] = "inputs",
        ["Supervision"] = "supervision",
        ["Windows"] = "windows",
        ["State"] = "state",
        ["Elsewhere"] = "elsewhere",
        ["Name"] = "name",
        ["From"] = "from",
        ["To"] = "to",
        ["Output"] = "output",
        ["Side"] = "side",
        ["Coil"] = "coil",
        ["VoltageV"] = "voltage",
        ["RatedV"] = "voltage",
        ["RatedW"] = "power",
        ["RatedA"] = "rating",
        ["InsideOhms"] = "resistance",
        ["ClosedOhms"] = "resistance",
        ["Ohms"] = "resistance",
        ["PullInV"] = "pull-in",
        ["DropOutV"] = "drop-out",
        ["FeedV"] = "feed",
        ["Type"] = "type",
        ["Undefined"] = "undefined",
    };

    /// <summary>The problem that a finding is.</summary>
    /// <param name="wiring">The wiring's group.</param>
    /// <param name="finding">The finding.</param>
    public static Problem Tell(MapNode wiring, PlantFinding finding)
    {
        YamlNode node = wiring;
        string field = wiring.Path;
        foreach (string part in finding.Path.Split('.'))
        {
            int open = part.IndexOf('[');
            if (!Fields.TryGetValue(open < 0 ? part : part[..open], out string? key))
                continue;
            // A supply's terminals are its plus and its minus.
            if (key is "from" or "to" && node is MapNode map && map[key] is null)
                key = key == "from" ? "plus" : "minus";
            field += "." + key;
            node = (node as MapNode)?[key] ?? node;
            if (open < 0)
                continue;
            int index = int.Parse(part.AsSpan(open + 1, part.Length - open - 2), CultureInfo.InvariantCulture);
            field += string.Create(CultureInfo.InvariantCulture, $"[{index}]");
            if (node is ListNode list && index < list.Items.Count)
                node = list.Items[index];
        }

        return new Problem(node.Place, field, node is ScalarNode scalar ? scalar.Text : finding.Value, "the wiring cannot be so", $"accepted is {finding.Accepted}");
    }
}
