using System;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Hydraulics;

/// <summary>The ways between and out of the volumes of a network that are open now, and what flows through them.</summary>
internal sealed class BranchFlows
{
    private Branch[] _branches = new Branch[16];

    internal int Count { get; private set; }

    /// <summary>The branches that are open.</summary>
    internal ReadOnlySpan<Branch> All => new(_branches, 0, Count);

    /// <summary>Flow of each at the step's start, m3/s.</summary>
    internal double[] FlowM3PerS { get; private set; } = new double[16];

    /// <summary>Rise of that flow with the drop, m3/s per Pa.</summary>
    internal double[] SlopeM3PerSPa { get; private set; } = new double[16];

    /// <summary>Flow of each at the step's second stage, m3/s.</summary>
    internal double[] StageFlowM3PerS { get; private set; } = new double[16];

    /// <summary>Volume through each in the planned step, m3 at the pressure where it flows.</summary>
    internal double[] VolumeM3 { get; private set; } = new double[16];

    internal ref readonly Branch this[int index] => ref _branches[index];

    internal void Clear() => Count = 0;

    internal void Add(in Branch branch)
    {
        if (Count == _branches.Length)
            Reserve(2 * _branches.Length);
        _branches[Count++] = branch;
    }

    /// <summary>Makes room for so many branches, so that none is made later.</summary>
    internal void Reserve(int length)
    {
        if (length <= _branches.Length)
            return;
        Array.Resize(ref _branches, length);
        FlowM3PerS = Resized(FlowM3PerS, length);
        SlopeM3PerSPa = Resized(SlopeM3PerSPa, length);
        StageFlowM3PerS = Resized(StageFlowM3PerS, length);
        VolumeM3 = Resized(VolumeM3, length);
    }

    /// <summary>Finds the flows at the step's start, and their slopes.</summary>
    internal void Begin(double[] pressurePa)
    {
        for (int b = 0; b < Count; b++)
        {
            ref readonly Branch branch = ref _branches[b];
            FlowM3PerS[b] = Flow(branch, pressurePa, out double drop, out SlopeM3PerSPa[b]);
            if (drop <= 0 && branch.OneWay && drop > -2 * Crossing.NearPa(branch.OffsetPa))
                SlopeM3PerSPa[b] = SlopeAtOnset(branch);
        }
    }

    /// <summary>Finds the flows at the step's second stage.</summary>
    internal void FindStageFlows(double[] pressurePa)
    {
        for (int b = 0; b < Count; b++)
            StageFlowM3PerS[b] = Flow(_branches[b], pressurePa, out _, out _);
    }

    /// <summary>Whether no flow exceeds a bound, m3/s.</summary>
    internal bool Still(double boundM3PerS)
    {
        for (int b = 0; b < Count; b++)
        {
            if (Math.Abs(FlowM3PerS[b]) > boundM3PerS)
                return false;
        }

        return true;
    }

    /// <summary>The node that a branch flows out of at the step's start.</summary>
    internal int Upstream(in Branch branch, int index) => FlowM3PerS[index] >= 0 || branch.To < 0 ? branch.From : branch.To;

    /// <summary>
    /// Looks for one-way flows that begin or cease within the tried step: there they have a corner, which the stages do not
    /// see. Corners that cost less than a volume, which is at most what the node stores meanwhile, are left alone.
    /// </summary>
    internal void FindCorners(NodeVolumes nodes, double seconds, double leastM3, ref Crossing crossing)
    {
        for (int b = 0; b < Count; b++)
        {
            ref readonly Branch branch = ref _branches[b];
            if (!branch.OneWay)
                continue;
            double start = nodes.PressurePa[branch.From] - branch.OffsetPa;
            double end = nodes.EndPressurePa[branch.From] - branch.OffsetPa;
            if (branch.To >= 0)
            {
                start -= nodes.PressurePa[branch.To];
                end -= nodes.EndPressurePa[branch.To];
            }

            if (start > 0 == end > 0)
                continue;
            double closed = start > 0 ? -end : -start;
            double slope = Math.Max(SlopeM3PerSPa[b], SlopeAtOnset(branch));
            double amiss = 0.5 * seconds * slope * closed * closed / Math.Abs(end - start);
            if (Math.Min(amiss, closed / nodes.SlopePaPerM3[branch.From]) <= leastM3)
                continue;
            double near = Crossing.NearPa(branch.OffsetPa);
            crossing.Rising(start, end, 0, near);
            crossing.Falling(start, end, 0, near);
        }
    }

    private static double[] Resized(double[] array, int length)
    {
        Array.Resize(ref array, length);
        return array;
    }

    // A way that stands right at its onset is about to open: the matrix must know how steeply.
    private static double SlopeAtOnset(in Branch branch) => branch.Weight * (branch.Table?.SlopeAtOnset ?? branch.Conductance);

    private static double Flow(in Branch branch, double[] pressurePa, out double drop, out double slope)
    {
        drop = pressurePa[branch.From] - branch.OffsetPa;
        if (branch.To >= 0)
            drop -= pressurePa[branch.To];
        if (branch.OneWay && drop <= 0)
        {
            slope = 0;
            return 0;
        }

        if (branch.Table is null)
        {
            slope = branch.Weight * branch.Conductance;
            return slope * drop;
        }

        double flow = branch.Table.Flow(drop, out slope);
        slope *= branch.Weight;
        return branch.Weight * flow;
    }
}
