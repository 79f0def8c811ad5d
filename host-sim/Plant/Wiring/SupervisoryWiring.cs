using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Circuits;
using LubeController.Plant.Contacts;

namespace LubeController.Plant.Wiring;

/// <summary>
/// The circuit between output contacts and supervisory inputs at work. Outputs and faults are set, inputs are read; the
/// circuit is solved when something is read after a change, and only then. Neither allocates.
/// </summary>
/// <remarks>Parts go by their index in the description. A digital input in its undefined zone reads as its policy says.</remarks>
public sealed class SupervisoryWiring
{
    // Below half its rated current a filament does not glow to speak of; assumed.
    private const double GlowShare = 0.5;

    // A terminal that moved by more than this was changed by a fault.
    private const double DifferenceV = 0.05;

    // Enough for every state that a few relays go through while they buzz.
    private const int BuzzRounds = 16;

    private readonly Circuit _circuit = new();
    private readonly WiringTerminals _terminals;
    private readonly DrivenContacts _outputs;
    private readonly SupervisoryInput[] _inputs;
    private readonly Wire[] _wires;
    private readonly int[] _fuses;
    private readonly int[] _lamps;
    private readonly int[] _coils;
    private readonly int _supplyNode;
    private bool _changed = true;

    /// <summary>Builds the circuit, every output de-energised and nothing wrong.</summary>
    /// <param name="description">The wiring.</param>
    /// <param name="seed">Seed of inputs whose undefined zone is drawn.</param>
    /// <exception cref="ArgumentException">The description is refused; the message names field, value and remedy.</exception>
    public SupervisoryWiring(SupervisoryWiringDescription description, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(description);
        if (WiringCheck.Check(description).FirstOrDefault(finding => finding.IsRefusal) is { } refusal)
            throw new ArgumentException(refusal.ToString(), nameof(description));
        Description = description;
        _terminals = new WiringTerminals(_circuit, description.Supplies[0].Minus);
        foreach (WiringSupply supply in description.Supplies)
            _circuit.AddVoltageSource(supply.Name, Node(supply.Plus), Node(supply.Minus), supply.VoltageV, supply.InsideOhms);
        _supplyNode = Node(description.Supplies[0].Plus);
        _fuses = [.. description.Fuses.Select(part => _circuit.AddFuse(part.Name, Node(part.From), Node(part.To), part.RatedA, part.Ohms))];
        _wires = [.. description.Wires.Select(part => new Wire(_circuit, part.Name, Node(part.From), Node(part.To), part.Ohms))];
        _outputs = new DrivenContacts(description.Contacts, _circuit, _terminals);
        _lamps = [.. description.Lamps.Select(part => _circuit.AddCurve(part.Name, Node(part.From), Node(part.To), Curves.Lamp(part.RatedV, part.RatedW)))];
        _coils = [.. description.Coils.Select(part => _circuit.AddCoil(part.Name, Node(part.From), Node(part.To), part.Ohms, part.PullInV, part.DropOutV))];
        foreach (WiringCoilContact part in description.CoilContacts)
            _circuit.AddCoilContact(_coils[IndexOfCoil(part.Coil)], part.Name, Node(part.From), Node(part.To), part.ClosedOhms, part.Side == ContactSide.NormallyOpen);
        foreach (WiringResistor part in description.Resistors)
            _circuit.AddConductor(part.Name, Node(part.From), Node(part.To), part.Ohms);
        _inputs = [.. description.Inputs.Select((part, index) => new SupervisoryInput(_circuit, part, Node(part.From), Node(part.To), unchecked(seed + (ulong)index)))];
    }

    /// <summary>What was built.</summary>
    public SupervisoryWiringDescription Description { get; }

    /// <summary>The outputs that its contacts name, in order of first mention.</summary>
    public IReadOnlyList<string> Outputs => _outputs.Names;

    /// <summary>Energises an output's relay, or lets it go.</summary>
    public void SetOutput(int output, bool energised) => SetOutputSides(output, energised, !energised);

    /// <summary>Says which sides of an output's contact are closed: neither while it moves or bounces.</summary>
    public void SetOutputSides(int output, bool normallyOpenClosed, bool normallyClosedClosed) =>
        _changed |= _outputs.SetSides(output, normallyOpenClosed, normallyClosedClosed);

    /// <summary>
    /// Lets an output's relay go to and fro without end, as a heartbeat or a flashing lamp does: an input that follows it
    /// reads as changing. All outputs that beat do so together.
    /// </summary>
    public void SetOutputBeating(int output) => _changed |= _outputs.SetBeating(output);

    /// <summary>Breaks a wire, or mends it.</summary>
    public void SetWireBroken(int wire, bool broken)
    {
        _wires[wire].SetBroken(broken);
        _changed = true;
    }

    /// <summary>Adds a resistance to a wire, ohm; 0 heals.</summary>
    public void SetWireOhms(int wire, double extraOhms)
    {
        _wires[wire].SetExtraOhms(extraOhms);
        _changed = true;
    }

    /// <summary>Lets a wire touch another; infinite ohms part them.</summary>
    public void SetWireBridge(int wire, int other, double ohms)
    {
        _wires[wire].SetBridge(_wires[other], ohms);
        _changed = true;
    }

    /// <summary>Lets a wire touch the first supply's plus; infinite ohms part them.</summary>
    public void SetWireToSupply(int wire, double ohms)
    {
        _wires[wire].SetToSupply(_supplyNode, ohms);
        _changed = true;
    }

