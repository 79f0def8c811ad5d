using LubeController.Plant.Hydraulics;

namespace LubeController.Plant.Line;

/// <summary>Ways out of the line that lead to no point: vent valve, leaking check valve, leak and burst.</summary>
/// <param name="vent">The vent valve.</param>
/// <param name="end">The last node of the line.</param>
internal sealed class LineDrains(VentValve vent, int end)
{
    /// <summary>What the check valve lets back to the reservoir at reference viscosity, m3/s per Pa.</summary>
    internal double CheckValveM3PerSPa { get; set; }

    /// <summary>What a joint at the end of the line loses at reference viscosity, m3/s per Pa.</summary>
    internal double LeakM3PerSPa { get; set; }

    /// <summary>What an opening at the pump loses, whatever the viscosity, m3/s per Pa.</summary>
    internal double BurstM3PerSPa { get; set; }

    internal void Resolve(Network network, double viscosityRatio)
    {
        if (vent.OpenM3PerSPa > 0)
            Add(network, BranchKind.Vent, 0, vent.OpenM3PerSPa / viscosityRatio);
        if (CheckValveM3PerSPa > 0)
            Add(network, BranchKind.CheckValve, 0, CheckValveM3PerSPa / viscosityRatio);
        if (LeakM3PerSPa > 0)
            Add(network, BranchKind.Leak, end, LeakM3PerSPa / viscosityRatio);
        if (BurstM3PerSPa > 0)
            Add(network, BranchKind.Leak, 0, BurstM3PerSPa);
    }

    private static void Add(Network network, BranchKind kind, int node, double conductance) =>
        network.Add(new Branch { Kind = kind, Outlet = -1, From = node, To = -1, Weight = 1, Conductance = conductance, OneWay = true });
}
