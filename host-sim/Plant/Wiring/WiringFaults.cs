using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Faults;

namespace LubeController.Plant.Wiring;

/// <summary>Every kind of wiring fault: its parts, and what it does to a wiring. All of them heal.</summary>
public static class WiringFaults
{
    /// <summary>Stands between the two wires of a bridge in its part's name.</summary>
    public const char Bridge = '+';

    /// <summary>Every kind, in the order of the registry.</summary>
    public static IReadOnlyList<FaultKind> All { get; } =
    [
        FaultKind.WireOpen, FaultKind.WireResistive, FaultKind.WireBridged, FaultKind.WireShortedToSupply, FaultKind.WireShortedToGround,
        FaultKind.ContactWelded, FaultKind.ContactResistive, FaultKind.LampBlown, FaultKind.FuseBlown,
    ];

    /// <summary>The parts of a wiring that can have a kind of fault; a bridge has two wires, joined by <see cref="Bridge"/>.</summary>
    public static IReadOnlyList<string> PartNames(FaultKind kind, SupervisoryWiringDescription wiring)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        return kind switch
        {
            FaultKind.WireBridged => [.. Pairs(wiring)],
            FaultKind.ContactWelded or FaultKind.ContactResistive => [.. wiring.Contacts.Select(part => part.Name)],
            FaultKind.LampBlown => [.. wiring.Lamps.Select(part => part.Name)],
            FaultKind.FuseBlown => [.. wiring.Fuses.Select(part => part.Name)],
            _ => [.. wiring.Wires.Select(part => part.Name)],
        };
    }

    /// <summary>Sets a fault.</summary>
    /// <param name="wiring">The wiring.</param>
    /// <param name="kind">The fault.</param>
    /// <param name="part">The part, one of <see cref="PartNames"/>.</param>
    /// <param name="ohms">Its resistance; the preset where null, nothing where it has none.</param>
    /// <exception cref="ArgumentException">No such part, or a fault of something else.</exception>
    public static void Apply(SupervisoryWiring wiring, FaultKind kind, string part, double? ohms = null) =>
        Put(wiring, kind, part, on: true, ohms ?? FaultCatalogue.Of(kind).Parameter?.Default ?? 0);

    /// <summary>Takes a fault away.</summary>
    /// <exception cref="ArgumentException">No such part.</exception>
    public static void Heal(SupervisoryWiring wiring, FaultKind kind, string part) => Put(wiring, kind, part, on: false, 0);

    private static void Put(SupervisoryWiring wiring, FaultKind kind, string part, bool on, double ohms)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        SupervisoryWiringDescription parts = wiring.Description;
        double touch = on ? ohms : double.PositiveInfinity;
        switch (kind)
        {
            case FaultKind.WireOpen:
                wiring.SetWireBroken(Wire(parts, part), on);
                break;
            case FaultKind.WireResistive:
                wiring.SetWireOhms(Wire(parts, part), on ? ohms : 0);
                break;
            case FaultKind.WireBridged:
                string[] pair = part.Split(Bridge);
                wiring.SetWireBridge(Wire(parts, pair[0]), Wire(parts, pair[^1]), touch);
                break;
            case FaultKind.WireShortedToSupply:
                wiring.SetWireToSupply(Wire(parts, part), touch);
                break;
            case FaultKind.WireShortedToGround:
                wiring.SetWireToGround(Wire(parts, part), touch);
                break;
            case FaultKind.ContactWelded:
                wiring.SetContactWelded(Index(parts.Contacts, contact => contact.Name, part), on);
                break;
            case FaultKind.ContactResistive:
                wiring.SetContactOhms(Index(parts.Contacts, contact => contact.Name, part), on ? ohms : 0);
                break;
            case FaultKind.LampBlown:
                wiring.SetLampBlown(Index(parts.Lamps, lamp => lamp.Name, part), on);
                break;
            case FaultKind.FuseBlown:
                wiring.SetFuseBlown(Index(parts.Fuses, fuse => fuse.Name, part), on);
                break;
            default:
                throw new ArgumentException($"{kind} is no fault of a wiring", nameof(kind));
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
