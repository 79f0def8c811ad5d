using System;
using System.Collections.Generic;

namespace LubeController.Plant.Circuits;

public sealed partial class Circuit
{
    private readonly List<Wire> _wires = [];
    private readonly List<WireBridge> _bridges = [];

    /// <summary>Number of wires.</summary>
    public int WireCount => _wires.Count;

    /// <summary>
    /// Adds a wire. What fails in it fails in its middle, except that it breaks at its first end: a broken wire that also
    /// touches something touches it on the side of its second end.
    /// </summary>
    /// <param name="name">Name for messages.</param>
    /// <param name="from">Node of its first end.</param>
    /// <param name="to">Node of its second end.</param>
    /// <param name="ohms">Resistance when whole, twice <see cref="LeastOhms"/> or more.</param>
    /// <returns>Its number among the wires.</returns>
    public int AddWire(string name, int from, int to, double ohms)
    {
        int middle = AddNode(name + "/middle");
        var wire = new Wire(middle, ohms)
        {
            FirstHalf = AddConductor(name + "/first half", from, middle, ohms / 2),
            SecondHalf = AddConductor(name + "/second half", middle, to, ohms / 2),
            ToSupply = AddConductor(name + "/to supply", middle, Ground, double.PositiveInfinity),
            ToGround = AddConductor(name + "/to ground", middle, Ground, double.PositiveInfinity),
        };
        _wires.Add(wire);
        return _wires.Count - 1;
    }

    /// <summary>Current through a wire at its first end, towards its second, A.</summary>
    public double WireCurrentA(int wire) => CurrentA(_wires[wire].FirstHalf);

    /// <summary>Breaks a wire at its first end, or mends it.</summary>
    public void SetWireBroken(int wire, bool broken)
    {
        _wires[wire].Broken = broken;
        SetFirstHalf(_wires[wire]);
    }

    /// <summary>Adds a resistance at the first end of a wire, as a corroded terminal does; 0 heals.</summary>
    public void SetWireOhms(int wire, double extraOhms)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(extraOhms);
        _wires[wire].ExtraOhms = extraOhms;
        SetFirstHalf(_wires[wire]);
    }

    /// <summary>Lets two wires touch; infinite parts them. The first time that two wires touch allocates.</summary>
    public void SetWireBridge(int wire, int other, double ohms)
    {
        if (wire == other)
            throw new ArgumentException("a wire cannot be bridged to itself: name another", nameof(other));
        foreach (WireBridge bridge in _bridges)
        {
            if (bridge.Joins(wire) && bridge.Joins(other))
            {
                SetOhms(bridge.Conductor, ohms);
                return;
            }
        }

        int conductor = AddConductor("bridge", _wires[wire].Middle, _wires[other].Middle, ohms);
        _bridges.Add(new WireBridge(wire, other, conductor));
    }

    /// <summary>Lets a wire touch a supply's node; infinite parts them.</summary>
    public void SetWireToSupply(int wire, int supplyNode, double ohms)
    {
        Reconnect(_wires[wire].ToSupply, _wires[wire].Middle, supplyNode);
        SetOhms(_wires[wire].ToSupply, ohms);
    }

    /// <summary>Lets a wire touch ground; infinite parts them.</summary>
    public void SetWireToGround(int wire, double ohms) => SetOhms(_wires[wire].ToGround, ohms);

    /// <summary>Makes a wire whole again: nothing broken, nothing touching it.</summary>
    public void HealWire(int wire)
    {
        SetWireOhms(wire, 0);
        SetWireBroken(wire, false);
        SetOhms(_wires[wire].ToSupply, double.PositiveInfinity);
        SetOhms(_wires[wire].ToGround, double.PositiveInfinity);
        foreach (WireBridge bridge in _bridges)
        {
            if (bridge.Joins(wire))
                SetOhms(bridge.Conductor, double.PositiveInfinity);
        }
    }

    /// <summary>Moves the ends of a wire, as swapped cores do.</summary>
    public void MoveWire(int wire, int from, int to)
    {
        Wire found = _wires[wire];
        Reconnect(found.FirstHalf, from, found.Middle);
        Reconnect(found.SecondHalf, found.Middle, to);
    }

    private void SetFirstHalf(Wire wire) =>
        SetOhms(wire.FirstHalf, wire.Broken ? double.PositiveInfinity : (wire.Ohms / 2) + wire.ExtraOhms);
}
