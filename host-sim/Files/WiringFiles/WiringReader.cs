using System.Collections.Generic;
using System.Linq;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Plant.Checking;
using LubeController.Plant.Contacts;
using LubeController.Plant.Inputs;
using LubeController.Plant.Wiring;

namespace LubeController.Files.WiringFiles;

/// <summary>Reads the wiring of a plant file, then judged as a whole by the wiring's own check.</summary>
internal sealed class WiringReader(MapReader group, ProblemList problems)
{
    private const int Most = 200;
    private const int LongestTerminal = 20;

    private static readonly string[] Sides = ["normally-open", "normally-closed"];
    private static readonly string[] Types = ["1", "2", "3"];

    /// <summary>The wiring of a plant file; null where there is none or a problem was added.</summary>
    public static SupervisoryWiringDescription? ReadInPlant(MapReader file, ProblemList problems) =>
        file.Group("wiring", WiringKeys.Wiring) is { } group ? new WiringReader(group, problems).Read() : null;

    private SupervisoryWiringDescription? Read()
    {
        int before = problems.Count;
        if (!group.Has("supplies"))
            group.Missing("supplies", "write for instance '- { name: G1, plus: 24V, minus: 0V, voltage: 24 V }'");
        if (!group.Has("inputs"))
            group.Missing("inputs", "write the inputs of the supervisory system, for instance '- { name: healthy, from: A1-1, to: 0V }'");
        var wiring = new SupervisoryWiringDescription
        {
            Supplies = [.. group.Groups("supplies", WiringKeys.Supply, Most).Select(Supply)],
            Fuses = [.. group.Groups("fuses", WiringKeys.Fuse, Most).Select(Fuse)],
            Wires = [.. group.Groups("wires", WiringKeys.Wire, Most).Select(Wire)],
            Contacts = [.. group.Groups("contacts", WiringKeys.Contact, Most).Select(Contact)],
            Relays = [.. group.Groups("relays", WiringKeys.Relay, Most).Select(Relay)],
            Lamps = [.. group.Groups("lamps", WiringKeys.Lamp, Most).Select(Lamp)],
            Coils = [.. group.Groups("coils", WiringKeys.Coil, Most).Select(Coil)],
            CoilContacts = [.. group.Groups("coil-contacts", WiringKeys.CoilContact, Most).Select(CoilContact)],
            Resistors = [.. group.Groups("resistors", WiringKeys.Resistor, Most).Select(Resistor)],
            Inputs = [.. group.Groups("inputs", WiringKeys.Input, Most).Select(Input)],
        };
        return problems.Count > before ? null : Judged(wiring);
    }

    private SupervisoryWiringDescription? Judged(SupervisoryWiringDescription wiring)
    {
        IReadOnlyList<PlantFinding> findings = WiringCheck.Check(wiring);
        foreach (PlantFinding finding in findings)
            problems.Add(WiringFindings.Tell(group.Map, finding));
        return findings.Count > 0 ? null : wiring;
    }

    private static WiringSupply Supply(MapReader part)
    {
        var plain = new WiringSupply(Name(part), Terminal(part, "plus"), Terminal(part, "minus"), part.Need("voltage", WiringRanges.Supply));
        return plain with { InsideOhms = part.Quantity("resistance", WiringRanges.Low)?.Si ?? plain.InsideOhms };
    }

    private static WiringFuse Fuse(MapReader part)
    {
        var plain = new WiringFuse(Name(part), Terminal(part, "from"), Terminal(part, "to"), part.Need("rating", WiringRanges.Rating));
        return plain with { Ohms = part.Quantity("resistance", WiringRanges.Low)?.Si ?? plain.Ohms };
    }

    private static WiringWire Wire(MapReader part)
    {
        var plain = new WiringWire(Name(part), Terminal(part, "from"), Terminal(part, "to"));
        return plain with { Ohms = part.Quantity("resistance", WiringRanges.Low)?.Si ?? plain.Ohms };
    }

    private static string Output(MapReader part)
    {
        if (!part.Has("output"))
            part.Missing("output", $"write one of: {string.Join(", ", WiringOutputs.All)}");
        return part.Choice("output", WiringOutputs.All) is { } known ? WiringOutputs.All[known] : "";
    }

