using System;

namespace LubeController.Plant.Circuits;

/// <summary>
/// A small direct-current circuit, solved by modified nodal analysis (Ho, Ruehli and Brennan 1975, from memory). Elements
/// are added once and changed at will; <see cref="Solve"/> finds the one state that all of them agree on, and allocates
/// nothing once the circuit has been solved for the first time. The answer depends on the elements alone, not on what was
/// solved before, except for relays, which have a memory by nature, and for blown fuses.
/// </summary>
public sealed class Circuit
{
    /// <summary>The node that every voltage is measured against.</summary>
    public const int Ground = 0;

    /// <summary>Least resistance of a conductor, ohm: less would cost digits and mean nothing.</summary>
    public const double LeastOhms = 1e-4;

    private readonly Netlist _netlist = new();
    private readonly OperatingPoint _point;
    private readonly Fuses _fuses;
    private readonly Relays _relays;

    /// <summary>Makes an empty circuit.</summary>
    public Circuit()
    {
        _point = new OperatingPoint(_netlist);
        _fuses = new Fuses(_netlist);
        _relays = new Relays(_netlist);
    }

    /// <summary>Number of nodes, ground among them.</summary>
    public int NodeCount => _netlist.NodeCount;

    /// <summary>Number of elements.</summary>
    public int ElementCount => _netlist.Elements.Count;

    /// <summary>The relay that finds no rest, by its coil's name, or null.</summary>
    public string? Buzzing { get; private set; }

    /// <summary>The two nodes of an element.</summary>
    public (int A, int B) EndsOf(int index) => (_netlist.Elements[index].A, _netlist.Elements[index].B);

    /// <summary>Adds a node.</summary>
    /// <returns>Its number.</returns>
    public int AddNode(string name) => _netlist.AddNode(name);

    /// <summary>Adds a voltage source; in series with a resistance, or ideal.</summary>
    /// <param name="name">Name for messages.</param>
    /// <param name="plus">Node at the voltage.</param>
    /// <param name="minus">Node that the voltage counts from.</param>
    /// <param name="volts">V, finite.</param>
    /// <param name="seriesOhms">Resistance inside, 0 or more.</param>
    /// <returns>Its number; its current counts from plus through the source to minus, so one that delivers reads negative.</returns>
    public int AddVoltageSource(string name, int plus, int minus, double volts, double seriesOhms = 0)
    {
        int index = _netlist.Add(name, ElementKind.VoltageSource, plus, minus);
        SetVoltage(index, volts, seriesOhms);
        return index;
    }

    /// <summary>Adds a source that drives a current through itself from one node to another.</summary>
    public int AddCurrentSource(string name, int from, int to, double amps)
    {
        int index = _netlist.Add(name, ElementKind.CurrentSource, from, to);
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
        int index = _netlist.Add(name, ElementKind.Conductor, a, b);
        SetOhms(index, ohms);
        return index;
    }

    /// <summary>Adds an element whose current goes by a curve of the voltage from a to b: a diode, a lamp, an input.</summary>
    public int AddCurve(string name, int a, int b, PiecewiseCurve curve)
    {
        int index = _netlist.Add(name, ElementKind.Curve, a, b);
        SetCurve(index, curve);
        return index;
    }

