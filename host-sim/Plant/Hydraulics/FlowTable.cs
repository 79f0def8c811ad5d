using System;

namespace LubeController.Plant.Hydraulics;

/// <summary>How much flows at a pressure drop: what a <see cref="FlowTable"/> is filled from.</summary>
internal interface IFlowLaw
{
    /// <summary>The drop up to which nothing flows, Pa.</summary>
    double StartPa { get; }

    /// <summary>The flow at a drop, m3/s; never falls as the drop rises.</summary>
    double FlowM3PerS(double dropPa);
}

/// <summary>
/// A flow law as a table over what the drop exceeds its start by: eight knots in each octave from 2 Pa to 0.5 GPa, monotone
/// cubics between them, straight lines beyond. The place in the table is read from exponent and mantissa of the number
/// itself, so that a look-up is a few additions and multiplications, the same on every machine.
/// </summary>
/// <remarks>
/// Relative error against the law from 2 Pa to 0.5 GPa beyond the start: at most 2e-6 for gas and for tubes of flow index 0.5
/// and above, 1e-5 with passages before them, 3e-4 for a flow index down to 0.2; 5e-3 where a passage passes over half of its
/// limit and bends within less than the distance between knots. Below 2 Pa, where a straight line stands for the law, the
/// absolute error is at most the flow at 2 Pa.
/// </remarks>
internal sealed class FlowTable
{
    private const int BitsPerOctave = 3;
    private const int Shift = 52 - BitsPerOctave;
    private const int Octaves = 28;
    private const int Pieces = Octaves << BitsPerOctave;

    // 2 Pa has the biased exponent 1024.
    private const long First = 1024L << BitsPerOctave;

    // The slope at a knot is taken over this part of it.
    private const double Nearby = 1e-4;

    private readonly double[] _coefficients = new double[5 * Pieces];
    private double _startPa;
    private double _belowSlope;
    private double _lastFlow;
    private double _lastSlope;

    /// <summary>Tabulates a law; nothing is allocated.</summary>
    internal void Fill<TLaw>(in TLaw law)
        where TLaw : struct, IFlowLaw
    {
        _startPa = law.StartPa;
        double from = Knot(0);
        double flow = law.FlowM3PerS(_startPa + from);
        double slope = Slope(law, from);
        _belowSlope = flow / from;
        for (int piece = 0; piece < Pieces; piece++)
        {
            double to = Knot(piece + 1);
            double next = law.FlowM3PerS(_startPa + to);
            double nextSlope = Slope(law, to);
            Lay(piece, to - from, flow, next - flow, slope, nextSlope);
            from = to;
            flow = next;
            slope = nextSlope;
        }

        _lastFlow = flow;
        _lastSlope = slope;
    }

    /// <summary>How flow rises with the drop where it begins; 0 for a lubricant with a yield stress, m3/s per Pa.</summary>
    internal double SlopeAtOnset => _startPa > 0 ? 0 : _belowSlope;

    /// <summary>The flow at a drop, m3/s, and how it changes with the drop, m3/s per Pa. Odd: a negative drop flows back.</summary>
    internal double Flow(double dropPa, out double slope)
    {
        double above = Math.Abs(dropPa) - _startPa;
        if (!(above > 0))
        {
            slope = 0;
            return 0;
        }

        double flow;
        long piece = (BitConverter.DoubleToInt64Bits(above) >> Shift) - First;
        if (piece < 0)
        {
            slope = _belowSlope;
            flow = above * slope;
        }
        else if (piece >= Pieces)
        {
            slope = _lastSlope;
            flow = _lastFlow + ((above - Knot(Pieces)) * slope);
        }
        else
        {
            int at = (int)piece * 5;
            double perWidth = _coefficients[at + 4];
            double t = (above - Knot(piece)) * perWidth;
            double c1 = _coefficients[at + 1];
            double c2 = _coefficients[at + 2];
            double c3 = _coefficients[at + 3];
            flow = _coefficients[at] + (t * (c1 + (t * (c2 + (t * c3)))));
            slope = (c1 + (t * ((2 * c2) + (t * 3 * c3)))) * perWidth;
        }

        return dropPa < 0 ? -flow : flow;
    }

    private static double Knot(long piece) => BitConverter.Int64BitsToDouble((piece + First) << Shift);

    private static double Slope<TLaw>(in TLaw law, double above)
        where TLaw : struct, IFlowLaw
    {
        double step = above * Nearby;
        return (law.FlowM3PerS(law.StartPa + above + step) - law.FlowM3PerS(law.StartPa + above - step)) / (2 * step);
    }

    // A cubic that stays monotone: neither slope may exceed three times the chord's (Fritsch and Carlson 1980, from memory).
    private void Lay(int piece, double width, double flow, double rise, double slope, double nextSlope)
    {
        double most = 3 * rise;
        double d0 = Math.Min(Math.Max(slope * width, 0), most);
        double d1 = Math.Min(Math.Max(nextSlope * width, 0), most);
        int at = piece * 5;
        _coefficients[at] = flow;
        _coefficients[at + 1] = d0;
        _coefficients[at + 2] = (3 * rise) - (2 * d0) - d1;
        _coefficients[at + 3] = d0 + d1 - (2 * rise);
        _coefficients[at + 4] = 1 / width;
    }
}
