using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Tests.Support.Spice;

/// <summary>A voltage over time.</summary>
/// <param name="timesS">Times, s, rising.</param>
/// <param name="values">The voltages then.</param>
public sealed class SpiceCurve(double[] timesS, double[] values)
{
    /// <summary>The voltages at every step that was taken.</summary>
    public IReadOnlyList<double> Values => values;

    /// <summary>Greatest less least.</summary>
    public double Range => values.Max() - values.Min();

    /// <summary>The voltage at a time within the run, on the straight line between two steps.</summary>
    public double At(double timeS)
    {
        int after = Array.BinarySearch(timesS, timeS);
        if (after >= 0)
            return values[after];
        after = Math.Clamp(~after, 1, timesS.Length - 1);
        double part = (timeS - timesS[after - 1]) / (timesS[after] - timesS[after - 1]);
        return values[after - 1] + (part * (values[after] - values[after - 1]));
    }
}
