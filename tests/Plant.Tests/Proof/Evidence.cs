using System;
using System.Collections.Generic;

namespace LubeController.Plant.Tests.Proof;

/// <summary>What a run left: the edges of its switches and the volumes at its outlets.</summary>
internal sealed class Evidence(LubricationSystem system) : IPlantObserver
{
    private readonly List<Edge> _edges = [];
    private readonly List<double[]> _volumesAtEdges = [];
    private ulong _levels = Levels(system);

    /// <summary>All edges in order: cycle switches by number, then the pressure switch.</summary>
    internal IReadOnlyList<Edge> Edges => _edges;

    /// <summary>What each outlet had received at each edge, m3.</summary>
    internal IReadOnlyList<double[]> VolumesAtEdges => _volumesAtEdges;

    /// <summary>What each outlet has received at the end, m3.</summary>
    internal double[] VolumesAtEnd { get; private set; } = [];

    internal double PeakPa { get; private set; }

    internal LubricationSystem System => system;

    /// <summary>The time of one cycle, s: between the first and the last closing of switch 0, over the cycles between; of one pulse alone the time to it.</summary>
    internal double CycleS { get; private set; }

    public void OnEvent(LubricationSystem system, long timeUs, in PlantChange change)
    {
        PeakPa = Math.Max(PeakPa, system.LinePressurePa);
        if ((change.Quantities & (PlantQuantities.CycleSwitches | PlantQuantities.PressureSwitch)) == 0)
            return;
        ulong now = Levels(system);
        for (int bit = 0; bit < 64; bit++)
        {
            if (((now ^ _levels) >> bit & 1) == 0)
                continue;
            _edges.Add(new Edge(bit, (now >> bit & 1) != 0, timeUs));
            _volumesAtEdges.Add(Volumes());
        }

        _levels = now;
    }

    internal void Close()
    {
        VolumesAtEnd = Volumes();
        long first = -1;
        long last = -1;
        int cycles = -1;
        foreach (Edge edge in _edges)
        {
            if (edge.Switch != 0 || !edge.On)
                continue;
            first = first < 0 ? edge.AtUs : first;
            last = edge.AtUs;
            cycles++;
        }

        // Of a run too short for two pulses of switch 0: the time to its first.
        CycleS = cycles > 0 ? (last - first) / 1e6 / cycles : first / 1e6;
    }

    private double[] Volumes()
    {
        var volumes = new double[system.OutletCount];
        for (int outlet = 0; outlet < volumes.Length; outlet++)
            volumes[outlet] = system.OutletDeliveredM3(outlet);
        return volumes;
    }

    private static ulong Levels(LubricationSystem system)
    {
        ulong levels = 0;
        for (int i = 0; i < system.CycleSwitchCount; i++)
            levels |= system.CycleSwitchOn(i) ? 1UL << i : 0;
        return levels | (system.PressureSwitchOn ? 1UL << system.CycleSwitchCount : 0);
    }

    /// <summary>One edge of a switch.</summary>
    internal readonly record struct Edge(int Switch, bool On, long AtUs);
}
