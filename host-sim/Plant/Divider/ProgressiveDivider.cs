using System;
using System.Collections.Generic;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Numbers;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;
using LubeController.Plant.Sensors;

namespace LubeController.Plant.Divider;

/// <summary>
/// The series-progressive divider, piston by piston: a twisted ring. Piston i at an end of its travel opens the gallery to
/// one end chamber of piston i+1 and the other chamber to its port; the last piston sends the first the other way. In
/// mid-travel a piston closes both ways of its successor, at once on leaving its end: pistons that leave their ends in the
/// same instant close each other's ways, however little they have moved.
/// </summary>
internal sealed class ProgressiveDivider
{
    /// <summary>
    /// A piston as near as this to its end when a step ends arrives with it, part of a stroke: pistons that travel in step
    /// arrive in an exact tie although what the line stores differs a little from tie to tie.
    /// </summary>
    private const double Tie = 1e-6;

    private readonly PistonRing _ring;
    private readonly DividerPassages _passages;
    private readonly PistonDrive _drive;
    private readonly OpenWays _ways;
    private readonly CycleSwitch[][] _switchesOfPiston;
    private readonly double[] _rate;

    /// <param name="divider">What it is built from.</param>
    /// <param name="unit">Its number: 0 the main one.</param>
    /// <param name="firstSection">Number of its first section among all.</param>
    /// <param name="node">The node that its gallery belongs to.</param>
    /// <param name="outlets">All outlets of the plant.</param>
    /// <param name="switches">All cycle switches of the plant.</param>
    internal ProgressiveDivider(DividerDescription divider, int unit, int firstSection, int node, OutletLine[] outlets, CycleSwitch[] switches)
    {
        Unit = unit;
        FirstSection = firstSection;
        _ring = new PistonRing(divider.Sections);
        _passages = new DividerPassages(divider, outlets);
        _drive = new PistonDrive(divider, node, _ring, _passages);
        _ways = new OpenWays(divider, unit, node, _ring, _drive, _passages);
        _rate = new double[_ring.Count];
        _switchesOfPiston = new CycleSwitch[_ring.Count][];
        for (int i = 0; i < _ring.Count; i++)
            _switchesOfPiston[i] = SwitchesOf(divider.Sections[i].Name, switches);
    }

    /// <summary>Number of the divider: 0 the main one.</summary>
    internal int Unit { get; }

    /// <summary>Number of its first section among all of the plant.</summary>
    internal int FirstSection { get; }

    internal int Sections => _ring.Count;

    internal bool InletBlocked
    {
        get => _drive.InletBlocked;
        set => _drive.InletBlocked = value;
    }

    /// <summary>Whether a piston moves in the planned step.</summary>
    internal bool Moves { get; private set; }

    /// <summary>Pistons whose rate differs from that of the step before; bit i is piston i.</summary>
    internal ulong ChangedPistons { get; private set; }

    internal double FullCycleVolumeM3 => _ring.FullCycleVolumeM3;

    /// <summary>Whether the pistons close every way among themselves and no clearance lets one creep.</summary>
    internal bool HydraulicallyLocked => _ring.AllInMidTravel && (_passages.ClearanceFlowM3PerS == 0 || !_ring.AnyLeans);

    internal int Outlet(int section, Side side) => _passages.OutletOf(Port(section, side));

    internal long Strokes(int section, Side side) => _ring.Strokes(Port(section, side));

    /// <summary>The number of travelling waves.</summary>
    internal int Waves() => _ring.Waves();

    /// <summary>The piston that a blockage or its own stiffness keeps from moving on, or -1.</summary>
    internal int BlockedPiston(out Side side) => _drive.BlockedPiston(out side);

    internal double TravelAfter(int piston, double part) => _ring.TravelAfter(piston, part);

    internal double DisplacedAfter(int piston, double part) => _ring.DisplacedAfter(piston, part);

    /// <summary>What all its pistons displaced since the start, m3.</summary>
    internal double DisplacedM3(double part)
    {
        double sum = 0;
        for (int i = 0; i < _ring.Count; i++)
            sum += _ring.DisplacedAfter(i, part);
        return sum;
    }

    /// <summary>Adds bypass to a piston, m3/s per Pa at reference viscosity.</summary>
    internal void Wear(int piston, double bypass) => _ways.Wear(piston, bypass);

    /// <summary>Adds to what a piston needs, Pa.</summary>
    internal void Stiffen(int piston, double pressurePa) => _drive.Stiffen(piston, pressurePa);

    internal void Stick(int piston, bool stuck) => _drive.Stick(piston, stuck);

    /// <summary>Whether a piston stands that has its way open and the pressure to move, and only a blocked outlet keeps it.</summary>
    internal bool IsKeptBy(Network network, int outlet) => _drive.IsKeptBy(network, outlet);

