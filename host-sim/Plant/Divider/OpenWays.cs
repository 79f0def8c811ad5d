using System;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Divider;

/// <summary>The ways through a divider that are open now: behind pistons that can move, and past pistons that leak.</summary>
internal sealed class OpenWays
{
    private readonly int _unit;
    private readonly int _node;
    private readonly PistonRing _ring;
    private readonly PistonDrive _drive;
    private readonly DividerPassages _passages;
    private readonly double[] _share;
    private readonly double[] _bypass;
    private readonly double[] _worn;
    private readonly bool[] _leaving;

    // Pistons that could move if the pressure were there, where to, and by which branch: -1 where the pressure lacks.
    private readonly int[] _movable;
    private readonly PistonPosition[] _destination;
    private readonly int[] _branchOf;
    private int _movableCount;

    internal OpenWays(DividerDescription divider, int unit, int node, PistonRing ring, PistonDrive drive, DividerPassages passages)
    {
        _unit = unit;
        _node = node;
        _ring = ring;
        _drive = drive;
        _passages = passages;
        _share = new double[ring.Count];
        _bypass = new double[ring.Count];
        _worn = new double[ring.Count];
        _leaving = new bool[ring.Count];
        _movable = new int[ring.Count];
        _destination = new PistonPosition[ring.Count];
        _branchOf = new int[ring.Count];
        for (int i = 0; i < ring.Count; i++)
        {
            _share[i] = divider.Sections[i].FlowShare;
            _bypass[i] = divider.Sections[i].BypassM3PerSPa;
        }
    }

    /// <summary>Pistons that could move if the pressure were there.</summary>
    internal ReadOnlySpan<int> Movable => new(_movable, 0, _movableCount);

    /// <summary>Whether pistons creep only, by what seeps past closed lands.</summary>
    internal bool Creeping { get; private set; }

    internal bool IsTowardsRight(int piston) => _destination[piston] == PistonPosition.AtR;

    internal PistonPosition Destination(int piston) => _destination[piston];

    /// <summary>The branch behind a movable piston, or -1 where the pressure lacks.</summary>
    internal int BranchOf(int piston) => _branchOf[piston];

    /// <summary>Adds bypass to a piston, m3/s per Pa at reference viscosity.</summary>
    internal void Wear(int piston, double bypass) => _worn[piston] = bypass;

    /// <summary>Lets pistons leave their ends that have the pressure to, and adds every open way to the network.</summary>
    /// <param name="network">The network; pressures as of now.</param>
    /// <param name="viscosityRatio">Viscosity now over that at reference temperature.</param>
    internal void Resolve(Network network, double viscosityRatio)
    {
        do
            FindMovable();
        while (LeaveEnds(network));
        foreach (int piston in Movable)
        {
            _branchOf[piston] = -1;
            if (_ring.At(piston) == PistonPosition.MidTravel && _drive.IsDriven(network, piston, _destination[piston]))
                AddStroke(network, piston);
        }

        if (!_drive.InletBlocked)
            AddBypasses(network, viscosityRatio);
    }

    private void FindMovable()
    {
        _movableCount = 0;
        Creeping = false;
        if (_drive.InletBlocked)
            return;
        bool anyAtEnd = false;
        for (int i = 0; i < _ring.Count; i++)
        {
            if (!_ring.TrySentTo(i, out PistonPosition end))
                continue;
            anyAtEnd = true;
            AddMovable(i, end);
        }

        if (anyAtEnd || !(_passages.ClearanceFlowM3PerS > 0))
            return;
        // All in mid-travel: what seeps past a land seeps most where its piston is nearer to opening.
        Creeping = true;
        for (int i = 0; i < _ring.Count; i++)
        {
            if (_ring.TryCreepTo(i, out PistonPosition end))
                AddMovable(i, end);
        }
    }

    private void AddMovable(int piston, PistonPosition end)
    {
        if (_ring.At(piston) == end || _drive.IsKept(piston, end))
            return;
        _destination[piston] = end;
        _movable[_movableCount++] = piston;
    }

    // All that leave in the same instant were free to: only when all are found do they close each other's ways.
    private bool LeaveEnds(Network network)
    {
        bool left = false;
        foreach (int piston in Movable)
        {
            _leaving[piston] = _ring.At(piston) != PistonPosition.MidTravel && _drive.IsDriven(network, piston, _destination[piston]);
            left |= _leaving[piston];
        }

        if (!left)
            return false;
        foreach (int piston in Movable)
        {
            if (_leaving[piston])
                _ring.LeaveEnd(piston);
        }

        return true;
    }

    private void AddStroke(Network network, int piston)
    {
        int port = _ring.Port(piston, _destination[piston]);
        OutletLine outlet = _passages.Outlet(port);
        _branchOf[piston] = network.Branches;
        network.Add(new Branch
        {
            Kind = BranchKind.Stroke,
            Part = piston,
            Unit = _unit,
            Outlet = _passages.OutletOf(port),
            From = _node,
            To = outlet.Node,
            OffsetPa = _drive.NeedPa(piston) + outlet.OffsetPa,
            Weight = _share[piston] * outlet.Open,
            Table = Creeping ? _passages.Creep : _passages.Table(port),
            OneWay = true,
        });
    }

    // The piston's pressure side leaks past it to the side that its way out is open from.
    private void AddBypasses(Network network, double viscosityRatio)
    {
        for (int i = 0; i < _ring.Count; i++)
        {
            double conductance = _bypass[i] + _worn[i];
            if (conductance == 0 || !_ring.TrySentTo(i, out PistonPosition end))
                continue;
            int port = _ring.Port(i, end);
            OutletLine outlet = _passages.Outlet(port);
            if (outlet.Blocked)
                continue;
            network.Add(new Branch
            {
                Kind = BranchKind.Bypass,
                Part = i,
                Unit = _unit,
                Outlet = _passages.OutletOf(port),
                From = _node,
                To = outlet.Node,
                OffsetPa = outlet.OffsetPa,
                Weight = 1,
                Conductance = conductance / viscosityRatio,
                OneWay = true,
            });
        }
    }
}
