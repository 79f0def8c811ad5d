using System;
using System.Linq;

namespace LubeController.Scripts.Expectations.Curves;

/// <summary>The lower or the higher of two functions at every instant, with a breakpoint wherever they cross.</summary>
internal static class CurveJoin
{
    /// <summary>The lower of the two.</summary>
    public static Curve Lower(Curve first, Curve second) => Join(first, second, Math.Min);

    /// <summary>The higher of the two.</summary>
    public static Curve Higher(Curve first, Curve second) => Join(first, second, Math.Max);

    private static Curve Join(Curve first, Curve second, Func<double, double, double> pick)
    {
        double[] times = Times(first).Concat(Times(second)).Distinct().Order().ToArray();
        var joined = new Curve();
        (double Before, double At, double After) f = default;
        (double Before, double At, double After) g = default;
        for (int index = 0; index < times.Length; index++)
        {
            (double f0, double g0) = (f.After, g.After);
            f = first.ValuesAt(times[index]);
            g = second.ValuesAt(times[index]);
            if (index > 0)
                AddCrossing(joined, times[index - 1], times[index], f0, f.Before, g0, g.Before);
            joined.Add(times[index], pick(f.Before, g.Before), pick(f.At, g.At), pick(f.After, g.After));
        }

        return joined;
    }

    private static void AddCrossing(Curve joined, double from, double to, double f0, double f1, double g0, double g1)
    {
        double apart0 = f0 - g0;
        double apart1 = f1 - g1;
        if (apart0 * apart1 >= 0.0)
            return;
        double share = apart0 / (apart0 - apart1);
        double time = from + ((to - from) * share);
        double value = f0 + ((f1 - f0) * share);
        if (time > from && time < to)
            joined.Add(time, value, value, value);
    }

    private static System.Collections.Generic.IEnumerable<double> Times(Curve curve) =>
        Enumerable.Range(0, curve.Count).Select(curve.Time);
}