    /// <summary>Lets a wire touch ground; infinite ohms part them.</summary>
    public void SetWireToGround(int wire, double ohms)
    {
        _wires[wire].SetToGround(ohms);
        _changed = true;
    }

    /// <summary>Welds a contact shut, or frees it. While it is welded the other side of its relay cannot close.</summary>
    public void SetContactWelded(int contact, bool welded)
    {
        _outputs.SetWelded(contact, welded);
        _changed = true;
    }

    /// <summary>Adds a resistance to a closed contact, ohm; 0 heals.</summary>
    public void SetContactOhms(int contact, double extraOhms)
    {
        _outputs.SetExtraOhms(contact, extraOhms);
        _changed = true;
    }

    /// <summary>Blows a lamp, or puts a new one in.</summary>
    public void SetLampBlown(int lamp, bool blown)
    {
        _circuit.SetRemoved(_lamps[lamp], blown);
        _changed = true;
    }

    /// <summary>Blows a fuse, or puts a new one in, which blows again if its cause persists.</summary>
    public void SetFuseBlown(int fuse, bool blown)
    {
        _circuit.SetBlown(_fuses[fuse], blown);
        _changed = true;
    }

    /// <summary>Solves the circuit and reads every input, if anything changed since.</summary>
    /// <exception cref="CircuitException">The circuit has no answer.</exception>
    public void Read()
    {
        if (!_changed)
            return;
        if (!_outputs.AnyBeats)
        {
            ReadPosition(again: false);
        }
        else
        {
            // What blows a fuse with the contacts one way has blown it before long: both ways are gone through first.
            _outputs.MoveBeating(true);
            _circuit.TrySolve();
            _outputs.MoveBeating(false);
            ReadPosition(again: false);
            _outputs.MoveBeating(true);
            ReadPosition(again: true);
            _outputs.MoveBeating(false);
            ReadPosition(again: true);
        }

        _changed = false;
    }

    /// <summary>An interposing relay that finds no rest, because it cuts its own supply each time it pulls in, or null.</summary>
    public string? Buzzing
    {
        get
        {
            Read();
            return _circuit.Buzzing;
        }
    }

    /// <summary>State of an input, an index into <see cref="StatesOf"/>.</summary>
    public int StateOf(int input)
    {
        Read();
        return _inputs[input].State;
    }

    /// <summary>Names of the states that an input can have: off and on, or its windows and what is outside them; last, changing.</summary>
    public IReadOnlyList<string> StatesOf(int input) => _inputs[input].States;

    /// <summary>Whether a digital input stands in the zone its standard leaves undefined.</summary>
    public bool IsUndefined(int input)
    {
        Read();
        return _inputs[input].Undefined;
    }

    /// <summary>Voltage across an input, V; not a number where its terminals are not joined.</summary>
    public double InputV(int input)
    {
        Read();
        return _inputs[input].VoltageV;
    }

    /// <summary>Current into an input, A; negative where it feeds its line.</summary>
    public double InputA(int input)
    {
        Read();
        return _inputs[input].CurrentA;
    }

    /// <summary>Whether a lamp glows.</summary>
    public bool IsLit(int lamp)
    {
        Read();
        WiringLamp part = Description.Lamps[lamp];
        return Math.Abs(_circuit.CurrentA(_lamps[lamp])) >= GlowShare * part.RatedW / part.RatedV;
    }

    /// <summary>Whether a fuse has blown.</summary>
    public bool IsBlown(int fuse)
    {
        Read();
        return _circuit.IsBlown(_fuses[fuse]);
    }

    /// <summary>Whether a coil has pulled in.</summary>
    public bool IsEnergised(int coil)
    {
        Read();
        return _circuit.IsEnergised(_coils[coil]);
    }

    /// <summary>Voltage of a terminal against ground, V; not a number where it floats.</summary>
    /// <exception cref="ArgumentException">No part names that terminal.</exception>
    public double TerminalV(string terminal)
    {
        Read();
        return _terminals.VoltageV(terminal);
    }

    /// <summary>Takes over the contacts' positions of another copy of the same wiring.</summary>
    internal void CopyOutputs(SupervisoryWiring other) => _changed |= _outputs.CopyPositions(other._outputs);

    /// <summary>Whether a terminal, an input or a fuse differs from that of the same wiring under other faults.</summary>
    internal bool DiffersFrom(SupervisoryWiring other)
    {
        Read();
        other.Read();
        for (int terminal = 0; terminal < _terminals.Count; terminal++)
        {
            if (Math.Abs(_terminals.DrivenV(terminal) - other._terminals.DrivenV(terminal)) > DifferenceV)
                return true;
        }

        for (int input = 0; input < _inputs.Length; input++)
        {
            if (_inputs[input].State != other._inputs[input].State)
                return true;
        }

        for (int fuse = 0; fuse < _fuses.Length; fuse++)
        {
            if (_circuit.IsBlown(_fuses[fuse]) != other._circuit.IsBlown(other._fuses[fuse]))
                return true;
        }

        return false;
    }

    private void ReadPosition(bool again)
    {
        bool rests = _circuit.TrySolve();
        foreach (SupervisoryInput input in _inputs)
        {
            if (again)
                input.ReadAgain();
            else
                input.Read();
        }

        for (int round = 0; !rests && round < BuzzRounds; round++)
        {
            _circuit.BuzzOn();
            foreach (SupervisoryInput input in _inputs)
                input.ReadAgain();
        }
    }

    private int Node(string terminal) => _terminals.Node(terminal);

    private int IndexOfCoil(string name)
    {
        int index = 0;
        while (Description.Coils[index].Name != name)
            index++;
        return index;
    }
}
