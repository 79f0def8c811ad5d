using System;
using System.Collections.Generic;

namespace LubeController.Plant.Circuits;

public sealed partial class Circuit
{
    // The last number before 1, where a curve is left only at the very end.
    private const double BitBelowOne = 1 - 1.1102230246251565e-16;

    // A voltage this near a corner, rounded one way on one piece and the other way on the next, belongs to either.
    private const double BesideCornerV = 1e-9;

    private readonly Islands _islands = new();
    private readonly LinearSolver _solver = new();
    private int[] _unknown = [];
    private double[] _state = [];
    private double[] _target = [];
    private double[] _targetVolts = [];
    private double[] _volts = [];
    private bool[] _floating = [];
    private int _unknowns;

    /// <summary>How often the equations were solved for the answer at hand: by pieces of curves, fuses and relays.</summary>
    public int Iterations { get; private set; }

    /// <summary>Finds the state of the circuit, if anything changed since it was last found.</summary>
    /// <exception cref="CircuitException">
    /// Ideal sources in a ring; a current source with nowhere to go; a relay that buzzes; curves that settle nowhere.
    /// </exception>
    public void Solve()
    {
        if (!TrySolve())
            throw new CircuitException($"relay '{Buzzing}' buzzes: it cuts its own supply each time it pulls in; feed its coil around its own contact");
    }

    /// <summary>The relay that finds no rest, by its coil's name, or null.</summary>
    public string? Buzzing { get; private set; }

    /// <summary>As <see cref="Solve"/>, but a relay that buzzes is an answer: the circuit is left in one of the states it goes through.</summary>
    /// <returns>Whether the circuit is at rest; if not, <see cref="Buzzing"/> names a relay, and <see cref="BuzzOn"/> goes to the next state.</returns>
    public bool TrySolve()
    {
        if (!_changed)
            return Buzzing is null;
        Buzzing = null;
        Iterations = 0;
        // Each round blows one fuse or moves relays. Relays may follow one another in a chain; going on beyond that is buzzing.
        int rounds = _fuses.Count + (4 * (_coils.Count + 1));
        do
        {
            if (!SettleOnce(out Coil? moved))
            {
                _changed = false;
                return true;
            }

            if (rounds == 0)
                Buzzing = moved is null ? null : _elements[moved.Conductor].Name;
        }
        while (rounds-- > 0);
        return false;
    }

    /// <summary>Lets relays that buzz move once more.</summary>
    public void BuzzOn() => SettleOnce(out _);

    /// <summary>Voltage of a node against ground, V; not a number where the node floats.</summary>
    public double VoltageV(int node) => _floating[node] ? double.NaN : _volts[node];

    /// <summary>Whether nothing that conducts joins a node to ground.</summary>
    public bool IsFloating(int node) => _floating[node];

    /// <summary>Voltage across an element from its first node to its second, V; not a number where they are not joined.</summary>
    public double AcrossV(int index)
    {
        Element element = _elements[index];
        return _islands.ReferenceOf(element.A) == _islands.ReferenceOf(element.B) ? Across(element, _volts) : double.NaN;
    }

    /// <summary>Current through an element from its first node to its second, A.</summary>
    public double CurrentA(int index)
    {
        Element element = _elements[index];
        return element.Kind switch
        {
            ElementKind.Conductor => element.ConductanceS == 0 ? 0 : element.ConductanceS * Across(element, _volts),
            ElementKind.CurrentSource => element.Removed ? 0 : element.Value,
            ElementKind.VoltageSource => element.Removed ? 0 : _state[element.Branch],
            _ => element.Removed ? 0 : element.Curve!.OffsetA(element.Piece) + (element.Curve.SlopeS(element.Piece) * Across(element, _volts)),
        };
    }

    /// <summary>Whether a fuse has blown.</summary>
    public bool IsBlown(int fuse) => FuseOf(fuse).Blown;

    /// <summary>Whether a coil has pulled in.</summary>
    public bool IsEnergised(int coil) => CoilOf(coil).Energised;

