using System;
using System.Collections.Generic;

namespace LubeController.Plant.Circuits;

/// <summary>The nodes and elements of a circuit, and whether any of them changed since the circuit was last solved.</summary>
internal sealed class Netlist
{
    private readonly List<string> _nodes = ["0"];

    internal int NodeCount => _nodes.Count;

    internal List<Element> Elements { get; } = [];

    internal bool Changed { get; set; } = true;

    internal int AddNode(string name)
    {
        _nodes.Add(name);
        Changed = true;
        return _nodes.Count - 1;
    }

    internal int Add(string name, ElementKind kind, int a, int b)
    {
        Check(a);
        Check(b);
        Elements.Add(new Element(name, kind, a, b));
        Changed = true;
        return Elements.Count - 1;
    }

    internal void SetVoltage(int source, double volts, double seriesOhms)
    {
        Element element = Find(source, ElementKind.VoltageSource);
        if (!double.IsFinite(volts))
            throw new ArgumentOutOfRangeException(nameof(volts), volts, "a finite voltage is needed");
        ArgumentOutOfRangeException.ThrowIfNegative(seriesOhms);
        Changed |= element.Value != volts || element.SeriesOhms != seriesOhms;
        element.Value = volts;
        element.SeriesOhms = seriesOhms;
    }

    internal void SetCurrent(int source, double amps)
    {
        Element element = Find(source, ElementKind.CurrentSource);
        if (!double.IsFinite(amps))
            throw new ArgumentOutOfRangeException(nameof(amps), amps, "a finite current is needed");
        Changed |= element.Value != amps;
        element.Value = amps;
    }

    internal void SetOhms(int conductor, double ohms)
    {
        Element element = Find(conductor, ElementKind.Conductor);
        if (!(ohms >= Circuit.LeastOhms))
            throw new ArgumentOutOfRangeException(nameof(ohms), ohms, $"'{element.Name}' needs {Circuit.LeastOhms} ohm or more");
        double conductance = 1 / ohms;
        Changed |= element.ConductanceS != conductance;
        element.ConductanceS = conductance;
    }

    internal void SetCurve(int index, PiecewiseCurve curve)
    {
        ArgumentNullException.ThrowIfNull(curve);
        Element element = Find(index, ElementKind.Curve);
        Changed |= !ReferenceEquals(element.Curve, curve);
        element.Curve = curve;
    }

    internal void SetRemoved(int index, bool removed)
    {
        Element element = Elements[index];
        if (element.Kind is ElementKind.Conductor)
            throw new ArgumentException($"'{element.Name}' is a conductor: open it instead", nameof(index));
        Changed |= element.Removed != removed;
        element.Removed = removed;
    }

    internal void Reconnect(int index, int a, int b)
    {
        Check(a);
        Check(b);
        Element element = Elements[index];
        Changed |= element.A != a || element.B != b;
        element.A = a;
        element.B = b;
    }

    private void Check(int node)
    {
        if (node < 0 || node >= _nodes.Count)
            throw new ArgumentOutOfRangeException(nameof(node), node, $"there are nodes 0 to {_nodes.Count - 1}");
    }

    private Element Find(int index, ElementKind kind)
    {
        Element element = Elements[index];
        return element.Kind == kind ? element : throw new ArgumentException($"'{element.Name}' is a {element.Kind}, not a {kind}", nameof(index));
    }
}
