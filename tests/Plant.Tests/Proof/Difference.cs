using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace LubeController.Plant.Tests.Proof;

/// <summary>How far two runs of the same plant lie apart.</summary>
/// <param name="Edges">Edges of all switches that were compared.</param>
/// <param name="PulsePart">The furthest that an edge moved, part of a cycle.</param>
/// <param name="VolumeAtPulsePart">The most by which an outlet's volume at the last edge differs, part of it.</param>
/// <param name="VolumeAtEndPart">The same at the end of the run.</param>
internal sealed record Difference(int Edges, double PulsePart, double VolumeAtPulsePart, double VolumeAtEndPart)
{
    internal static Difference Of(Evidence coarse, Evidence fine)
    {
        double worst = 0;
        int edges = 0;
        foreach (IGrouping<int, Evidence.Edge> switchEdges in fine.Edges.GroupBy(edge => edge.Switch))
        {
            Evidence.Edge[] others = [.. coarse.Edges.Where(edge => edge.Switch == switchEdges.Key)];
            Assert.Equal(switchEdges.Count(), others.Length);
            foreach ((Evidence.Edge one, Evidence.Edge other) in switchEdges.Zip(others))
            {
                Assert.Equal(one.On, other.On);
                worst = Math.Max(worst, Math.Abs(one.AtUs - other.AtUs) / 1e6);
                edges++;
            }
        }

        Assert.Equal(fine.Edges.Count, coarse.Edges.Count);
        return new Difference(
            edges,
            worst / fine.CycleS,
            edges == 0 ? 0 : Apart(coarse.VolumesAtEdges[^1], fine.VolumesAtEdges[^1]),
            Apart(coarse.VolumesAtEnd, fine.VolumesAtEnd));
    }

    public override string ToString() => FormattableString.Invariant(
        $"{Edges} edges moved by at most {PulsePart:0.0000 %} of a cycle, volumes by {VolumeAtPulsePart:0.0000 %} at the last one and {VolumeAtEndPart:0.0000 %} at the end");

    private static double Apart(IReadOnlyList<double> coarse, IReadOnlyList<double> fine)
    {
        double worst = 0;
        for (int outlet = 0; outlet < fine.Count; outlet++)
        {
            if (fine[outlet] != 0 || coarse[outlet] != 0)
                worst = Math.Max(worst, Math.Abs(coarse[outlet] - fine[outlet]) / Math.Abs(fine[outlet]));
        }

        return worst;
    }
}
