using CsCheck;

namespace LubeController.Core.Tests;

/// <summary>Whole numbers drawn in a fixed sequence from a seed.</summary>
internal sealed class Dice(uint seed)
{
    private readonly PCG _pcg = new(1, seed);

    /// <summary>From 0 to one less than a number.</summary>
    public int Next(int below) => (int)_pcg.Next((uint)below);

    /// <summary>From a number to one less than another.</summary>
    public int Next(int from, int below) => from + Next(below - from);
}
