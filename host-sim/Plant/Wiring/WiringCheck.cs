using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;

namespace LubeController.Plant.Wiring;

/// <summary>What a wiring may not be as a whole: names and terminals that do not fit together.</summary>
public static class WiringCheck
{
    /// <summary>Looks a description through.</summary>
    /// <returns>What was found, paths beginning with <c>wiring</c>; none where all is well.</returns>
    public static IReadOnlyList<PlantFinding> Check(SupervisoryWiringDescription wiring)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        var findings = new Findings();
        WiringFields.All.Check(findings, "wiring", wiring);
        return findings.All;
    }

    internal static void Add(Findings findings, string path, SupervisoryWiringDescription wiring)
    {
        string prefix = path.Length == 0 ? "" : path + ".";
        (string Path, string Name, string From, string To)[] parts =
        [
            .. wiring.Supplies.Select((part, index) => ($"{prefix}supplies[{index}]", part.Name, part.Plus, part.Minus)),
            .. wiring.Fuses.Select((part, index) => ($"{prefix}fuses[{index}]", part.Name, part.From, part.To)),
            .. wiring.Wires.Select((part, index) => ($"{prefix}wires[{index}]", part.Name, part.From, part.To)),
            .. wiring.Contacts.Select((part, index) => ($"{prefix}contacts[{index}]", part.Name, part.From, part.To)),
            .. wiring.Lamps.Select((part, index) => ($"{prefix}lamps[{index}]", part.Name, part.From, part.To)),
            .. wiring.Coils.Select((part, index) => ($"{prefix}coils[{index}]", part.Name, part.From, part.To)),
            .. wiring.CoilContacts.Select((part, index) => ($"{prefix}coil-contacts[{index}]", part.Name, part.From, part.To)),
            .. wiring.Resistors.Select((part, index) => ($"{prefix}resistors[{index}]", part.Name, part.From, part.To)),
            .. wiring.Inputs.Select((part, index) => ($"{prefix}inputs[{index}]", part.Name, part.From, part.To)),
        ];
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach ((string part, string name, string from, string to) in parts)
        {
            findings.Unique($"{part}.name", name, names);
            if (from == to)
                findings.Refuse(To(part), $"'{to}'", "another terminal than the first");
        }

        Relays(findings, prefix, wiring);
        Dictionary<string, int> uses = parts.SelectMany(part => (string[])[part.From, part.To]).GroupBy(terminal => terminal, StringComparer.Ordinal).ToDictionary(use => use.Key, use => use.Count(), StringComparer.Ordinal);
        foreach ((string part, _, string from, string to) in parts)
        {
            if (uses[from] == 1)
                findings.Refuse(From(part), $"'{from}'", "a terminal that another part names too");
            if (uses[to] == 1)
                findings.Refuse(To(part), $"'{to}'", "a terminal that another part names too");
        }

        string From(string part) => part.StartsWith($"{prefix}supplies", StringComparison.Ordinal) ? $"{part}.plus" : $"{part}.from";
        string To(string part) => part.StartsWith($"{prefix}supplies", StringComparison.Ordinal) ? $"{part}.minus" : $"{part}.to";
    }

    private static void Relays(Findings findings, string prefix, SupervisoryWiringDescription wiring)
    {
        var moved = new HashSet<string>(StringComparer.Ordinal);
        for (int index = 0; index < wiring.Relays.Count; index++)
        {
            string output = wiring.Relays[index].Output;
            if (wiring.Contacts.All(contact => contact.Output != output) || !moved.Add(output))
                findings.Refuse($"{prefix}relays[{index}].output", $"'{output}'", "an output that a contact names, once");
        }

        for (int index = 0; index < wiring.CoilContacts.Count; index++)
        {
            string coil = wiring.CoilContacts[index].Coil;
            if (wiring.Coils.All(one => one.Name != coil))
                findings.Refuse($"{prefix}coil-contacts[{index}].coil", $"'{coil}'", "the name of a coil");
        }
    }
}