    /// <summary>Solves with contacts as they are; then the worst fuse blows, or relays move.</summary>
    /// <returns>Whether anything blew or moved.</returns>
    private bool SettleOnce(out Coil? moved)
    {
        SolveWithContactsAsTheyAre();
        moved = null;
        if (BlowTheWorstFuse())
            return true;
        moved = MoveCoils();
        return moved is not null;
    }

    private static double Across(Element element, double[] volts) => volts[element.A] - volts[element.B];

    /// <summary>
    /// Katzenelson's walk (1965, from memory): from nothing, towards what the present pieces ask for, as far as the first
    /// corner of a curve; there that curve goes over to its next piece. Where all curves rise this ends at the one answer.
    /// </summary>
    private void SolveWithContactsAsTheyAre()
    {
        Number();
        Array.Clear(_state, 0, _unknowns);
        Array.Clear(_volts);
        int pieces = 1;
        foreach (Element element in _elements)
        {
            if (element.Kind != ElementKind.Curve)
                continue;
            element.Piece = element.Curve!.PieceAt(0);
            pieces += element.Curve.Count;
        }

        for (int bound = 16 * pieces; bound > 0; bound--)
        {
            Iterations++;
            SolvePieces();
            double reach = FirstCorner();
            for (int k = 0; k < _unknowns; k++)
                _state[k] = reach == 1 ? _target[k] : _state[k] + (reach * (_target[k] - _state[k]));
            SpreadVoltages(_state, _volts);
            if (reach == 1)
                return;
        }

        throw new CircuitException($"the curves settle nowhere within {16 * pieces} steps; give them fewer or less steep pieces");
    }

    private void Number()
    {
        if (_unknown.Length < _nodes.Count)
        {
            _unknown = new int[_nodes.Count];
            _volts = new double[_nodes.Count];
            _floating = new bool[_nodes.Count];
        }

        if (_state.Length < _nodes.Count + _elements.Count)
        {
            _state = new double[_nodes.Count + _elements.Count];
            _target = new double[_state.Length];
            _targetVolts = new double[_nodes.Count];
        }

        _islands.Find(_nodes.Count, _elements);
        _islands.RefuseIdealRings(_nodes.Count, _elements);
        _islands.Find(_nodes.Count, _elements);
        RefuseStrandedCurrents();
        _unknowns = 0;
        for (int node = 0; node < _nodes.Count; node++)
        {
            // An island's lowest node stands at zero: ground on its own island, and on one that floats, where only
            // differences mean anything.
            int reference = _islands.ReferenceOf(node);
            _unknown[node] = reference == node ? -1 : _unknowns++;
            _floating[node] = reference != Ground;
        }

        foreach (Element element in _elements)
        {
            if (element.Kind == ElementKind.VoltageSource && !element.Removed)
                element.Branch = _unknowns++;
        }
    }

    private void RefuseStrandedCurrents()
    {
        foreach (Element element in _elements)
        {
            if (element.Kind == ElementKind.CurrentSource && !element.Removed && element.Value != 0
                && _islands.ReferenceOf(element.A) != _islands.ReferenceOf(element.B))
            {
                throw new CircuitException($"current source '{element.Name}' drives {element.Value} A where nothing leads back: give it a path, or take it out");
            }
        }
    }

    private void SolvePieces()
    {
        _solver.Clear(_unknowns);
        foreach (Element element in _elements)
            Stamp(element, _unknown[element.A], _unknown[element.B]);
        int open = _solver.Solve(_target);
        if (open >= 0)
            throw new CircuitException($"the equations leave unknown {open} open; this is a fault of the solver, for the circuit was checked");
    }

