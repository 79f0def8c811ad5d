using System;
using System.Collections.Generic;

namespace LubeController.Plant.Circuits;

/// <summary>Which nodes hang together through elements that connect: an island without the ground node floats.</summary>
internal sealed class Islands
{
    private int[] _parent = [];

    internal void Find(int nodes, List<Element> elements)
    {
        Separate(nodes);
        for (int index = 0; index < elements.Count; index++)
        {
            if (elements[index].Connects)
                Join(elements[index].A, elements[index].B);
        }
    }

    /// <summary>The lowest node of the island that a node lies on; ground's island has node 0.</summary>
    internal int ReferenceOf(int node)
    {
        while (_parent[node] != node)
        {
            _parent[node] = _parent[_parent[node]];
            node = _parent[node];
        }

        return node;
    }

    /// <summary>Refuses ideal sources in a ring: the current in it would be anything at all.</summary>
    /// <exception cref="CircuitException">There is such a ring.</exception>
    internal void RefuseIdealRings(int nodes, List<Element> elements)
    {
        Separate(nodes);
        for (int index = 0; index < elements.Count; index++)
        {
            Element element = elements[index];
            if (element.Kind != ElementKind.VoltageSource || element.Removed || element.SeriesOhms > 0)
                continue;
            if (!Join(element.A, element.B))
                throw new CircuitException($"voltage source '{element.Name}' closes a ring of sources without resistance: give one of them a resistance above 0 ohm");
        }
    }

    private void Separate(int nodes)
    {
        if (_parent.Length < nodes)
            _parent = new int[nodes];
        for (int node = 0; node < nodes; node++)
            _parent[node] = node;
    }

    private bool Join(int a, int b)
    {
        int first = ReferenceOf(a);
        int second = ReferenceOf(b);
        if (first == second)
            return false;
        _parent[Math.Max(first, second)] = Math.Min(first, second);
        return true;
    }
}
