using System;
using System.Collections.Generic;

namespace LubeController.Plant.Circuits;

/// <summary>
/// A small direct-current circuit, solved by modified nodal analysis (Ho, Ruehli and Brennan 1975, from memory). Elements
/// are added once and changed at will; <see cref="Solve"/> finds the one state that all of them agree on, and allocates
/// nothing once the circuit has been solved for the first time. The answer depends on the elements alone, not on what was
/// solved before, except for relays, which have a memory by nature, and for blown fuses.
/// </summary>
public sealed partial class Circuit
{
    /// <summary>The node that every voltage is told against.</summary>
    public const int Ground = 0;

    /// <summary>Least resistance of a conductor, ohm: less would cost digits and mean nothing.</summary>
    public const double LeastOhms = 1e-4;

    private readonly List<string> _nodes = ["0"];
    private readonly List<Element> _elements = [];
    private readonly List<Fuse> _fuses = [];
    private readonly List<Coil> _coils = [];
    private bool _changed = true;

    /// <summary>Number of nodes, ground among them.</summary>
    public int NodeCount => _nodes.Count;

    /// <summary>Number of elements.</summary>
    public int ElementCount => _elements.Count;

    /// <summary>The two nodes of an element.</summary>
    public (int A, int B) EndsOf(int index) => (_elements[index].A, _elements[index].B);

    /// <summary>Adds a node.</summary>
    /// <returns>Its number.</returns>
    public int AddNode(string name)
    {
        _nodes.Add(name);
        _changed = true;
        return _nodes.Count - 1;
    }

    /// <summary>Adds a voltage source; in series with a resistance, or ideal.</summary>
    /// <param name="name">Name for messages.</param>
    /// <param name="plus">Node at the voltage.</param>
    /// <param name="minus">Node that the voltage counts from.</param>
    /// <param name="volts">V, finite.</param>
    /// <param name="seriesOhms">Resistance inside, 0 or more.</param>
    /// <returns>Its number; its current counts from plus through the source to minus, so one that delivers reads negative.</returns>
    public int AddVoltageSource(string name, int plus, int minus, double volts, double seriesOhms = 0)
    {
        int index = Add(new Element(name, ElementKind.VoltageSource, plus, minus));
        SetVoltage(index, volts, seriesOhms);
        return index;
    }

    /// <summary>Adds a source that drives a current through itself from one node to another.</summary>
    public int AddCurrentSource(string name, int from, int to, double amps)
    {
        int index = Add(new Element(name, ElementKind.CurrentSource, from, to));
        SetCurrent(index, amps);
        return index;
    }

    /// <summary>Adds a resistor, a contact or any other conductor.</summary>
    /// <param name="name">Name for messages.</param>
    /// <param name="a">One node.</param>
    /// <param name="b">The other node.</param>
    /// <param name="ohms"><see cref="LeastOhms"/> or more; infinite is open.</param>
    public int AddConductor(string name, int a, int b, double ohms)
    {
        int index = Add(new Element(name, ElementKind.Conductor, a, b));
        SetOhms(index, ohms);
        return index;
    }

    /// <summary>Adds an element whose current goes by a curve of the voltage from a to b: a diode, a lamp, an input.</summary>
    public int AddCurve(string name, int a, int b, PiecewiseCurve curve)
    {
        int index = Add(new Element(name, ElementKind.Curve, a, b));
        SetCurve(index, curve);
        return index;
    }

