using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Checking;
using LubeController.Plant.Circuits;

namespace LubeController.Plant.Wiring;

/// <summary>What a wiring may not be.</summary>
public static class WiringCheck
{
    /// <summary>Looks a description through.</summary>
    /// <returns>What was found: refusals and warnings, none where all is well.</returns>
    public static IReadOnlyList<PlantFinding> Check(SupervisoryWiringDescription wiring)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        var findings = new Findings();
        Add(findings, "Wiring", wiring);
        return findings.All;
    }

    internal static void Add(Findings findings, string path, SupervisoryWiringDescription wiring)
    {
        if (wiring.Supplies.Count == 0)
            findings.Refuse(path + ".Supplies", "0", "one supply or more");
        var names = new HashSet<string>(StringComparer.Ordinal);
        var uses = new List<(string Path, string Terminal)>();
        void Part(string field, string name, string from, string to)
        {
            findings.Unique(path + field + ".Name", name, names);
            findings.Text(path + field + ".From", from);
            findings.Text(path + field + ".To", to);
            uses.Add((path + field + ".From", from));
            uses.Add((path + field + ".To", to));
            if (from == to)
                findings.Refuse(path + field + ".To", $"'{to}'", "another terminal than the first");
        }

        Each(wiring.Supplies, ".Supplies", (field, part) =>
        {
            Part(field, part.Name, part.Plus, part.Minus);
            findings.Range(path + field + ".VoltageV", part.VoltageV, 0.1, 60, "V");
            findings.Range(path + field + ".InsideOhms", part.InsideOhms, 1e-3, 1e3, "ohm");
        });
        Each(wiring.Fuses, ".Fuses", (field, part) =>
        {
            Part(field, part.Name, part.From, part.To);
            findings.Range(path + field + ".RatedA", part.RatedA, 1e-3, 100, "A");
            findings.Range(path + field + ".Ohms", part.Ohms, 1e-3, 1e3, "ohm");
        });
        Each(wiring.Wires, ".Wires", (field, part) =>
        {
            Part(field, part.Name, part.From, part.To);
            findings.Range(path + field + ".Ohms", part.Ohms, 1e-3, 1e3, "ohm");
        });
        Each(wiring.Contacts, ".Contacts", (field, part) =>
        {
            Part(field, part.Name, part.From, part.To);
            findings.Text(path + field + ".Output", part.Output);
            findings.Defined(path + field + ".Side", part.Side);
            findings.Range(path + field + ".ClosedOhms", part.ClosedOhms, Circuit.LeastOhms, 1e3, "ohm");
        });
        var moved = new HashSet<string>(StringComparer.Ordinal);
        Each(wiring.Relays, ".Relays", (field, relay) =>
        {
            if (wiring.Contacts.All(contact => contact.Output != relay.Output) || !moved.Add(relay.Output))
                findings.Refuse(path + field + ".Output", $"'{relay.Output}'", "an output that a contact names, once");
            findings.Range(path + field + ".OperateUs", relay.Contact.OperateUs, 0, 1_000_000, "us");
            findings.Range(path + field + ".ReleaseUs", relay.Contact.ReleaseUs, 0, 1_000_000, "us");
        });
        Each(wiring.Lamps, ".Lamps", (field, part) =>
        {
            Part(field, part.Name, part.From, part.To);
            findings.Range(path + field + ".RatedV", part.RatedV, 0.1, 60, "V");
            findings.Range(path + field + ".RatedW", part.RatedW, 1e-3, 100, "W");
        });
        Coils(findings, path, wiring, Part);
        Each(wiring.Resistors, ".Resistors", (field, part) =>
        {
            Part(field, part.Name, part.From, part.To);
            findings.Range(path + field + ".Ohms", part.Ohms, 1e-3, 1e9, "ohm");
        });
        Each(wiring.Inputs, ".Inputs", (field, part) =>
        {
            Part(field, part.Name, part.From, part.To);
            findings.Defined(path + field + ".Type", part.Type);
            findings.Defined(path + field + ".Undefined", part.Undefined);
            if (part.Supervision is { } supervision)
                Supervision(findings, path + field + ".Supervision", supervision);
        });
        foreach ((string place, string terminal) in uses.Where(use => uses.Count(other => other.Terminal == use.Terminal) == 1))
            findings.Refuse(place, $"'{terminal}'", "a terminal that another part names too");
    }

    private static void Coils(Findings findings, string path, SupervisoryWiringDescription wiring, Action<string, string, string, string> part)
    {
        Each(wiring.Coils, ".Coils", (field, coil) =>
        {
            part(field, coil.Name, coil.From, coil.To);
            findings.Range(path + field + ".Ohms", coil.Ohms, 1, 1e6, "ohm");
            findings.Range(path + field + ".PullInV", coil.PullInV, 0.1, 60, "V");
            if (!(coil.DropOutV > 0 && coil.DropOutV < coil.PullInV))
                findings.Refuse(path + field + ".DropOutV", Findings.Show(coil.DropOutV), $"above 0 and below {Findings.Show(coil.PullInV)} V, where it pulls in");
        });
        Each(wiring.CoilContacts, ".CoilContacts", (field, contact) =>
        {
            part(field, contact.Name, contact.From, contact.To);
            findings.Defined(path + field + ".Side", contact.Side);
            findings.Range(path + field + ".ClosedOhms", contact.ClosedOhms, Circuit.LeastOhms, 1e3, "ohm");
            if (wiring.Coils.All(coil => coil.Name != contact.Coil))
                findings.Refuse(path + field + ".Coil", $"'{contact.Coil}'", "the name of a coil");
        });
    }

    private static void Supervision(Findings findings, string path, LineSupervision supervision)
    {
        findings.Range(path + ".FeedV", supervision.FeedV, 0, 60, "V");
        findings.Range(path + ".Ohms", supervision.Ohms, 1, 1e6, "ohm");
        findings.Text(path + ".Elsewhere", supervision.Elsewhere);
        if (supervision.Windows.Count == 0)
            findings.Refuse(path + ".Windows", "0", "one window or more");
        VoltageWindow[] rising = [.. supervision.Windows.OrderBy(window => window.LowV)];
        for (int k = 0; k < rising.Length; k++)
        {
            findings.Text(path + ".Windows.State", rising[k].State);
            if (!(rising[k].HighV > rising[k].LowV))
                findings.Refuse(path + ".Windows", $"'{rising[k].State}' {Findings.Show(rising[k].LowV)} to {Findings.Show(rising[k].HighV)} V", "a window that ends above where it begins");
            if (k > 0 && rising[k].LowV < rising[k - 1].HighV)
                findings.Refuse(path + ".Windows", $"'{rising[k].State}' from {Findings.Show(rising[k].LowV)} V", $"from {Findings.Show(rising[k - 1].HighV)} V, where '{rising[k - 1].State}' ends");
        }
    }

    private static void Each<T>(IReadOnlyList<T> parts, string field, Action<string, T> check)
    {
        for (int index = 0; index < parts.Count; index++)
            check($"{field}[{index}]", parts[index]);
    }
}