    private static WiringRelay Relay(MapReader part) => new(Output(part), new OutputContactDescription
    {
        OperateUs = part.Quantity("operate", WiringRanges.Delay) is { } operate ? Microseconds.Of(operate) : 0,
        ReleaseUs = part.Quantity("release", WiringRanges.Delay) is { } release ? Microseconds.Of(release) : 0,
        Bounce = part.Choice("bounce", SensorReader.Bounces) switch
        {
            1 => BounceDescription.Usual,
            2 => BounceDescription.Reed,
            _ => BounceDescription.None,
        },
    });

    private static WiringContact Contact(MapReader part)
    {
        var plain = new WiringContact(Name(part), Output(part), Side(part), Terminal(part, "from"), Terminal(part, "to"));
        return plain with { ClosedOhms = part.Quantity("resistance", WiringRanges.Contact)?.Si ?? plain.ClosedOhms };
    }

    private static WiringLamp Lamp(MapReader part) => new(
        Name(part),
        Terminal(part, "from"),
        Terminal(part, "to"),
        part.Need("voltage", WiringRanges.Supply),
        part.Need("power", WiringRanges.Power));

    private static WiringCoil Coil(MapReader part) => new(
        Name(part),
        Terminal(part, "from"),
        Terminal(part, "to"),
        part.Need("resistance", WiringRanges.Burden),
        part.Need("pull-in", WiringRanges.Supply),
        part.Need("drop-out", WiringRanges.Feed));

    private static WiringCoilContact CoilContact(MapReader part)
    {
        var plain = new WiringCoilContact(Name(part), PlantNames.Need(part, "coil", "K10"), Side(part), Terminal(part, "from"), Terminal(part, "to"));
        return plain with { ClosedOhms = part.Quantity("resistance", WiringRanges.Contact)?.Si ?? plain.ClosedOhms };
    }

    private static WiringResistor Resistor(MapReader part) => new(
        Name(part), Terminal(part, "from"), Terminal(part, "to"), part.Need("resistance", WiringRanges.Part));

    private static SupervisoryInputDescription Input(MapReader part)
    {
        LineSupervision? supervision = part.Group("supervision", WiringKeys.Supervision) is { } line ? Supervision(line) : null;
        foreach (string key in (string[])["type", "undefined"])
        {
            if (supervision != null && part.Map.Find(key) is { } entry)
                part.Problems.Add(new Problem(entry.KeyPlace, part.Field(key), entry.Value.Shown, $"an input that supervises its line has no '{key}'", "delete it, or delete 'supervision'"));
        }

        var plain = new SupervisoryInputDescription { Name = Name(part), From = Terminal(part, "from"), To = Terminal(part, "to"), Supervision = supervision };
        return plain with
        {
            Type = part.Choice("type", Types) is { } type ? (InputType)type : plain.Type,
            Undefined = part.Choice("undefined", InputWords.Policies) is { } policy ? (UndefinedPolicy)policy : plain.Undefined,
        };
    }

    private static LineSupervision Supervision(MapReader line)
    {
        if (!line.Has("windows"))
            line.Missing("windows", "write for instance '- { state: normal, low: 3.5 V, high: 4.5 V }'");
        var plain = new LineSupervision
        {
            FeedV = line.Quantity("feed", WiringRanges.Feed)?.Si ?? 0,
            Ohms = line.Need("resistance", WiringRanges.Burden),
            Windows = [.. line.Groups("windows", WiringKeys.Window, Most).Select(Window)],
        };
        return line.Has("elsewhere") ? plain with { Elsewhere = PlantNames.Need(line, "elsewhere", "fault") } : plain;
    }

    private static VoltageWindow Window(MapReader window) => new(
        PlantNames.Need(window, "state", "normal"),
        window.Need("low", WiringRanges.Window),
        window.Need("high", WiringRanges.Window));

    private static string Name(MapReader part) => PlantNames.Need(part, "name", "W1");

    private static ContactSide Side(MapReader part)
    {
        if (!part.Has("side"))
            part.Missing("side", "write 'normally-open', closed while its relay is energised, or 'normally-closed'");
        return (ContactSide)(part.Choice("side", Sides) ?? 0);
    }

    private static string Terminal(MapReader part, string key)
    {
        if (!part.Has(key))
            part.Missing(key, $"write the name of a terminal, for instance '{key}: X1-2'");
        if (part.Single(key) is not { } node)
            return "";
        if (node.Text.Length <= LongestTerminal && node.Text.All(character => char.IsAsciiLetterOrDigit(character) || character is '-' or '+' or '.' or ':' or '/'))
            return node.Text;
        part.Problems.Add(node, $"a terminal has letters, digits and - + . : /, at most {LongestTerminal}", "write for instance 'X1-2'");
        return "";
    }
}
