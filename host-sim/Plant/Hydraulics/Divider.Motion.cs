using System;
using LubeController.Plant.Sensing;

namespace LubeController.Plant.Hydraulics;

/// <summary>Moves the pistons and what they actuate.</summary>
internal sealed partial class Divider
{
    /// <summary>
    /// Two positions nearer than this part of a stroke are the same, so that pistons that travel in step arrive in an exact
    /// tie although their sums were rounded apart.
    /// </summary>
    private const double SamePlace = 1e-12;

    internal double PositionAfter(int piston, double seconds) =>
        Math.Clamp(_position[piston] + (_flow[piston] * seconds), 0, _volume[piston]);

    internal double TravelAfter(int piston, double seconds) => PositionAfter(piston, seconds) / _volume[piston];

    internal double DisplacedAfter(int piston, double seconds) => _displaced[piston].Value + (Math.Abs(_flow[piston]) * seconds);

    internal double DeliveredAfter(int outlet, double seconds) => _delivered[outlet].Value + (_outletFlow[outlet] * seconds);

    internal double OutletFlow(int outlet) => _outletFlow[outlet];

    /// <summary>Time until a piston arrives, a switch changes or a creeping piston passes the middle, s.</summary>
    internal double NextS()
    {
        double nearest = double.PositiveInfinity;
        for (int k = 0; k < _movingCount; k++)
        {
            int piston = _moving[k];
            double flow = _flow[piston];
            nearest = Math.Min(nearest, TimeTo(piston, flow > 0 ? _volume[piston] : 0));
            foreach (CycleSwitch cycle in _switchesOfPiston[piston])
            {
                double target = cycle.Target(flow > 0);
                if (!double.IsNaN(target))
                    nearest = Math.Min(nearest, TimeTo(piston, target));
            }

            if (_creeping && _lean[piston] != Math.Sign(flow))
                nearest = Math.Min(nearest, TimeToMiddle(piston));
        }

        return nearest;
    }

    internal void Advance(double seconds)
    {
        for (int k = 0; k < _movingCount; k++)
        {
            int piston = _moving[k];
            double flow = _flow[piston];
            double moved = Math.Abs(flow) * seconds;
            _position[piston] += flow * seconds;
            _displaced[piston].Add(moved);
            Lean(piston, flow > 0);
        }

        for (int outlet = 0; outlet < _delivered.Length; outlet++)
            _delivered[outlet].Add(_outletFlow[outlet] * seconds);
    }

    /// <summary>Lets what was reached happen: switches change, pistons arrive, creeping pistons lean the other way.</summary>
    internal void Reach()
    {
        for (int k = 0; k < _movingCount; k++)
        {
            int piston = _moving[k];
            bool towardsRight = _flow[piston] > 0;
            foreach (CycleSwitch cycle in _switchesOfPiston[piston])
            {
                double target = cycle.Target(towardsRight);
                if (!double.IsNaN(target) && Reached(piston, target, towardsRight))
                    cycle.Change();
            }

            double end = towardsRight ? _volume[piston] : 0;
            if (Reached(piston, end, towardsRight))
                Arrive(piston, end, towardsRight ? Place.AtR : Place.AtL);
        }
    }

    private double TimeTo(int piston, double target) => Math.Max(0, (target - _position[piston]) / _flow[piston]);

    private double TimeToMiddle(int piston)
    {
        double seconds = ((_volume[piston] / 2) - _position[piston]) / _flow[piston];
        return seconds >= 0 ? seconds : double.PositiveInfinity;
    }

    private bool Reached(int piston, double target, bool towardsRight)
    {
        double left = towardsRight ? target - _position[piston] : _position[piston] - target;
        return left <= _volume[piston] * SamePlace;
    }

    private void Lean(int piston, bool towardsRight)
    {
        double middle = _volume[piston] / 2;
        if (Reached(piston, middle, towardsRight))
            _lean[piston] = towardsRight ? 1 : -1;
    }

    private void Arrive(int piston, double end, Place place)
    {
        _position[piston] = end;
        _place[piston] = place;
        if (_lastEnd[piston] == place)
            return;
        _lastEnd[piston] = place;
        _strokes[Port(piston, place)]++;
    }
}