    /// <summary>Adds a fuse, which opens for good when its current exceeds its rating. How long that takes is not modelled.</summary>
    /// <returns>The number of its conductor.</returns>
    public int AddFuse(string name, int a, int b, double ratedA, double ohms)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratedA);
        int index = AddConductor(name, a, b, ohms);
        _fuses.Add(new Fuse(index, ratedA, ohms));
        return index;
    }

    /// <summary>Adds a relay coil: it pulls in at one voltage, either way round, and drops out at a lower one.</summary>
    /// <returns>The number of its conductor.</returns>
    public int AddCoil(string name, int a, int b, double ohms, double pullInV, double dropOutV)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(dropOutV);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(pullInV, dropOutV);
        int index = AddConductor(name, a, b, ohms);
        _coils.Add(new Coil(index, pullInV, dropOutV));
        return index;
    }

    /// <summary>Adds a contact that a coil moves.</summary>
    /// <param name="coil">The coil's number.</param>
    /// <param name="name">Name for messages.</param>
    /// <param name="a">One node.</param>
    /// <param name="b">The other node.</param>
    /// <param name="closedOhms">Resistance when closed.</param>
    /// <param name="closedWhenEnergised">True for a normally open contact.</param>
    /// <returns>The number of its conductor.</returns>
    public int AddCoilContact(int coil, string name, int a, int b, double closedOhms, bool closedWhenEnergised)
    {
        Coil driver = CoilOf(coil);
        int index = AddConductor(name, a, b, closedWhenEnergised ? double.PositiveInfinity : closedOhms);
        driver.Contacts.Add(new CoilContact(index, closedOhms, closedWhenEnergised));
        return index;
    }

    /// <summary>Changes a voltage source.</summary>
    public void SetVoltage(int source, double volts, double seriesOhms)
    {
        Element element = Of(source, ElementKind.VoltageSource);
        if (!double.IsFinite(volts))
            throw new ArgumentOutOfRangeException(nameof(volts), volts, "a finite voltage is needed");
        ArgumentOutOfRangeException.ThrowIfNegative(seriesOhms);
        _changed |= element.Value != volts || element.SeriesOhms != seriesOhms;
        element.Value = volts;
        element.SeriesOhms = seriesOhms;
    }

    /// <summary>Changes a current source.</summary>
    public void SetCurrent(int source, double amps)
    {
        Element element = Of(source, ElementKind.CurrentSource);
        if (!double.IsFinite(amps))
            throw new ArgumentOutOfRangeException(nameof(amps), amps, "a finite current is needed");
        _changed |= element.Value != amps;
        element.Value = amps;
    }

    /// <summary>Changes a conductor; infinite opens it.</summary>
    public void SetOhms(int conductor, double ohms)
    {
        Element element = Of(conductor, ElementKind.Conductor);
        if (!(ohms >= LeastOhms))
            throw new ArgumentOutOfRangeException(nameof(ohms), ohms, $"'{element.Name}' needs {LeastOhms} ohm or more");
        double conductance = 1 / ohms;
        _changed |= element.ConductanceS != conductance;
        element.ConductanceS = conductance;
    }

    /// <summary>Changes the curve of an element.</summary>
    public void SetCurve(int index, PiecewiseCurve curve)
    {
        ArgumentNullException.ThrowIfNull(curve);
        Element element = Of(index, ElementKind.Curve);
        _changed |= !ReferenceEquals(element.Curve, curve);
        element.Curve = curve;
    }

    /// <summary>Takes a source or a curve out, or puts it back.</summary>
    public void SetRemoved(int index, bool removed)
    {
        Element element = _elements[index];
        if (element.Kind is ElementKind.Conductor)
            throw new ArgumentException($"'{element.Name}' is a conductor: open it instead", nameof(index));
        _changed |= element.Removed != removed;
        element.Removed = removed;
    }

    /// <summary>Moves the ends of an element to other nodes.</summary>
    public void Reconnect(int index, int a, int b)
    {
        Check(a);
        Check(b);
        Element element = _elements[index];
        _changed |= element.A != a || element.B != b;
        element.A = a;
        element.B = b;
    }

    /// <summary>Blows a fuse as if by too much current, or puts a new one in.</summary>
    public void SetBlown(int fuse, bool blown)
    {
        Fuse found = FuseOf(fuse);
        found.Blown = blown;
        SetOhms(fuse, blown ? double.PositiveInfinity : found.WholeOhms);
    }

    /// <summary>Sets a coil as it is before anything flows: dropped out, with its contacts at rest.</summary>
    public void DropCoil(int coil) => Move(CoilOf(coil), false);

    private int Add(Element element)
    {
        Check(element.A);
        Check(element.B);
        _elements.Add(element);
        _changed = true;
        return _elements.Count - 1;
    }

    private void Check(int node)
    {
        if (node < 0 || node >= _nodes.Count)
            throw new ArgumentOutOfRangeException(nameof(node), node, $"there are nodes 0 to {_nodes.Count - 1}");
    }

    private Element Of(int index, ElementKind kind)
    {
        Element element = _elements[index];
        return element.Kind == kind ? element : throw new ArgumentException($"'{element.Name}' is a {element.Kind}, not a {kind}", nameof(index));
    }

    private Fuse FuseOf(int conductor)
    {
        foreach (Fuse fuse in _fuses)
        {
            if (fuse.Conductor == conductor)
                return fuse;
        }

        throw new ArgumentException($"'{_elements[conductor].Name}' is not a fuse", nameof(conductor));
    }

    private Coil CoilOf(int conductor)
    {
        foreach (Coil coil in _coils)
        {
            if (coil.Conductor == conductor)
                return coil;
        }

        throw new ArgumentException($"'{_elements[conductor].Name}' is not a coil", nameof(conductor));
    }
}
