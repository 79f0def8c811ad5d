using System;

namespace LubeController.Plant.Numbers;

/// <summary>
/// x^p for positive x without a power function at run time: the binary exponent of x chooses a power of 2^p, the top eight
/// bits of its mantissa one of 256 cubic pieces of m^p on 1 to 2. Relative error at most 1e-9 for p from 1 to 5. Rises with
/// x, up to rounding: each power of 2^p is the one before times the table's own value at m = 2.
/// </summary>
internal sealed class PowerTable
{
    private const int PieceBits = 8;
    private const int PartBits = 52 - PieceBits;
    private const int LowestExponent = -160;
    private const int HighestExponent = 160;

    private readonly HermiteTable _mantissa;
    private readonly double[] _octaves = new double[HighestExponent - LowestExponent + 1];

    internal PowerTable(double power)
    {
        _mantissa = new HermiteTable(1, 2, 1 << PieceBits, m => Math.Pow(m, power), m => power * Math.Pow(m, power - 1));
        _octaves[-LowestExponent] = 1;
        for (int above = 1; above <= HighestExponent; above++)
            _octaves[above - LowestExponent] = _octaves[above - 1 - LowestExponent] * _mantissa.Last;
        for (int below = -1; below >= LowestExponent; below--)
            _octaves[below - LowestExponent] = _octaves[below + 1 - LowestExponent] / _mantissa.Last;
    }

    /// <summary>x^p for x of 0 or more; 0 under 2^-160 (7e-49), and x counts as under 2^161 (3e48).</summary>
    internal double Of(double x)
    {
        long bits = BitConverter.DoubleToInt64Bits(x);
        int exponent = (int)(bits >> 52) - 1023;
        if (exponent < LowestExponent)
            return 0;
        int piece = (int)(bits >> PartBits) & ((1 << PieceBits) - 1);
        double part = (bits & ((1L << PartBits) - 1)) * (1.0 / (1L << PartBits));
        return _octaves[Math.Min(exponent, HighestExponent) - LowestExponent] * _mantissa.At(piece, part);
    }
}
