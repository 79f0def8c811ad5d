using System;
using System.Collections.Generic;

namespace LubeController.Plant.Circuits;

/// <summary>
/// A current over a voltage, in straight pieces between points; the outermost pieces go on for ever. Both rise from point
/// to point, so that a circuit of such elements has one answer. Immutable.
/// </summary>
public sealed class PiecewiseCurve
{
    // Far below any leakage that matters, far above where a matrix of circuit values loses its digits.
    internal const double LeastConductanceS = 1e-12;

    private readonly double[] _volts;
    private readonly double[] _slopeS;
    private readonly double[] _offsetA;

    /// <summary>Makes a curve.</summary>
    /// <param name="points">Two points or more, V and A, each strictly above the one before in both.</param>
    /// <exception cref="ArgumentException">Fewer than two points, or points that do not rise by at least 1e-12 A for each volt.</exception>
    public PiecewiseCurve(params IReadOnlyList<CurvePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count < 2)
            throw new ArgumentException("a curve needs two points or more", nameof(points));
        Points = [.. points];
        _volts = new double[points.Count];
        _slopeS = new double[points.Count - 1];
        _offsetA = new double[points.Count - 1];
        for (int k = 0; k < points.Count; k++)
            _volts[k] = points[k].VoltageV;
        for (int k = 0; k < _slopeS.Length; k++)
        {
            double run = points[k + 1].VoltageV - points[k].VoltageV;
            _slopeS[k] = (points[k + 1].CurrentA - points[k].CurrentA) / run;
            if (!(run > 0 && _slopeS[k] >= LeastConductanceS && double.IsFinite(_slopeS[k])))
                throw new ArgumentException($"point {k + 2} ({points[k + 1].VoltageV} V, {points[k + 1].CurrentA} A) must lie above the one before in voltage and current", nameof(points));
            _offsetA[k] = points[k].CurrentA - (_slopeS[k] * points[k].VoltageV);
        }
    }

    /// <summary>The points, rising.</summary>
    public IReadOnlyList<CurvePoint> Points { get; }

    /// <summary>Number of pieces, 1 or more.</summary>
    internal int Count => _slopeS.Length;

    /// <summary>The current at a voltage, A.</summary>
    public double CurrentA(double voltageV)
    {
        int piece = PieceAt(voltageV);
        return _offsetA[piece] + (_slopeS[piece] * voltageV);
    }

    /// <summary>The piece that a voltage lies on; at a corner the one above it.</summary>
    internal int PieceAt(double voltageV)
    {
        int piece = 0;
        while (piece + 1 < Count && voltageV >= _volts[piece + 1])
            piece++;
        return piece;
    }

    internal double SlopeS(int piece) => _slopeS[piece];

    internal double OffsetA(int piece) => _offsetA[piece];

    /// <summary>Where a piece begins, V; the lowest has no beginning.</summary>
    internal double FromV(int piece) => piece == 0 ? double.NegativeInfinity : _volts[piece];

    /// <summary>Where a piece ends, V; the highest has no end.</summary>
    internal double ToV(int piece) => piece == Count - 1 ? double.PositiveInfinity : _volts[piece + 1];
}