    private void Stamp(Element element, int a, int b)
    {
        switch (element.Kind)
        {
            case ElementKind.Conductor:
                StampConductance(a, b, element.ConductanceS);
                break;
            case ElementKind.Curve when !element.Removed:
                StampConductance(a, b, element.Curve!.SlopeS(element.Piece));
                StampCurrent(a, b, element.Curve.OffsetA(element.Piece));
                break;
            case ElementKind.CurrentSource when !element.Removed:
                StampCurrent(a, b, element.Value);
                break;
            case ElementKind.VoltageSource when !element.Removed:
                _solver.Add(a, element.Branch, 1);
                _solver.Add(b, element.Branch, -1);
                _solver.Add(element.Branch, a, 1);
                _solver.Add(element.Branch, b, -1);
                _solver.Add(element.Branch, element.Branch, -element.SeriesOhms);
                _solver.AddRight(element.Branch, element.Value);
                break;
            default:
                break;
        }
    }

    private void StampConductance(int a, int b, double conductance)
    {
        _solver.Add(a, a, conductance);
        _solver.Add(b, b, conductance);
        _solver.Add(a, b, -conductance);
        _solver.Add(b, a, -conductance);
    }

    private void StampCurrent(int a, int b, double amps)
    {
        _solver.AddRight(a, -amps);
        _solver.AddRight(b, amps);
    }

    /// <summary>How far, of the whole way, it is to the first corner; the curves that meet theirs there go over it.</summary>
    private double FirstCorner()
    {
        SpreadVoltages(_target, _targetVolts);
        double reach = 1;
        foreach (Element element in _elements)
        {
            if (element.Kind == ElementKind.Curve && !element.Removed)
                reach = Math.Min(reach, ToCorner(element, out _));
        }

        if (reach == 1)
            return 1;
        foreach (Element element in _elements)
        {
            if (element.Kind == ElementKind.Curve && !element.Removed && ToCorner(element, out int step) <= reach)
                element.Piece += step;
        }

        return reach;
    }

    // 1 where the curve stays on its piece all the way; below 1 the share of the way at which it leaves it.
    private double ToCorner(Element element, out int step)
    {
        step = 0;
        double now = Across(element, _volts);
        double then = Across(element, _targetVolts);
        double corner;
        if (then > element.Curve!.ToV(element.Piece) + BesideCornerV)
        {
            step = 1;
            corner = element.Curve.ToV(element.Piece);
        }
        else if (then < element.Curve.FromV(element.Piece) - BesideCornerV)
        {
            step = -1;
            corner = element.Curve.FromV(element.Piece);
        }
        else
        {
            return 1;
        }

        double share = (corner - now) / (then - now);
        // A corner that was reached by rounding may lie a hair behind.
        return share < 1 ? Math.Max(0, share) : BitBelowOne;
    }

    private void SpreadVoltages(double[] state, double[] volts)
    {
        for (int node = 0; node < _nodes.Count; node++)
            volts[node] = _unknown[node] < 0 ? 0 : state[_unknown[node]];
    }

    /// <summary>The fuse that is loaded most beyond its rating goes first, and may save the others.</summary>
    private bool BlowTheWorstFuse()
    {
        Fuse? worst = null;
        double most = 1;
        foreach (Fuse fuse in _fuses)
        {
            double load = Math.Abs(CurrentA(fuse.Conductor)) / fuse.RatedA;
            if (!fuse.Blown && load > most)
            {
                most = load;
                worst = fuse;
            }
        }

        if (worst is null)
            return false;
        SetBlown(worst.Conductor, true);
        return true;
    }

    private Coil? MoveCoils()
    {
        Coil? moved = null;
        foreach (Coil coil in _coils)
        {
            double across = Math.Abs(Across(_elements[coil.Conductor], _volts));
            bool pulls = coil.Energised ? across > coil.DropOutV : across >= coil.PullInV;
            if (pulls == coil.Energised)
                continue;
            moved = coil;
            Move(coil, pulls);
        }

        return moved;
    }

    private void Move(Coil coil, bool energised)
    {
        coil.Energised = energised;
        List<CoilContact> contacts = coil.Contacts;
        foreach (CoilContact contact in contacts)
            SetOhms(contact.Conductor, contact.ClosedWhenEnergised == energised ? contact.ClosedOhms : double.PositiveInfinity);
    }
}