    /// <summary>Adds a fuse, which opens for good when its current exceeds its rating. How long that takes is not modelled.</summary>
    /// <returns>The number of its conductor.</returns>
    public int AddFuse(string name, int a, int b, double ratedA, double ohms)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratedA);
        int index = AddConductor(name, a, b, ohms);
        _fuses.Add(index, ratedA, ohms);
        return index;
    }

    /// <summary>Adds a relay coil: it pulls in at one voltage, either way round, and drops out at a lower one.</summary>
    /// <returns>The number of its conductor.</returns>
    public int AddCoil(string name, int a, int b, double ohms, double pullInV, double dropOutV)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(dropOutV);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(pullInV, dropOutV);
        int index = AddConductor(name, a, b, ohms);
        _relays.Add(new Coil(index, pullInV, dropOutV));
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
        Coil driver = _relays.Find(coil);
        int index = AddConductor(name, a, b, closedWhenEnergised ? double.PositiveInfinity : closedOhms);
        driver.Contacts.Add(new CoilContact(index, closedOhms, closedWhenEnergised));
        return index;
    }

    /// <summary>Changes a voltage source.</summary>
    public void SetVoltage(int source, double volts, double seriesOhms) => _netlist.SetVoltage(source, volts, seriesOhms);

    /// <summary>Changes a current source.</summary>
    public void SetCurrent(int source, double amps) => _netlist.SetCurrent(source, amps);

    /// <summary>Changes a conductor; infinite opens it.</summary>
    public void SetOhms(int conductor, double ohms) => _netlist.SetOhms(conductor, ohms);

    /// <summary>Changes the curve of an element.</summary>
    public void SetCurve(int index, PiecewiseCurve curve) => _netlist.SetCurve(index, curve);

    /// <summary>Takes a source or a curve out, or puts it back.</summary>
    public void SetRemoved(int index, bool removed) => _netlist.SetRemoved(index, removed);

    /// <summary>Moves the ends of an element to other nodes.</summary>
    public void Reconnect(int index, int a, int b) => _netlist.Reconnect(index, a, b);

    /// <summary>Blows a fuse as if by too much current, or puts a new one in.</summary>
    public void SetBlown(int fuse, bool blown) => _fuses.SetBlown(_fuses.Find(fuse), blown);

    /// <summary>Finds the state of the circuit, if anything changed since it was last found.</summary>
    /// <exception cref="CircuitException">
    /// Ideal sources in a ring; a current source with nowhere to go; a relay that buzzes; curves that settle nowhere.
    /// </exception>
    public void Solve()
    {
        if (!TrySolve())
            throw new CircuitException($"relay '{Buzzing}' buzzes: it cuts its own supply each time it pulls in; feed its coil around its own contact");
    }

    /// <summary>As <see cref="Solve"/>, but a relay that buzzes is an answer: the circuit is left in one of the states it goes through.</summary>
    /// <returns>Whether the circuit is at rest; if not, <see cref="Buzzing"/> names a relay, and <see cref="BuzzOn"/> goes to the next state.</returns>
    public bool TrySolve()
    {
        if (!_netlist.Changed)
            return Buzzing is null;
        Buzzing = null;
        // Each round blows one fuse or moves relays. Relays may follow one another in a chain; going on beyond that is buzzing.
        int rounds = _fuses.Count + (4 * (_relays.Count + 1));
        do
        {
            if (!SettleOnce(out Coil? moved))
            {
                _netlist.Changed = false;
                return true;
            }

            if (rounds == 0)
                Buzzing = moved is null ? null : _netlist.Elements[moved.Conductor].Name;
        }
        while (rounds-- > 0);
        return false;
    }

    /// <summary>Lets relays that buzz move once more.</summary>
    public void BuzzOn() => SettleOnce(out _);

    /// <summary>Voltage of a node against ground, V; not a number where the node floats.</summary>
    public double VoltageV(int node) => _point.VoltageV(node);

    /// <summary>Whether nothing that conducts joins a node to ground.</summary>
    public bool IsFloating(int node) => _point.IsFloating(node);

    /// <summary>Voltage across an element from its first node to its second, V; not a number where they are not joined.</summary>
    public double AcrossV(int index)
    {
        Element element = _netlist.Elements[index];
        return _point.Joins(element) ? _point.AcrossV(element) : double.NaN;
    }

    /// <summary>Current through an element from its first node to its second, A.</summary>
    public double CurrentA(int index) => _point.CurrentA(_netlist.Elements[index]);

    /// <summary>Whether a fuse has blown.</summary>
    public bool IsBlown(int fuse) => _fuses.Find(fuse).Blown;

    /// <summary>Whether a coil has pulled in.</summary>
    public bool IsEnergised(int coil) => _relays.Find(coil).Energised;

    /// <summary>Finds the operating point; then the worst fuse blows, or relays move.</summary>
    /// <returns>Whether anything blew or moved.</returns>
    private bool SettleOnce(out Coil? moved)
    {
        _point.Find();
        moved = null;
        if (_fuses.BlowWorst(_point))
            return true;
        moved = _relays.Move(_point);
        return moved is not null;
    }
}
