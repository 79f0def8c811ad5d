using System;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>Random cases that depend on a seed alone: SplitMix64 (Steele, Lea and Flood 2014, from memory).</summary>
internal sealed class Draws(ulong seed)
{
    private ulong _state = seed;

    internal double Between(double low, double high) => low + ((high - low) * Fraction());

    internal double LogBetween(double low, double high) => low * Math.Pow(high / low, Fraction());

    private double Fraction()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            ulong z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
        }
    }
}
