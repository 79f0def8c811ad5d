using System;

namespace LubeController.Plant.Hydraulics;

/// <summary>Which pistons can move, and what flow each takes.</summary>
internal sealed partial class Divider
{
    // Scratch of the last resolution: pistons that could move if the pressure were there, and where to.
    private readonly int[] _movable;
    private readonly Place[] _destination;
    private readonly double[] _flow;
    private readonly double[] _flowBefore;
    private readonly double[] _outletFlow;
    private readonly int[] _moving;
    private int _movableCount;
    private int _movingCount;
    private double _pistonLimit;
    private bool _creeping;

    internal bool Moves => _movingCount > 0;

    /// <summary>Pistons whose flow changed in the last resolution; bit i is piston i.</summary>
    internal ulong ChangedPistons { get; private set; }

    /// <summary>Outlets fed by those pistons, before or after; bit i is outlet i.</summary>
    internal UInt128 ChangedOutlets { get; private set; }

    /// <summary>
    /// Gives each piston its flow at a standing pressure. Pistons that need less take the stroke limit from what is stored;
    /// those that need exactly this pressure share what arrives; the others stand.
    /// </summary>
    /// <param name="pressurePa">Line pressure.</param>
    /// <param name="arriving">Flow into the line, less leaks, m3/s; may be negative.</param>
    /// <returns>The flow that stays in the line, m3/s; negative if more is taken than arrives.</returns>
    internal double Resolve(double pressurePa, double arriving)
    {
        Array.Copy(_flow, _flowBefore, _n);
        double net;
        do
        {
            FindMovable();
            Array.Clear(_flow);
            net = Share(pressurePa, arriving);
        }
        while (LeaveEnds());
        CollectMoving();
        return net;
    }

    /// <summary>The lowest need above a pressure among pistons that could move, or infinity.</summary>
    internal double NeedAbove(double pressurePa)
    {
        double nearest = double.PositiveInfinity;
        for (int k = 0; k < _movableCount; k++)
        {
            double need = NeedOf(_movable[k]);
            if (need > pressurePa && need < nearest)
                nearest = need;
        }

        return nearest;
    }

    /// <summary>The highest need below a pressure among pistons that could move, or 0.</summary>
    internal double NeedBelow(double pressurePa)
    {
        double nearest = 0;
        for (int k = 0; k < _movableCount; k++)
        {
            double need = NeedOf(_movable[k]);
            if (need < pressurePa && need > nearest)
                nearest = need;
        }

        return nearest;
    }

    private double NeedOf(int piston) => _need[Port(piston, _destination[piston])];

    private void FindMovable()
    {
        _movableCount = 0;
        _pistonLimit = _flowLimit;
        _creeping = false;
        if (InletBlocked)
            return;
        bool anyAtEnd = false;
        for (int i = 0; i < _n; i++)
        {
            if (!TrySentTo(i, out Place sent))
                continue;
            anyAtEnd = true;
            AddMovable(i, sent);
        }

        if (!anyAtEnd && _clearanceFlow > 0)
            FindCreeping();
    }

    // All in mid-travel: what seeps past a land seeps most where its piston is nearer to opening.
    private void FindCreeping()
    {
        _pistonLimit = _clearanceFlow;
        _creeping = true;
        for (int i = 0; i < _n; i++)
        {
            int lean = _lean[Before(i)];
            if (lean != 0)
                AddMovable(i, SentTo(i, lean < 0 ? Place.AtL : Place.AtR));
        }
    }

    private void AddMovable(int piston, Place sent)
    {
        if (_place[piston] == sent || _blocked[_outletOfPort[Port(piston, sent)]])
            return;
        _destination[piston] = sent;
        _movable[_movableCount++] = piston;
    }

    private double Share(double pressurePa, double arriving)
    {
        double rest = arriving;
        double weight = 0;
        int sharing = 0;
        for (int k = 0; k < _movableCount; k++)
        {
            int piston = _movable[k];
            double need = NeedOf(piston);
            if (need < pressurePa)
            {
                _flow[piston] = _pistonLimit;
                rest -= _pistonLimit;
            }
            else if (need == pressurePa)
            {
                weight += _share[piston];
                sharing++;
            }
        }

        if (sharing == 0 || rest <= 0)
            return rest;
        double most = sharing * _pistonLimit;
        if (rest >= most)
        {
            Split(pressurePa, double.PositiveInfinity, 1);
            return rest - most;
        }

        Split(pressurePa, rest, weight);
        return 0;
    }

    // By weight, none above the limit; what a limited piston leaves goes to the others. Each round limits at least one.
    private void Split(double pressurePa, double flow, double weight)
    {
        bool limited;
        do
        {
            limited = false;
            double left = flow;
            double leftWeight = weight;
            for (int k = 0; k < _movableCount; k++)
            {
                int piston = _movable[k];
                if (NeedOf(piston) != pressurePa || _flow[piston] == _pistonLimit)
                    continue;
                double part = flow * (_share[piston] / weight);
                if (part >= _pistonLimit)
                {
                    _flow[piston] = _pistonLimit;
                    left -= _pistonLimit;
                    leftWeight -= _share[piston];
                    limited = true;
                }
                else
                {
                    _flow[piston] = part;
                }
            }

            flow = left;
            weight = leftWeight;
        }
        while (limited && weight > 0);
    }

    private bool LeaveEnds()
    {
        bool left = false;
        for (int k = 0; k < _movableCount; k++)
        {
            int piston = _movable[k];
            if (_flow[piston] <= 0 || _place[piston] == Place.MidTravel)
                continue;
            _place[piston] = Place.MidTravel;
            left = true;
        }

        return left;
    }

    private void CollectMoving()
    {
        Array.Clear(_outletFlow);
        _movingCount = 0;
        for (int k = 0; k < _movableCount; k++)
        {
            int piston = _movable[k];
            double flow = _flow[piston];
            if (flow <= 0)
                continue;
            _moving[_movingCount++] = piston;
            _outletFlow[_outletOfPort[Port(piston, _destination[piston])]] += flow;
            if (_destination[piston] == Place.AtL)
                _flow[piston] = -flow;
        }

        NoteChanges();
    }

    private void NoteChanges()
    {
        ulong pistons = 0;
        UInt128 outlets = 0;
        for (int i = 0; i < _n; i++)
        {
            if (_flow[i] == _flowBefore[i])
                continue;
            pistons |= 1UL << i;
            outlets |= OutletBit(i, _flow[i]) | OutletBit(i, _flowBefore[i]);
        }

        ChangedPistons = pistons;
        ChangedOutlets = outlets;
    }

    private UInt128 OutletBit(int piston, double flow) =>
        flow == 0 ? 0 : UInt128.One << _outletOfPort[flow < 0 ? piston : piston + _n];
}
