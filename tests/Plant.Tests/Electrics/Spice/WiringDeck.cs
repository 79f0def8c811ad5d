using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Circuits;
using LubeController.Plant.Contacts;
using LubeController.Plant.Inputs;
using LubeController.Plant.Wiring;

namespace LubeController.Plant.Tests.Electrics.Spice;

/// <summary>
/// Writes the netlist of a wiring from its description alone, and steps fuses and relays from what ngspice answers: it
/// shares no code with the solver under test but the curves of lamps and inputs.
/// </summary>
internal sealed class WiringDeck(WiringCase facts)
{
    private readonly Dictionary<string, string> _nodes = new(StringComparer.Ordinal);
    private readonly HashSet<string> _blown = [];
    private readonly HashSet<string> _pulledIn = [];

    internal IReadOnlyDictionary<string, string> Nodes => _nodes;

    internal string Write(string shuntOhms = "1e12")
    {
        SupervisoryWiringDescription wiring = facts.Wiring;
        var deck = new Deck();
        _nodes[wiring.Supplies[0].Minus] = "0";
        foreach (WiringSupply part in wiring.Supplies)
            deck.VoltageSource(Node(part.Plus), Node(part.Minus), part.VoltageV, part.InsideOhms);
        foreach (WiringFuse part in wiring.Fuses.Where(part => !_blown.Contains(part.Name)))
            deck.Resistor(Node(part.From), Node(part.To), part.Ohms);
        for (int wire = 0; wire < wiring.Wires.Count; wire++)
            WriteWire(deck, wire);
        foreach (WiringContact part in wiring.Contacts.Where(part => facts.Energised.Contains(part.Output) == (part.Side == ContactSide.NormallyOpen)))
            deck.Resistor(Node(part.From), Node(part.To), part.ClosedOhms);
        foreach (WiringLamp part in wiring.Lamps)
            deck.Curve(Node(part.From), Node(part.To), Curves.Lamp(part.RatedV, part.RatedW));
        foreach (WiringCoil part in wiring.Coils)
            deck.Resistor(Node(part.From), Node(part.To), part.Ohms);
        foreach (WiringCoilContact part in wiring.CoilContacts.Where(part => _pulledIn.Contains(part.Coil) == (part.Side == ContactSide.NormallyOpen)))
            deck.Resistor(Node(part.From), Node(part.To), part.ClosedOhms);
        foreach (WiringResistor part in wiring.Resistors)
            deck.Resistor(Node(part.From), Node(part.To), part.Ohms);
        foreach (SupervisoryInputDescription part in wiring.Inputs)
            WriteInput(deck, part);
        return deck.Finish(shuntOhms);
    }

    /// <summary>Blows the worst fuse, or else moves relays.</summary>
    /// <returns>Whether anything changed, so that the deck must be run again.</returns>
    internal bool Step(Dictionary<string, double> answer)
    {
        WiringFuse? worst = facts.Wiring.Fuses
            .Where(part => !_blown.Contains(part.Name) && Load(part, answer) > 1)
            .MaxBy(part => Load(part, answer));
        if (worst != null)
            return _blown.Add(worst.Name);
        bool moved = false;
        foreach (WiringCoil part in facts.Wiring.Coils)
        {
            double across = Math.Abs(At(part.From, answer) - At(part.To, answer));
            bool isIn = _pulledIn.Contains(part.Name);
            if (isIn ? across <= part.DropOutV : across >= part.PullInV)
                moved |= isIn ? _pulledIn.Remove(part.Name) : _pulledIn.Add(part.Name);
        }

        return moved;
    }

    /// <summary>Voltage of a terminal; not a number where nothing in the netlist leads to it.</summary>
    internal double At(string terminal, Dictionary<string, double> answer) =>
        Node(terminal) is "0" ? 0 : answer.TryGetValue(Node(terminal), out double volts) ? volts : double.NaN;

    private double Load(WiringFuse part, Dictionary<string, double> answer) =>
        Math.Abs(At(part.From, answer) - At(part.To, answer)) / part.Ohms / part.RatedA;

    private void WriteWire(Deck deck, int wire)
    {
        WiringWire part = facts.Wiring.Wires[wire];
        string middle = "m" + wire;
        WireFault fault = facts.Wire == wire ? facts.Fault : WireFault.None;
        if (fault != WireFault.Open)
            deck.Resistor(Node(part.From), middle, (part.Ohms / 2) + (fault == WireFault.Resistive ? facts.Ohms : 0));
        deck.Resistor(middle, Node(part.To), part.Ohms / 2);
        if (fault == WireFault.Bridged)
            deck.Resistor(middle, "m" + facts.Other, facts.Ohms);
        else if (fault == WireFault.ToSupply)
            deck.Resistor(middle, Node(facts.Wiring.Supplies[0].Plus), facts.Ohms);
        else if (fault == WireFault.ToGround)
            deck.Resistor(middle, "0", facts.Ohms);
    }

    private void WriteInput(Deck deck, SupervisoryInputDescription part)
    {
        if (part.Supervision is not { } supervision)
            deck.Curve(Node(part.From), Node(part.To), InputCurves.Of(part.Type));
        else if (supervision.FeedV > 0)
            deck.VoltageSource(Node(part.From), Node(part.To), supervision.FeedV, supervision.Ohms);
        else
            deck.Resistor(Node(part.From), Node(part.To), supervision.Ohms);
    }

    private string Node(string terminal)
    {
        if (!_nodes.TryGetValue(terminal, out string? node))
        {
            node = "t" + _nodes.Count;
            _nodes[terminal] = node;
        }

        return node;
    }
}
