using System;

namespace LubeController.Plant.Tests.Electrics.Spice;

/// <summary>Numbers from a seed: a linear congruence modulo 2^64 (Knuth's constants, from memory).</summary>
internal sealed class TestNumbers(ulong seed)
{
    private ulong _state = unchecked((seed * 2862933555777941757) + 3037000493);

    internal double Fraction()
    {
        _state = unchecked((_state * 6364136223846793005) + 1442695040888963407);
        return (_state >> 11) * (1.0 / (1UL << 53));
    }

    internal int Below(int count) => (int)(Fraction() * count);

    internal double Between(double low, double high) => low + ((high - low) * Fraction());

    internal double Decades(double low, double high) => low * Math.Pow(high / low, Fraction());
}
