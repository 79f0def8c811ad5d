using System;
using System.Linq;

namespace LubeController.Plant.Tests.Proof.Metamorphic;

/// <summary>What a running divider does, averaged over whole cycles: from one closing of its first cycle switch to a later one.</summary>
/// <param name="Count">Whole cycles.</param>
/// <param name="Seconds">Time of them all, s.</param>
/// <param name="VolumesM3">What each outlet received in them, m3.</param>
/// <param name="PeakPa">The highest pressure at the pump meanwhile, Pa.</param>
internal sealed record Cycles(int Count, double Seconds, double[] VolumesM3, double PeakPa)
{
    internal double CycleS => Seconds / Count;

    internal double TotalM3 => VolumesM3.Sum();

    /// <summary>Flow to an outlet, m3/s; 0 where not one cycle was whole.</summary>
    internal double FlowM3PerS(int outlet) => Count == 0 ? 0 : VolumesM3[outlet] / Seconds;

    internal double TotalFlowM3PerS => Count == 0 ? 0 : TotalM3 / Seconds;

    /// <summary>Runs for a time and takes the whole cycles in it.</summary>
    internal static Cycles Within(LubricationSystem system, double seconds) => Take(system, seconds, int.MaxValue);

    /// <summary>Runs until so many whole cycles are done, or a time is up.</summary>
    internal static Cycles Take(LubricationSystem system, double mostSeconds, int cycles)
    {
        long endUs = system.NowUs + (long)(mostSeconds * 1e6);
        long crossings = system.TripCrossings(0);
        long fromUs = -1;
        long toUs = -1;
        int count = -1;
        double peak = 0;
        double peakAtEdge = 0;
        double[] from = [];
        double[] to = [];
        while (count < cycles && system.NextEventUs <= endUs)
        {
            system.AdvanceTo(system.NextEventUs);
            peak = Math.Max(peak, system.LinePressurePa);
            if (system.TripCrossings(0) == crossings)
                continue;
            crossings = system.TripCrossings(0);
            count++;
            toUs = system.NowUs;
            to = Volumes(system);
            if (count == 0)
            {
                fromUs = toUs;
                from = to;
                peak = system.LinePressurePa;
            }

            peakAtEdge = peak;
        }

        if (count < cycles)
            system.AdvanceTo(endUs);
        return count <= 0
            ? new Cycles(0, mostSeconds, new double[system.OutletCount], peak)
            : new Cycles(count, (toUs - fromUs) / 1e6, [.. to.Zip(from, (after, before) => after - before)], peakAtEdge);
    }

    private static double[] Volumes(LubricationSystem system) =>
        [.. Enumerable.Range(0, system.OutletCount).Select(system.OutletDeliveredM3)];
}
