using System;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Pump;

/// <summary>
/// How one delivery stroke of a sine-shaped cam spreads over pieces of equal angle: piece k of K holds
/// (cos(pi k/K) - cos(pi (k+1)/K))/2 of the stroke. The pieces sum to the whole stroke.
/// </summary>
internal static class CamTable
{
    internal static double[] StrokeFractions(int segments)
    {
        var fractions = new double[segments];
        double rest = 1;
        for (int k = 0; k < segments - 1; k++)
        {
            double from = Math.Cos(Math.PI * k / segments);
            double to = Math.Cos(Math.PI * (k + 1) / segments);
            fractions[k] = RoundedTable.Digits12((from - to) / 2);
            rest -= fractions[k];
        }

        fractions[segments - 1] = rest;
        return fractions;
    }
}
