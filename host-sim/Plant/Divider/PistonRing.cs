using System;
using System.Collections.Generic;
using LubeController.Plant.Numbers;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Divider;

/// <summary>
/// The pistons of a divider as a twisted ring: where each stands, where the piston before sends it, and what the planned step
/// moves it by. Positions are in m3 from L. Ports are numbered by section on the left, then by section on the right.
/// </summary>
internal sealed class PistonRing
{
    /// <summary>How near to a target a position counts as there, part of a stroke.</summary>
    internal const double Near = 1e-9;

    private readonly double[] _volume;
    private readonly double[] _position;
    private readonly double[] _planned;
    private readonly Sum[] _displaced;
    private readonly PistonPosition[] _at;
    private readonly PistonPosition[] _lastEnd;
    private readonly int[] _lean;
    private readonly long[] _strokes;

    internal PistonRing(IReadOnlyList<SectionDescription> sections)
    {
        Count = sections.Count;
        _volume = new double[Count];
        _position = new double[Count];
        _planned = new double[Count];
        _displaced = new Sum[Count];
        _at = new PistonPosition[Count];
        _lastEnd = new PistonPosition[Count];
        _lean = new int[Count];
        _strokes = new long[2 * Count];
        for (int i = 0; i < Count; i++)
        {
            double travel = sections[i].InitialTravel;
            _volume[i] = sections[i].VolumePerStrokeM3;
            _position[i] = travel * _volume[i];
            _lastEnd[i] = travel < 0.5 ? PistonPosition.AtL : PistonPosition.AtR;
            _at[i] = travel is 0 or 1 ? _lastEnd[i] : PistonPosition.MidTravel;
            _lean[i] = Math.Sign(travel - 0.5);
        }
    }

    internal int Count { get; }

    internal double FullCycleVolumeM3
    {
        get
        {
            double sum = 0;
            foreach (double volume in _volume)
                sum += volume;
            return 2 * sum;
        }
    }

    internal bool AllInMidTravel
    {
        get
        {
            foreach (PistonPosition at in _at)
            {
                if (at != PistonPosition.MidTravel)
                    return false;
            }

            return true;
        }
    }

    /// <summary>Whether a piston stands nearer to one end than to the other.</summary>
    internal bool AnyLeans
    {
        get
        {
            foreach (int lean in _lean)
            {
                if (lean != 0)
                    return true;
            }

            return false;
        }
    }

    /// <summary>The port that a piston feeds on its way to an end.</summary>
    internal int Port(int piston, PistonPosition destination) => destination == PistonPosition.AtL ? piston : piston + Count;

    internal PistonPosition At(int piston) => _at[piston];

    /// <summary>Volume of a stroke, m3.</summary>
    internal double VolumeM3(int piston) => _volume[piston];

    /// <summary>Strokes completed at a port.</summary>
    internal long Strokes(int port) => _strokes[port];

    internal double TravelAfter(int piston, double part) =>
        Math.Clamp(_position[piston] + (_planned[piston] * part), 0, _volume[piston]) / _volume[piston];

    internal double DisplacedAfter(int piston, double part) => _displaced[piston].Value + (Math.Abs(_planned[piston]) * part);

    /// <summary>How far a piston is from a target on its way, m3.</summary>
    internal double Left(int piston, double target, bool towardsRight) =>
        towardsRight ? target - _position[piston] : _position[piston] - target;

    /// <summary>The same to the end that it moves to.</summary>
    internal double LeftToEnd(int piston, bool towardsRight) => towardsRight ? _volume[piston] - _position[piston] : _position[piston];

    /// <summary>
    /// Pistons not where their neighbour sends them, each taken at the end that it stood at last (in the beginning: the
    /// nearer one): the number of travelling waves.
    /// </summary>
    internal int Waves()
    {
        int waves = 0;
        for (int i = 0; i < Count; i++)
        {
            if (_lastEnd[i] != SentTo(i, _lastEnd[Before(i)]))
                waves++;
        }

        return waves;
    }

    /// <summary>Where the piston before sends a piston; in mid-travel it sends it nowhere.</summary>
    internal bool TrySentTo(int piston, out PistonPosition sent)
    {
        PistonPosition before = _at[Before(piston)];
        sent = SentTo(piston, before);
        return before != PistonPosition.MidTravel;
    }

    /// <summary>Where the piston before lets a piston creep, being nearer to opening that way; right at its middle, nowhere.</summary>
    internal bool TryCreepTo(int piston, out PistonPosition sent)
    {
        int lean = _lean[Before(piston)];
        sent = SentTo(piston, lean < 0 ? PistonPosition.AtL : PistonPosition.AtR);
        return lean != 0;
    }

    /// <summary>Whether a piston stands past its middle on the way to an end.</summary>
    internal bool LeansTo(int piston, bool right) => _lean[piston] == (right ? 1 : -1);

    internal void LeaveEnd(int piston) => _at[piston] = PistonPosition.MidTravel;

    /// <summary>What the planned step moves a piston by, m3; below 0 towards L.</summary>
    internal double Planned(int piston) => _planned[piston];

    internal void ClearPlan() => Array.Clear(_planned);

    internal void Plan(int piston, double volumeM3) => _planned[piston] = volumeM3;

    internal void Commit(double part)
    {
        for (int i = 0; i < Count; i++)
        {
            double planned = _planned[i];
            if (planned == 0)
                continue;
            _position[i] += planned * part;
            _displaced[i].Add(Math.Abs(planned) * part);
            if (Left(i, _volume[i] / 2, planned > 0) <= Near * _volume[i])
                _lean[i] = planned > 0 ? 1 : -1;
        }
    }

    internal void Arrive(int piston, PistonPosition end)
    {
        _position[piston] = end == PistonPosition.AtR ? _volume[piston] : 0;
        _at[piston] = end;
        if (_lastEnd[piston] == end)
            return;
        _lastEnd[piston] = end;
        _strokes[Port(piston, end)]++;
    }

    // The first piston is sent the other way: the ring is twisted once.
    private static PistonPosition SentTo(int piston, PistonPosition before) => piston == 0
        ? (before == PistonPosition.AtL ? PistonPosition.AtR : PistonPosition.AtL)
        : before;

    private int Before(int piston) => piston == 0 ? Count - 1 : piston - 1;
}
