using System;
using LubeController.Plant.Numbers;

namespace LubeController.Handbook.Tests.Fluids;

/// <summary>Random cases that depend on a seed alone.</summary>
internal sealed class Draws(ulong seed)
{
    private readonly SeededGenerator _dice = new(seed);

    internal double Between(double low, double high) => low + ((high - low) * _dice.NextFraction());

    internal double LogBetween(double low, double high) => low * Math.Pow(high / low, _dice.NextFraction());
}
