using System;

namespace LubeController.Plant.Hydraulics;

/// <summary>
/// The air that flows carry between the volumes of a network: its share in each node as of the step's start. In the stages
/// it counts with the room that it takes at the pressure where it arrives.
/// </summary>
internal sealed class CarriedAir(NodeVolumes nodes, BranchFlows branches)
{
    private readonly double[] _reference = new double[nodes.Count];
    private bool _any;

    /// <summary>The lubricant in each volume that leaves a node.</summary>
    internal double[] LiquidShare { get; } = new double[nodes.Count];

    /// <summary>The air at atmosphere with each volume that leaves a node.</summary>
    internal double[] AirShare { get; } = new double[nodes.Count];

    /// <summary>The room that each volume from the pump takes in node 0.</summary>
    internal double PumpRoom { get; private set; }

    /// <summary>Notes shares as of now.</summary>
    internal void Begin(double pumpAirShare)
    {
        _any = pumpAirShare > 0;
        for (int i = 0; i < nodes.Count; i++)
        {
            double concentration = Math.Min(nodes.AirM3[i] / nodes.VolumeM3[i], 1);
            _any |= nodes.AirM3[i] > 0;
            AirShare[i] = concentration;
            LiquidShare[i] = 1 - (concentration * (1 - nodes.GivenUp[i]));
            _reference[i] = LiquidShare[i] + concentration;
        }

        PumpRoom = 1 - (pumpAirShare * nodes.GivenUp[0]);
    }

    /// <summary>
    /// The room at a node of each volume through a branch. One that leaves takes its own room; one that arrives takes more or
    /// less by what its air gave up on the way.
    /// </summary>
    internal double RoomAt(int node, int upstream) =>
        node == upstream ? 1 : 1 + (AirShare[upstream] * (nodes.GivenUp[upstream] - nodes.GivenUp[node]));

    /// <summary>
    /// Sets the shares in what leaves each node as of the middle of the tried step instead of its start, which leaves them
    /// an error of second order.
    /// </summary>
    /// <returns>Whether there is air, so that the end pressures have to be found again.</returns>
    internal bool UseMiddleShares(double pumpM3, double pumpAirShare)
    {
        if (!_any)
            return false;
        for (int i = 0; i < nodes.Count; i++)
        {
            LiquidShare[i] = 1 - (AirShare[i] * (1 - nodes.GivenUpAtMiddle(i)));
            _reference[i] = LiquidShare[i] + AirShare[i];
        }

        Carry(pumpM3, pumpAirShare);
        return true;
    }

    /// <summary>Adds up what the pump and the branches' volumes hold and where it goes.</summary>
    internal void Carry(double pumpM3, double pumpAirShare)
    {
        double[] storedChange = nodes.StoredChangeM3;
        double[] airChange = nodes.AirChangeM3;
        Array.Clear(storedChange);
        Array.Clear(airChange);
        storedChange[0] = pumpM3;
        airChange[0] = pumpM3 * pumpAirShare;
        double[] volume = branches.VolumeM3;
        ReadOnlySpan<Branch> all = branches.All;
        for (int index = 0; index < all.Length; index++)
        {
            ref readonly Branch branch = ref all[index];
            int upstream = branches.Upstream(branch, index);
            Move(storedChange, branch, volume[index] * _reference[upstream]);
            if (_any)
                Move(airChange, branch, volume[index] * AirShare[upstream]);
        }
    }

    /// <summary>Gives a branch of the planned step another volume.</summary>
    internal void SetBranchVolume(int index, double volumeM3)
    {
        double change = volumeM3 - branches.VolumeM3[index];
        branches.VolumeM3[index] = volumeM3;
        ref readonly Branch branch = ref branches[index];
        Move(nodes.StoredChangeM3, branch, change * _reference[branch.From]);
        Move(nodes.AirChangeM3, branch, change * AirShare[branch.From]);
    }

    private static void Move(double[] changes, in Branch branch, double amount)
    {
        changes[branch.From] -= amount;
        if (branch.To >= 0)
            changes[branch.To] += amount;
    }
}