    /// <summary>Whether a piston has its way open and pressure that a sound one would move by.</summary>
    internal bool IsPushed(Network network, int piston) => _drive.IsPushed(network, piston);

    /// <summary>Whether any piston would move if nothing but the inlet stood in its way.</summary>
    internal bool WouldMove(Network network) => _drive.AnyPushed(network);

    /// <summary>Follows the lubricant as it is now.</summary>
    internal void FollowLubricant(LubricantProperties lubricant) => _passages.FollowLubricant(lubricant);

    /// <summary>Lets pistons leave their ends that have the pressure to, and adds every open way to the network.</summary>
    internal void Resolve(Network network, double viscosityRatio) => _ways.Resolve(network, viscosityRatio);

    /// <summary>Looks for what the tried step would pass: ends, switches, and pressures that set pistons moving.</summary>
    internal void FindCrossing(Network network, ref Crossing crossing)
    {
        foreach (int piston in _ways.Movable)
        {
            int branch = _ways.BranchOf(piston);
            if (branch >= 0)
            {
                FindCrossingOnTheWay(piston, network.BranchVolumeM3(branch), ref crossing);
                continue;
            }

            PistonPosition end = _ways.Destination(piston);
            crossing.Rising(_drive.DrivePa(network, piston, end, 0), _drive.DrivePa(network, piston, end, 1), 0, Crossing.NearPa(_drive.NeedPa(piston)));
        }
    }

    /// <summary>Plans what the step moves; pistons that come within a tie of their ends arrive.</summary>
    /// <returns>Whether a volume was made up.</returns>
    internal bool Plan(Network network, double perSecond)
    {
        Moves = false;
        bool madeUp = false;
        _ring.ClearPlan();
        foreach (int piston in _ways.Movable)
        {
            int branch = _ways.BranchOf(piston);
            if (branch < 0)
                continue;
            bool right = _ways.IsTowardsRight(piston);
            double volume = network.BranchVolumeM3(branch);
            double left = _ring.LeftToEnd(piston, right);
            if (volume > 0 && volume != left && Math.Abs(volume - left) <= Tie * _ring.VolumeM3(piston))
            {
                network.SetBranchVolume(branch, left);
                volume = left;
                madeUp = true;
            }

            Moves |= volume > 0;
            _ring.Plan(piston, right ? volume : -volume);
        }

        NoteRates(perSecond);
        return madeUp;
    }

    internal void Commit(double part) => _ring.Commit(part);

    /// <summary>Lets what was reached happen: switches change, pistons arrive.</summary>
    internal void Reach()
    {
        for (int i = 0; i < _ring.Count; i++)
        {
            double planned = _ring.Planned(i);
            if (planned == 0)
                continue;
            bool right = planned > 0;
            double near = PistonRing.Near * _ring.VolumeM3(i);
            foreach (CycleSwitch cycle in _switchesOfPiston[i])
            {
                double target = cycle.Target(right);
                if (!double.IsNaN(target) && _ring.Left(i, target, right) <= near)
                    cycle.Change();
            }

            if (_ring.LeftToEnd(i, right) <= near)
                _ring.Arrive(i, right ? PistonPosition.AtR : PistonPosition.AtL);
        }
    }

    private static CycleSwitch[] SwitchesOf(string section, CycleSwitch[] switches)
    {
        var found = new List<CycleSwitch>();
        for (int s = 0; s < switches.Length; s++)
        {
            if (string.Equals(switches[s].Section, section, StringComparison.Ordinal))
                found.Add(switches[s]);
        }

        return [.. found];
    }

    private int Port(int section, Side side) => side == Side.L ? section : section + _ring.Count;

    private void FindCrossingOnTheWay(int piston, double volume, ref Crossing crossing)
    {
        if (volume <= 0)
            return;
        bool right = _ways.IsTowardsRight(piston);
        double near = PistonRing.Near * _ring.VolumeM3(piston);
        crossing.Rising(0, volume, _ring.LeftToEnd(piston, right), near);
        foreach (CycleSwitch cycle in _switchesOfPiston[piston])
        {
            double target = cycle.Target(right);
            if (!double.IsNaN(target))
                crossing.Rising(0, volume, _ring.Left(piston, target, right), near);
        }

        if (_ways.Creeping && !_ring.LeansTo(piston, right))
            crossing.Rising(0, volume, _ring.Left(piston, _ring.VolumeM3(piston) / 2, right), near);
    }

    private void NoteRates(double perSecond)
    {
        ulong changed = 0;
        for (int i = 0; i < _rate.Length; i++)
        {
            double rate = _ring.Planned(i) * perSecond;
            if (rate != _rate[i])
                changed |= 1UL << i;
            _rate[i] = rate;
        }

        ChangedPistons = changed;
    }
}
