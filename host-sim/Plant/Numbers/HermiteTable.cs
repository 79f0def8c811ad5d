using System;

namespace LubeController.Plant.Numbers;

/// <summary>
/// A smooth function of one variable as cubic Hermite pieces of equal width: values and slopes at the knots are computed at
/// load and rounded to twelve digits; a look-up costs a few multiplications. The error is at most width⁴/384 × the fourth
/// derivative. Monotone where the function is and its slope changes little within a piece.
/// </summary>
internal sealed class HermiteTable
{
    private readonly double _from;
    private readonly double _perWidth;
    private readonly double[] _coefficients;

    internal HermiteTable(double from, double to, int pieces, Func<double, double> value, Func<double, double> slope)
    {
        double width = (to - from) / pieces;
        _from = from;
        _perWidth = pieces / (to - from);
        _coefficients = new double[4 * pieces];
        double left = RoundedTable.Digits12(value(from));
        double leftSlope = width * RoundedTable.Digits12(slope(from));
        for (int piece = 0; piece < pieces; piece++)
        {
            double at = from + ((piece + 1) * width);
            double right = RoundedTable.Digits12(value(at));
            double rightSlope = width * RoundedTable.Digits12(slope(at));
            double rise = right - left;
            _coefficients[4 * piece] = left;
            _coefficients[(4 * piece) + 1] = leftSlope;
            _coefficients[(4 * piece) + 2] = (3 * rise) - (2 * leftSlope) - rightSlope;
            _coefficients[(4 * piece) + 3] = leftSlope + rightSlope - (2 * rise);
            left = right;
            leftSlope = rightSlope;
        }

        Last = left;
    }

    /// <summary>The value at the last knot.</summary>
    internal double Last { get; }

    /// <summary>The value at a place within the table; beyond its ends that of the nearer end piece, carried on.</summary>
    internal double At(double place)
    {
        double scaled = (place - _from) * _perWidth;
        int piece = Math.Clamp((int)scaled, 0, (_coefficients.Length / 4) - 1);
        return At(piece, scaled - piece);
    }

    /// <summary>The value in a piece, at a part of its width from 0 to 1.</summary>
    internal double At(int piece, double part)
    {
        ReadOnlySpan<double> c = _coefficients.AsSpan(4 * piece, 4);
        return c[0] + (part * (c[1] + (part * (c[2] + (part * c[3])))));
    }
}
