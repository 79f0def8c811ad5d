using System;

namespace LubeController.Plant.Circuits;

/// <summary>The voltages and currents that all elements agree on while fuses and relay contacts stay as they are.</summary>
internal sealed class OperatingPoint(Netlist netlist)
{
    // The last number before 1, where a curve is left only at the very end.
    private const double BitBelowOne = 1 - 1.1102230246251565e-16;

    // A voltage this near a corner, rounded one way on one piece and the other way on the next, belongs to either.
    private const double BesideCornerV = 1e-9;

    private readonly Equations _equations = new(netlist);
    private double[] _state = [];
    private double[] _target = [];
    private double[] _targetVolts = [];
    private double[] _volts = [];

    internal double VoltageV(int node) => _equations.IsFloating(node) ? double.NaN : _volts[node];

    internal bool IsFloating(int node) => _equations.IsFloating(node);

    /// <summary>Whether something that conducts joins both ends of an element.</summary>
    internal bool Joins(Element element) => _equations.Joins(element);

    internal double AcrossV(Element element) => Across(element, _volts);

    internal double CurrentA(Element element) => element.Kind switch
    {
        ElementKind.Conductor => element.ConductanceS == 0 ? 0 : element.ConductanceS * AcrossV(element),
        ElementKind.CurrentSource => element.Removed ? 0 : element.Value,
        ElementKind.VoltageSource => element.Removed ? 0 : _state[element.Branch],
        _ => element.Removed ? 0 : element.Curve!.OffsetA(element.Piece) + (element.Curve.SlopeS(element.Piece) * AcrossV(element)),
    };

    /// <summary>
    /// Katzenelson's walk (1965, from memory): from nothing, towards what the present pieces ask for, as far as the first
    /// corner of a curve; there that curve goes over to its next piece. Where all curves rise this ends at the one answer.
    /// </summary>
    internal void Find()
    {
        _equations.Number();
        MakeRoom();
        Array.Clear(_state, 0, _equations.Count);
        Array.Clear(_volts);
        int pieces = 1;
        foreach (Element element in netlist.Elements)
        {
            if (element.Kind != ElementKind.Curve)
                continue;
            element.Piece = element.Curve!.PieceAt(0);
            pieces += element.Curve.Count;
        }

        for (int bound = 16 * pieces; bound > 0; bound--)
        {
            _equations.Solve(_target);
            double reach = CrossFirstCorner();
            for (int k = 0; k < _equations.Count; k++)
                _state[k] = reach == 1 ? _target[k] : _state[k] + (reach * (_target[k] - _state[k]));
            _equations.SpreadVoltages(_state, _volts);
            if (reach == 1)
                return;
        }

        throw new CircuitException($"the curves settle nowhere within {16 * pieces} steps; give them fewer or less steep pieces");
    }

    private static double Across(Element element, double[] volts) => volts[element.A] - volts[element.B];

    private void MakeRoom()
    {
        int nodes = netlist.NodeCount;
        if (_volts.Length < nodes)
        {
            _volts = new double[nodes];
            _targetVolts = new double[nodes];
        }

        if (_state.Length < nodes + netlist.Elements.Count)
        {
            _state = new double[nodes + netlist.Elements.Count];
            _target = new double[_state.Length];
        }
    }

    /// <summary>How far, of the whole way, it is to the first corner; the curves that meet theirs there go over it.</summary>
    private double CrossFirstCorner()
    {
        _equations.SpreadVoltages(_target, _targetVolts);
        double reach = 1;
        foreach (Element element in netlist.Elements)
        {
            if (element.Kind == ElementKind.Curve && !element.Removed)
                reach = Math.Min(reach, ToCorner(element, out _));
        }

        if (reach == 1)
            return 1;
        foreach (Element element in netlist.Elements)
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
}
