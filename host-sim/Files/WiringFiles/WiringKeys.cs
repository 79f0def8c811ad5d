using System.Collections.Generic;
using LubeController.Files.Reading;

namespace LubeController.Files.WiringFiles;

/// <summary>The fields of the wiring in a plant file, group by group.</summary>
public static class WiringKeys
{
    /// <summary>The wiring.</summary>
    public static KeySet Wiring { get; } = new(
        "a wiring", "supplies", "fuses", "wires", "contacts", "relays", "lamps", "coils", "coil-contacts", "resistors", "inputs");

    /// <summary>A supply.</summary>
    public static KeySet Supply { get; } = new("a supply", "name", "plus", "minus", "voltage", "resistance");

    /// <summary>A fuse.</summary>
    public static KeySet Fuse { get; } = new("a fuse", "name", "from", "to", "rating", "resistance");

    /// <summary>A wire.</summary>
    public static KeySet Wire { get; } = new("a wire", "name", "from", "to", "resistance");

    /// <summary>A contact of an output.</summary>
    public static KeySet Contact { get; } = new("a contact", "name", "output", "side", "from", "to", "resistance");

    /// <summary>A lamp.</summary>
    public static KeySet Lamp { get; } = new("a lamp", "name", "from", "to", "voltage", "power");

    /// <summary>A relay coil.</summary>
    public static KeySet Coil { get; } = new("a coil", "name", "from", "to", "resistance", "pull-in", "drop-out");

    /// <summary>The relay of an output.</summary>
    public static KeySet Relay { get; } = new("an output's relay", "output", "operate", "release", "bounce");

    /// <summary>A contact of a relay.</summary>
    public static KeySet CoilContact { get; } = new("a relay's contact", "name", "coil", "side", "from", "to", "resistance");

    /// <summary>A resistor.</summary>
    public static KeySet Resistor { get; } = new("a resistor", "name", "from", "to", "resistance");

    /// <summary>A supervisory input.</summary>
    public static KeySet Input { get; } = new("a supervisory input", "name", "from", "to", "type", "undefined", "supervision");

    /// <summary>Line supervision.</summary>
    public static KeySet Supervision { get; } = new("a line supervision", "feed", "resistance", "windows", "elsewhere");

    /// <summary>A window of voltage.</summary>
    public static KeySet Window { get; } = new("a window", "state", "low", "high");

    /// <summary>Each group by the place it has in a plant file, as the JSON Schema names it.</summary>
    public static IReadOnlyDictionary<string, KeySet> ByPlaceInPlant { get; } = new Dictionary<string, KeySet>
    {
        ["wiring"] = Wiring,
        ["wiring.supplies[]"] = Supply,
        ["wiring.fuses[]"] = Fuse,
        ["wiring.wires[]"] = Wire,
        ["wiring.contacts[]"] = Contact,
        ["wiring.relays[]"] = Relay,
        ["wiring.lamps[]"] = Lamp,
        ["wiring.coils[]"] = Coil,
        ["wiring.coil-contacts[]"] = CoilContact,
        ["wiring.resistors[]"] = Resistor,
        ["wiring.inputs[]"] = Input,
        ["wiring.inputs[].supervision"] = Supervision,
        ["wiring.inputs[].supervision.windows[]"] = Window,
    };
}
