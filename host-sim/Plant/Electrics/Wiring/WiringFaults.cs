using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Faults;

namespace LubeController.Plant.Electrics.Wiring;

/// <summary>Every kind of wiring fault: its parts, and what it does to a wiring. All of them heal.</summary>
public static class WiringFaults
{
    /// <summary>Stands between the two wires of a bridge in its part's name.</summary>
    public const char Bridge = '+';

    private const string Flow = "a current through the part, or a voltage across it, that the sound one would not leave so";

    private static readonly FaultParameter Touch = new("resistance", "resistance where they touch", "ohm", 1e-3, 1e6, 0.1);
    private static readonly FaultParameter Series = new("resistance", "resistance added", "ohm", 1e-3, 1e9, 10_000);

    /// <summary>All kinds, in the order of <see cref="WiringFaultKind"/>.</summary>
    public static IReadOnlyList<WiringFaultInfo> All { get; } =
    [
        new(WiringFaultKind.WireOpen, "wire-open", "the wire", FaultManner.Off, "The wire conducts no more.", "A wire out of its terminal, or nothing.", Flow, null),
        new(WiringFaultKind.WireResistive, "wire-resistive", "the wire", FaultManner.Wrong, "The wire has a resistance more.", "A green or brown terminal, warm under load.", Flow, Series),
        new(WiringFaultKind.WireBridged, "wire-bridged", "two wires", FaultManner.Wrong, "Two wires touch.", "Crushed or chafed cable, water in a box.", Flow, Touch) { HealingNote = "Parted at once when repaired; a fuse that blew stays blown." },
        new(WiringFaultKind.WireShortedToSupply, "wire-shorted-to-supply", "the wire", FaultManner.Wrong, "The wire touches the supply's plus.", "Crushed or chafed cable, a lamp that never goes out.", Flow, Touch) { HealingNote = "Parted at once when repaired; a fuse that blew stays blown." },
        new(WiringFaultKind.WireShortedToGround, "wire-shorted-to-ground", "the wire", FaultManner.Wrong, "The wire touches ground.", "Crushed or chafed cable, a blown fuse.", Flow, Touch) { HealingNote = "Parted at once when repaired; a fuse that blew stays blown." },
        new(WiringFaultKind.ContactWelded, "contact-welded", "the contact", FaultManner.Stuck, "The contact stays closed and holds the other side open.", "A relay that clicks without effect.", Flow, null) { HealingNote = "Follows its relay again at once when replaced." },
        new(WiringFaultKind.ContactResistive, "contact-resistive", "the contact", FaultManner.Wrong, "The closed contact has a resistance more.", "A lamp that glows dimly, or nothing.", Flow, Series),
        new(WiringFaultKind.LampBlown, "lamp-blown", "the lamp", FaultManner.Off, "The lamp conducts no more.", "A lamp that stays dark.", Flow, null) { HealingNote = "Lights again at once when replaced." },
        new(WiringFaultKind.FuseBlown, "fuse-blown", "the fuse", FaultManner.Off, "The fuse conducts no more.", "Everything behind it is dead.", Flow, null) { HealingNote = "Conducts again at once when replaced; it blows again if its cause persists." },
    ];

    /// <summary>The kind of a name, or null.</summary>
    public static WiringFaultInfo? Find(string name) => All.FirstOrDefault(info => info.Name == name);

    /// <summary>What is known of a kind.</summary>
    public static WiringFaultInfo Of(WiringFaultKind kind) => All[(int)kind];

    /// <summary>The parts of a wiring that can have a kind of fault; a bridge has two wires, joined by <see cref="Bridge"/>.</summary>
    public static IReadOnlyList<string> PartNames(WiringFaultKind kind, SupervisoryWiringDescription wiring)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        return kind switch
        {
            WiringFaultKind.WireBridged => [.. Pairs(wiring)],
            WiringFaultKind.ContactWelded or WiringFaultKind.ContactResistive => [.. wiring.Contacts.Select(part => part.Name)],
            WiringFaultKind.LampBlown => [.. wiring.Lamps.Select(part => part.Name)],
            WiringFaultKind.FuseBlown => [.. wiring.Fuses.Select(part => part.Name)],
            _ => [.. wiring.Wires.Select(part => part.Name)],
        };
    }

    /// <summary>Sets a fault.</summary>
    /// <param name="wiring">The wiring.</param>
    /// <param name="kind">The fault.</param>
    /// <param name="part">The part, one of <see cref="PartNames"/>.</param>
    /// <param name="ohms">Its resistance; the preset where null, nothing where it has none.</param>
    /// <exception cref="ArgumentException">No such part.</exception>
    public static void Apply(SupervisoryWiring wiring, WiringFaultKind kind, string part, double? ohms = null) =>
        Put(wiring, kind, part, on: true, ohms ?? Of(kind).Parameter?.Default ?? 0);

    /// <summary>Takes a fault away.</summary>
    /// <exception cref="ArgumentException">No such part.</exception>
    public static void Heal(SupervisoryWiring wiring, WiringFaultKind kind, string part) => Put(wiring, kind, part, on: false, 0);

    private static void Put(SupervisoryWiring wiring, WiringFaultKind kind, string part, bool on, double ohms)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        SupervisoryWiringDescription parts = wiring.Description;
        double touch = on ? ohms : double.PositiveInfinity;
        switch (kind)
        {
            case WiringFaultKind.WireOpen:
                wiring.SetWireBroken(Wire(parts, part), on);
                break;
            case WiringFaultKind.WireResistive:
                wiring.SetWireOhms(Wire(parts, part), on ? ohms : 0);
                break;
            case WiringFaultKind.WireBridged:
                string[] pair = part.Split(Bridge);
                wiring.SetWireBridge(Wire(parts, pair[0]), Wire(parts, pair[^1]), touch);
                break;
            case WiringFaultKind.WireShortedToSupply:
                wiring.SetWireToSupply(Wire(parts, part), touch);
                break;
            case WiringFaultKind.WireShortedToGround:
                wiring.SetWireToGround(Wire(parts, part), touch);
                break;
            case WiringFaultKind.ContactWelded:
                wiring.SetContactWelded(Index(parts.Contacts, contact => contact.Name, part), on);
                break;
            case WiringFaultKind.ContactResistive:
                wiring.SetContactOhms(Index(parts.Contacts, contact => contact.Name, part), on ? ohms : 0);
                break;
            case WiringFaultKind.LampBlown:
                wiring.SetLampBlown(Index(parts.Lamps, lamp => lamp.Name, part), on);
                break;
            default:
                wiring.SetFuseBlown(Index(parts.Fuses, fuse => fuse.Name, part), on);
                break;
        }
    }

    private static IEnumerable<string> Pairs(SupervisoryWiringDescription wiring)
    {
        for (int first = 0; first < wiring.Wires.Count; first++)
        {
            for (int second = first + 1; second < wiring.Wires.Count; second++)
                yield return wiring.Wires[first].Name + Bridge + wiring.Wires[second].Name;
        }
    }

    private static int Wire(SupervisoryWiringDescription parts, string name) => Index(parts.Wires, wire => wire.Name, name);

    private static int Index<T>(IReadOnlyList<T> parts, Func<T, string> nameOf, string name)
    {
        for (int index = 0; index < parts.Count; index++)
        {
            if (nameOf(parts[index]) == name)
                return index;
        }

        throw new ArgumentException($"the wiring has no such part '{name}'", nameof(name));
    }
}
