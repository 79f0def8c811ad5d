using System;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Numbers;
using LubeController.Plant.Pistons;
using LubeController.Plant.Sensors;

namespace LubeController.Plant.Divider;

/// <summary>Moves the pistons and what they actuate.</summary>
internal sealed partial class ProgressiveDivider
{
    /// <summary>How near to a target a position counts as there, part of a stroke.</summary>
    private const double Near = 1e-9;

    /// <summary>
    /// A piston as near as this to its end when a step ends arrives with it, part of a stroke: pistons that travel in step
    /// arrive in an exact tie although what the line stores differs a little from tie to tie.
    /// </summary>
    private const double Tie = 1e-6;

    private readonly double[] _delta;
    private readonly double[] _rate;

    internal bool Moves { get; private set; }

    /// <summary>Pistons whose rate differs from that of the step before; bit i is piston i.</summary>
    internal ulong ChangedPistons { get; private set; }

    internal double PositionAfter(int piston, double part) =>
        Math.Clamp(_position[piston] + (_delta[piston] * part), 0, _volume[piston]);

    internal double TravelAfter(int piston, double part) => PositionAfter(piston, part) / _volume[piston];

    internal double DisplacedAfter(int piston, double part) => _displaced[piston].Value + (Math.Abs(_delta[piston]) * part);

    /// <summary>What all its pistons displaced since the start, m3.</summary>
    internal double DisplacedM3(double part)
    {
        double sum = 0;
        for (int i = 0; i < _n; i++)
            sum += DisplacedAfter(i, part);
        return sum;
    }

    /// <summary>Looks for what the tried step would pass: ends, switches, and pressures that set pistons moving.</summary>
    internal void Look(Network network, ref Crossing crossing)
    {
        for (int k = 0; k < _movableCount; k++)
        {
            int piston = _movable[k];
            int branch = _branchOf[piston];
            if (branch < 0)
                crossing.Rising(DrivePa(network, piston, 0), DrivePa(network, piston, 1), 0, Crossing.NearPa(Need(piston)));
            if (branch >= 0)
                LookAlong(piston, network.BranchVolumeM3(branch), ref crossing);
        }
    }

    /// <summary>Takes over what the planned step moves; pistons that come within a tie of their ends arrive.</summary>
    /// <returns>Whether a volume was made up.</returns>
    internal bool Plan(Network network, double perSecond)
    {
        Moves = false;
        ulong changed = 0;
        bool madeUp = false;
        Array.Clear(_delta);
        for (int k = 0; k < _movableCount; k++)
        {
            int piston = _movable[k];
            int branch = _branchOf[piston];
            if (branch < 0)
                continue;
            double volume = network.BranchVolumeM3(branch);
            double left = _destination[piston] == PistonPosition.AtR ? _volume[piston] - _position[piston] : _position[piston];
            if (volume > 0 && volume != left && Math.Abs(volume - left) <= Tie * _volume[piston])
            {
                network.SetBranchVolume(branch, left);
                volume = left;
                madeUp = true;
            }

            Moves |= volume > 0;
            _delta[piston] = _destination[piston] == PistonPosition.AtR ? volume : -volume;
        }

        for (int i = 0; i < _n; i++)
        {
            double rate = _delta[i] * perSecond;
            if (rate != _rate[i])
                changed |= 1UL << i;
            _rate[i] = rate;
        }

        ChangedPistons = changed;
        return madeUp;
    }

    internal void Commit(double part)
    {
        for (int i = 0; i < _n; i++)
        {
            if (_delta[i] == 0)
                continue;
            _position[i] += _delta[i] * part;
            _displaced[i].Add(Math.Abs(_delta[i]) * part);
            Lean(i, _delta[i] > 0);
        }
    }

    /// <summary>Lets what was reached happen: switches change, pistons arrive.</summary>
    internal void Reach()
    {
        for (int i = 0; i < _n; i++)
        {
            if (_delta[i] == 0)
                continue;
            bool towardsRight = _delta[i] > 0;
            foreach (CycleSwitch cycle in _switchesOfPiston[i])
            {
                double target = cycle.Target(towardsRight);
                if (!double.IsNaN(target) && Left(i, target, towardsRight) <= Near * _volume[i])
                    cycle.Change();
            }

            double end = towardsRight ? _volume[i] : 0;
            if (Left(i, end, towardsRight) <= Near * _volume[i])
                Arrive(i, end, towardsRight ? PistonPosition.AtR : PistonPosition.AtL);
        }
    }

    private void LookAlong(int piston, double volume, ref Crossing crossing)
    {
        if (volume <= 0)
            return;
        bool towardsRight = _destination[piston] == PistonPosition.AtR;
        double near = Near * _volume[piston];
        LookFor(piston, volume, towardsRight ? _volume[piston] : 0, near, ref crossing);
        foreach (CycleSwitch cycle in _switchesOfPiston[piston])
        {
            double target = cycle.Target(towardsRight);
            if (!double.IsNaN(target))
                LookFor(piston, volume, target, near, ref crossing);
        }

        if (_creeping && _lean[piston] != (towardsRight ? 1 : -1))
            LookFor(piston, volume, _volume[piston] / 2, near, ref crossing);
    }

    private void LookFor(int piston, double volume, double target, double near, ref Crossing crossing)
    {
        double left = Left(piston, target, _destination[piston] == PistonPosition.AtR);
        crossing.Rising(0, volume, left, near);
    }

    private double Left(int piston, double target, bool towardsRight) =>
        towardsRight ? target - _position[piston] : _position[piston] - target;

    private void Lean(int piston, bool towardsRight)
    {
        if (Left(piston, _volume[piston] / 2, towardsRight) <= Near * _volume[piston])
            _lean[piston] = towardsRight ? 1 : -1;
    }

    private void Arrive(int piston, double end, PistonPosition place)
    {
        _position[piston] = end;
        _place[piston] = place;
        if (_lastEnd[piston] == place)
            return;
        _lastEnd[piston] = place;
        _strokes[Port(piston, place)]++;
    }
}
