using System;

namespace LubeController.Plant.Hydraulics;

/// <summary>
/// One step of a network: a Rosenbrock step of order two with a factor of 1 - 1/sqrt(2), L-stable (ROS2; Verwer, Spee, Blom
/// and Hundsdorfer 1999, from memory). One matrix, two solutions, no iteration. Every branch's volume is a linear combination
/// of the same stages as the nodes' change, so what leaves one place arrives at another to rounding.
/// </summary>
internal sealed class RosenbrockStep(NodeVolumes nodes, BranchFlows branches, CarriedAir air)
{
    private const double Gamma = 0.29289321881345254;

    private readonly double[] _stagePressure = new double[nodes.Count];
    private readonly double[] _k1 = new double[nodes.Count];
    private readonly double[] _k2 = new double[nodes.Count];
    private readonly DominantMatrix _matrix = new(nodes.Count);

    /// <summary>Volume that the pump brings, lubricant and air at atmosphere, m3.</summary>
    internal double PumpVolumeM3 { get; private set; }

    /// <summary>The error estimated in a node's stored volume, m3: the largest.</summary>
    internal double ErrorM3 { get; private set; }

    /// <summary>Finds the volumes through all branches and from the pump in so many seconds.</summary>
    internal void Try(double seconds, in Inflow pump)
    {
        double gammaH = Gamma * seconds;
        double pump0 = pump.At(nodes.PressurePa[0], out double pumpSlope);
        FillMatrix(gammaH, pumpSlope);
        SumInflows(branches.FlowM3PerS, pump0, _k1);
        _matrix.Solve(_k1);
        for (int i = 0; i < _k1.Length; i++)
            _stagePressure[i] = nodes.PressureWith(i, seconds * _k1[i]);
        branches.FindStageFlows(_stagePressure);
        double pump1 = pump.At(_stagePressure[0], out _);
        SumInflows(branches.StageFlowM3PerS, pump1, _k2);
        for (int i = 0; i < _k2.Length; i++)
            _k2[i] -= 2 * _k1[i];
        _matrix.Solve(_k2);
        double first = pump0 + (gammaH * pumpSlope * nodes.SlopePaPerM3[0] * _k1[0]);
        double second = pump1 - (2 * first) + (gammaH * pumpSlope * nodes.SlopePaPerM3[0] * _k2[0]);
        PumpVolumeM3 = seconds * ((1.5 * first) + (0.5 * second));
        CombineStages(seconds, gammaH);
    }

    /// <summary>Plans that nothing flows.</summary>
    internal void PlanStandstill()
    {
        Array.Clear(branches.VolumeM3);
        PumpVolumeM3 = 0;
        ErrorM3 = 0;
    }

    // I - gamma h J, J taken over stored volume.
    private void FillMatrix(double gammaH, double pumpSlope)
    {
        double[] slope = nodes.SlopePaPerM3;
        double[] flowSlope = branches.SlopeM3PerSPa;
        _matrix.SetToIdentity();
        _matrix[0, 0] -= gammaH * pumpSlope * air.PumpRoom * slope[0];
        ReadOnlySpan<Branch> all = branches.All;
        for (int index = 0; index < all.Length; index++)
        {
            double by = gammaH * flowSlope[index];
            if (by == 0)
                continue;
            ref readonly Branch b = ref all[index];
            if (b.To < 0)
            {
                _matrix[b.From, b.From] += by * slope[b.From];
                continue;
            }

            int upstream = branches.Upstream(b, index);
            double from = by * air.RoomAt(b.From, upstream);
            double to = by * air.RoomAt(b.To, upstream);
            _matrix[b.From, b.From] += from * slope[b.From];
            _matrix[b.From, b.To] -= from * slope[b.To];
            _matrix[b.To, b.From] -= to * slope[b.From];
            _matrix[b.To, b.To] += to * slope[b.To];
        }

        _matrix.Factor();
    }

    private void SumInflows(double[] flow, double pump, double[] into)
    {
        Array.Clear(into);
        into[0] = pump * air.PumpRoom;
        ReadOnlySpan<Branch> all = branches.All;
        for (int index = 0; index < all.Length; index++)
        {
            ref readonly Branch b = ref all[index];
            if (b.To < 0)
            {
                into[b.From] -= flow[index];
                continue;
            }

            int upstream = branches.Upstream(b, index);
            into[b.From] -= flow[index] * air.RoomAt(b.From, upstream);
            into[b.To] += flow[index] * air.RoomAt(b.To, upstream);
        }
    }

    private void CombineStages(double seconds, double gammaH)
    {
        double shut = 0;
        double[] volumes = branches.VolumeM3;
        ReadOnlySpan<Branch> all = branches.All;
        for (int index = 0; index < all.Length; index++)
        {
            ref readonly Branch b = ref all[index];
            double volume = seconds * StageSum(b, index, gammaH);
            if (b.OneWay && volume < 0)
            {
                // The stages took a way that has closed for one that flows back: what they did not see is their error.
                shut = Math.Max(shut, -volume);
                volume = 0;
            }

            volumes[index] = volume;
        }

        double worst = 0;
        for (int i = 0; i < _k1.Length; i++)
            worst = Math.Max(worst, Math.Abs(_k1[i] + _k2[i]));
        ErrorM3 = Math.Max(0.5 * seconds * worst, shut);
    }

    private double StageSum(in Branch b, int index, double gammaH)
    {
        double[] slope = nodes.SlopePaPerM3;
        double by = gammaH * branches.SlopeM3PerSPa[index];
        double lift1 = slope[b.From] * _k1[b.From];
        double lift2 = slope[b.From] * _k2[b.From];
        if (b.To >= 0)
        {
            lift1 -= slope[b.To] * _k1[b.To];
            lift2 -= slope[b.To] * _k2[b.To];
        }

        double first = branches.FlowM3PerS[index] + (by * lift1);
        double second = branches.StageFlowM3PerS[index] - (2 * first) + (by * lift2);
        return (1.5 * first) + (0.5 * second);
    }
}
