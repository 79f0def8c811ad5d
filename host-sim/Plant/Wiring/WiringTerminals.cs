using System;
using System.Collections.Generic;
using LubeController.Plant.Circuits;

namespace LubeController.Plant.Wiring;

/// <summary>The terminals that the parts of a wiring name, each a node of its circuit; the first is ground.</summary>
internal sealed class WiringTerminals
{
    private readonly Circuit _circuit;
    private readonly Dictionary<string, int> _nodeOf = new(StringComparer.Ordinal);
    private readonly List<int> _nodes = [];

    internal WiringTerminals(Circuit circuit, string ground)
    {
        _circuit = circuit;
        _nodeOf.Add(ground, Circuit.Ground);
        _nodes.Add(Circuit.Ground);
    }

    internal int Count => _nodes.Count;

    /// <summary>The node of a terminal, added to the circuit at its first mention.</summary>
    internal int Node(string terminal)
    {
        if (!_nodeOf.TryGetValue(terminal, out int node))
        {
            node = _circuit.AddNode(terminal);
            _nodeOf.Add(terminal, node);
            _nodes.Add(node);
        }

        return node;
    }

    /// <summary>Voltage of a terminal against ground, V; not a number where it floats.</summary>
    /// <exception cref="ArgumentException">No part names that terminal.</exception>
    internal double VoltageV(string terminal) => _nodeOf.TryGetValue(terminal, out int node)
        ? _circuit.VoltageV(node)
        : throw new ArgumentException($"no part of the wiring names terminal '{terminal}'", nameof(terminal));

    /// <summary>Voltage of a terminal by its number, V; 0 where it floats, for it drives nothing, as one at ground does.</summary>
    internal double DrivenV(int terminal) => _circuit.IsFloating(_nodes[terminal]) ? 0 : _circuit.VoltageV(_nodes[terminal]);
}
