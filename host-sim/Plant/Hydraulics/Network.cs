using LubeController.Plant.Numbers;

namespace LubeController.Plant.Hydraulics;

/// <summary>
/// Volumes that store (nodes) and ways between and out of them (branches), carried from one instant to the next by steps.
/// A step is tried, and what it would change is kept beside the state until it is committed.
/// </summary>
internal sealed class Network
{
    private readonly NodeVolumes _nodes;
    private readonly BranchFlows _branches = new();
    private readonly CarriedAir _air;
    private readonly RosenbrockStep _step;
    private Inflow _pump;

    internal Network(double[] volumeM3, double[] complianceM3PerPa, double[] airM3, double gasExponent)
    {
        _nodes = new NodeVolumes(volumeM3, complianceM3PerPa, airM3, gasExponent);
        _air = new CarriedAir(_nodes, _branches);
        _step = new RosenbrockStep(_nodes, _branches, _air);
    }

    internal int Branches => _branches.Count;

    /// <summary>What the pump brings into node 0; set before each step.</summary>
    internal Inflow Pump
    {
        get => _pump;
        set => _pump = value;
    }

    /// <summary>Volume that the pump brings in the planned step, lubricant and air at atmosphere, m3.</summary>
    internal double PumpVolumeM3 => _step.PumpVolumeM3;

    /// <summary>The error that the planned step is estimated to make in a node's stored volume, m3: the largest.</summary>
    internal double ErrorM3 => _step.ErrorM3;

    /// <summary>How far the straight line between the planned step's pressures lies from the curve, Pa, at most.</summary>
    internal double BendPa => _nodes.BendPa;

    /// <summary>Whether the tried step would carry more air out of a node than is in it.</summary>
    internal bool WouldLackAir => _nodes.WouldLackAir;

    internal double PressurePa(int node) => _nodes.PressurePa[node];

    internal double EndPressurePa(int node) => _nodes.EndPressurePa[node];

    /// <summary>Pressure on the straight line to the planned step's end, Pa.</summary>
    internal double PressureAt(int node, double part) =>
        _nodes.PressurePa[node] + (part * (_nodes.EndPressurePa[node] - _nodes.PressurePa[node]));

    internal double VolumeM3(int node) => _nodes.VolumeM3[node];

    internal double AirM3(int node) => _nodes.AirM3[node];

    internal ref readonly Branch Branch(int index) => ref _branches[index];

    /// <summary>Flow of a branch at the step's start, m3/s.</summary>
    internal double FlowM3PerS(int branch) => _branches.FlowM3PerS[branch];

    /// <summary>Volume through a branch in the planned step, m3 at the pressure where it flows.</summary>
    internal double BranchVolumeM3(int branch) => _branches.VolumeM3[branch];

    /// <summary>The lubricant in each volume that leaves a node.</summary>
    internal double LiquidShare(int node) => _air.LiquidShare[node];

    /// <summary>The air at atmosphere with each volume that leaves a node.</summary>
    internal double AirShare(int node) => _air.AirShare[node];

    /// <summary>What all nodes hold beyond atmosphere, from their pressures, a part of the planned step on, m3.</summary>
    internal double StoredM3(double part) => _nodes.SumStoredM3(part);

    /// <summary>Air in all nodes, m3 at atmosphere, a part of the planned step on.</summary>
    internal double AirM3At(double part) => _nodes.SumAirM3(part);

    internal void ClearBranches() => _branches.Clear();

    internal void Add(in Branch branch) => _branches.Add(branch);

    /// <summary>Makes room for so many branches, so that none is made later.</summary>
    internal void Reserve(int branches) => _branches.Reserve(branches);

    /// <summary>Gives a branch of the planned step another volume; the end pressures have to be found again.</summary>
    internal void SetBranchVolume(int branch, double volumeM3) => _air.SetBranchVolume(branch, volumeM3);

    /// <summary>Notes shares and flows as of now; called once before steps are tried from here.</summary>
    internal void Begin()
    {
        _nodes.Begin();
        _air.Begin(_pump.AirShare);
        _branches.Begin(_nodes.PressurePa);
    }

    /// <summary>Whether nothing flows now, to the given bound, m3/s.</summary>
    internal bool Still(double boundM3PerS) => !(_pump.At(_nodes.PressurePa[0], out _) > 0) && _branches.Still(boundM3PerS);

    /// <summary>Plans that nothing changes.</summary>
    internal void PlanStandstill()
    {
        _nodes.PlanStandstill();
        _step.PlanStandstill();
    }

    /// <summary>Tries a step; what it would change is kept beside the state.</summary>
    internal void Try(double seconds)
    {
        _step.Try(seconds, _pump);
        _air.Carry(_step.PumpVolumeM3, _pump.AirShare);
    }

    /// <summary>Sets the shares in what leaves each node as of the middle of the tried step, and finds its end pressures.</summary>
    internal void FinishTry()
    {
        _nodes.FindEndPressures();
        if (_air.UseMiddleShares(_step.PumpVolumeM3, _pump.AirShare))
            _nodes.FindEndPressures();
    }

    /// <summary>Looks for one-way flows that begin or cease within the tried step and cost more than a volume.</summary>
    internal void FindCorners(double seconds, double leastM3, ref Crossing crossing) => _branches.FindCorners(_nodes, seconds, leastM3, ref crossing);

    /// <summary>Finds the pressures at the end of the planned step, after any change of branch volumes.</summary>
    internal void FindEndPressures() => _nodes.FindEndPressures();

    /// <summary>Makes a part of the planned step the present.</summary>
    internal void Commit(double part) => _nodes.Commit(part);

    /// <summary>Sets the air in all nodes, m3 at atmosphere.</summary>
    /// <returns>Stored volume lost by bleeding, m3.</returns>
    internal double SetAir(double airM3) => _nodes.SetAir(airM3);
}
