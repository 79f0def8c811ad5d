using System;
using System.Collections.Generic;

namespace LubeController.Plant.Circuits;

/// <summary>
/// A wire: two halves with a point between them, where its insulation can fail. It breaks at its first end, so a broken wire
/// that also touches something touches it on the side of its second end.
/// </summary>
public sealed class Wire
{
    private readonly Circuit _circuit;
    private readonly List<(Wire Other, int Conductor)> _bridges = [];
    private readonly int _middle;
    private readonly int _firstHalf;
    private readonly int _secondHalf;
    private readonly int _toSupply;
    private readonly int _toGround;
    private readonly double _ohms;
    private double _extraOhms;
    private bool _broken;

    /// <summary>Adds a sound wire to a circuit.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="name">Name for messages.</param>
    /// <param name="from">Node of its first end.</param>
    /// <param name="to">Node of its second end.</param>
    /// <param name="ohms">Resistance, twice <see cref="Circuit.LeastOhms"/> or more.</param>
    public Wire(Circuit circuit, string name, int from, int to, double ohms)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        _circuit = circuit;
        _ohms = ohms;
        _middle = circuit.AddNode(name + "/middle");
        _firstHalf = circuit.AddConductor(name + "/first half", from, _middle, ohms / 2);
        _secondHalf = circuit.AddConductor(name + "/second half", _middle, to, ohms / 2);
        _toSupply = circuit.AddConductor(name + "/to supply", _middle, Circuit.Ground, double.PositiveInfinity);
        _toGround = circuit.AddConductor(name + "/to ground", _middle, Circuit.Ground, double.PositiveInfinity);
    }

    /// <summary>Breaks the wire at its first end, or mends it.</summary>
    public void SetBroken(bool broken)
    {
        _broken = broken;
        SetFirstHalf();
    }

    /// <summary>Adds a resistance at its first end, ohm, as a corroded terminal does; 0 heals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is negative.</exception>
    public void SetExtraOhms(double extraOhms)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(extraOhms);
        _extraOhms = extraOhms;
        SetFirstHalf();
    }

    /// <summary>Lets two wires touch; infinite ohms part them. The first time that two wires touch allocates.</summary>
    /// <exception cref="ArgumentException">Both are the same wire.</exception>
    public void SetBridge(Wire other, double ohms)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (ReferenceEquals(this, other))
            throw new ArgumentException("a wire cannot be bridged to itself: name another", nameof(other));
        foreach ((Wire bridged, int conductor) in _bridges)
        {
            if (ReferenceEquals(bridged, other))
            {
                _circuit.SetOhms(conductor, ohms);
                return;
            }
        }

        int bridge = _circuit.AddConductor("bridge", _middle, other._middle, ohms);
        _bridges.Add((other, bridge));
        other._bridges.Add((this, bridge));
    }

    /// <summary>Lets the wire touch a supply's node; infinite ohms part them.</summary>
    public void SetToSupply(int supplyNode, double ohms)
    {
        _circuit.Reconnect(_toSupply, _middle, supplyNode);
        _circuit.SetOhms(_toSupply, ohms);
    }

    /// <summary>Lets the wire touch ground; infinite ohms part them.</summary>
    public void SetToGround(double ohms) => _circuit.SetOhms(_toGround, ohms);

    /// <summary>Moves both ends to other nodes, as swapped cores do.</summary>
    public void Move(int from, int to)
    {
        _circuit.Reconnect(_firstHalf, from, _middle);
        _circuit.Reconnect(_secondHalf, _middle, to);
    }

    private void SetFirstHalf() => _circuit.SetOhms(_firstHalf, _broken ? double.PositiveInfinity : (_ohms / 2) + _extraOhms);
}
