using System;
using System.Collections.Generic;
using LubeController.Plant.Description;
using LubeController.Plant.Sensing;

namespace LubeController.Plant.Hydraulics;

/// <summary>
/// The series-progressive divider, piston by piston: a twisted ring. Piston i at an end of its travel opens the gallery to
/// one end chamber of piston i+1 and the other chamber to its port; the last piston sends the first the other way. In
/// mid-travel a piston closes both ways of its successor, at once on leaving its end: pistons that leave their ends in the
/// same instant close each other's ways, however little they have moved.
/// </summary>
/// <remarks>
/// This part holds the ring; <c>Divider.Flow.cs</c> shares the flow, <c>Divider.Motion.cs</c> moves the pistons.
/// Ports are numbered by section on the left, then by section on the right. Positions are in m3 from L.
/// </remarks>
internal sealed partial class Divider
{
    private readonly int _n;
    private readonly double[] _volume;
    private readonly double[] _share;
    private readonly double[] _need;
    private readonly int[] _outletOfPort;
    private readonly double _flowLimit;
    private readonly double _clearanceFlow;
    private readonly CycleSwitch[] _switches;
    private readonly CycleSwitch[][] _switchesOfPiston;

    private readonly double[] _position;
    private readonly Sum[] _displaced;
    private readonly Place[] _place;
    private readonly Place[] _lastEnd;
    private readonly int[] _lean;
    private readonly long[] _strokes;
    private readonly Sum[] _delivered;
    private readonly bool[] _blocked;

    internal Divider(PlantDescription plant, ulong seed)
    {
        DividerDescription divider = plant.Divider;
        _n = divider.Sections.Count;
        _volume = new double[_n];
        _share = new double[_n];
        _need = new double[2 * _n];
        _outletOfPort = OutletOfPort(plant);
        _flowLimit = divider.StrokeFlowLimitM3PerS;
        _clearanceFlow = divider.LandClearanceFlowM3PerS ?? 0;
        _position = new double[_n];
        _displaced = new Sum[_n];
        _place = new Place[_n];
        _lastEnd = new Place[_n];
        _lean = new int[_n];
        _strokes = new long[2 * _n];
        _delivered = new Sum[plant.Outlets.Count];
        _blocked = new bool[plant.Outlets.Count];
        _flow = new double[_n];
        _flowBefore = new double[_n];
        _outletFlow = new double[plant.Outlets.Count];
        _movable = new int[_n];
        _destination = new Place[_n];
        _moving = new int[_n];
        for (int i = 0; i < _n; i++)
            PutAtStart(i, divider.Sections[i], plant.Outlets);
        _switches = MakeSwitches(plant, seed);
        _switchesOfPiston = new CycleSwitch[_n][];
        for (int i = 0; i < _n; i++)
            _switchesOfPiston[i] = SwitchesOf(i, plant);
    }

    internal int Sections => _n;

    internal CycleSwitch[] Switches => _switches;

    internal bool InletBlocked { get; set; }

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

    internal int Outlet(int section, Side side) => _outletOfPort[side == Side.L ? section : section + _n];

    internal bool OutletBlocked(int outlet) => _blocked[outlet];

    internal void BlockOutlet(int outlet, bool blocked) => _blocked[outlet] = blocked;

    internal long Strokes(int section, Side side) => _strokes[side == Side.L ? section : section + _n];

    /// <summary>
    /// Pistons not where their neighbour sends them, each taken at the end that it stood at last (in the beginning: the
    /// nearer one): the number of travelling waves.
    /// </summary>
    internal int Waves()
    {
        int waves = 0;
        for (int i = 0; i < _n; i++)
        {
            if (_lastEnd[i] != SentTo(i, _lastEnd[Before(i)]))
                waves++;
        }

        return waves;
    }

    /// <summary>Whether the pistons close every way among themselves and no clearance lets one creep.</summary>
    internal bool HydraulicallyLocked()
    {
        if (!AllInMidTravel())
            return false;
        if (_clearanceFlow == 0)
            return true;
        foreach (int lean in _lean)
        {
            if (lean != 0)
                return false;
        }

        return true;
    }

    /// <summary>
    /// The first piston that has its way open, is not where it is sent, and is kept there by a blocked outlet or the blocked
    /// inlet; -1 if another could move, or none is kept.
    /// </summary>
    internal int BlockedPiston(out Side side)
    {
        int first = -1;
        side = Side.L;
        for (int i = 0; i < _n; i++)
        {
            if (!TrySentTo(i, out Place sent) || sent == _place[i])
                continue;
            if (!InletBlocked && !_blocked[_outletOfPort[Port(i, sent)]])
                return -1;
            if (first >= 0)
                continue;
            first = i;
            side = sent == Place.AtL ? Side.L : Side.R;
        }

        return first;
    }

    internal void AddTo(ref Fingerprint print)
    {
        print.Add(InletBlocked);
        for (int i = 0; i < _n; i++)
        {
            print.Add(_position[i]);
            print.Add(_flow[i]);
            _displaced[i].AddTo(ref print);
            print.Add((long)_place[i]);
            print.Add((long)_lastEnd[i]);
            print.Add(_lean[i]);
            print.Add(_strokes[i]);
            print.Add(_strokes[i + _n]);
        }

        for (int outlet = 0; outlet < _delivered.Length; outlet++)
        {
            _delivered[outlet].AddTo(ref print);
            print.Add(_blocked[outlet]);
        }

        foreach (CycleSwitch cycle in _switches)
            cycle.AddTo(ref print);
    }

    private static int[] OutletOfPort(PlantDescription plant)
    {
        int[] root = PortGroups.Roots(plant.Divider);
        var outletOfPort = new int[root.Length];
        for (int outlet = 0; outlet < plant.Outlets.Count; outlet++)
        {
            PortDescription first = plant.Outlets[outlet].Ports[0];
            int section = PortGroups.IndexOf(plant.Divider, first.Section);
            int group = root[first.Side == Side.L ? section : section + plant.Divider.Sections.Count];
            for (int port = 0; port < root.Length; port++)
            {
                if (root[port] == group)
                    outletOfPort[port] = outlet;
            }
        }

        return outletOfPort;
    }

    // The first piston is sent the other way: the ring is twisted once.
    private static Place SentTo(int piston, Place before) => piston == 0
        ? (before == Place.AtL ? Place.AtR : Place.AtL)
        : before;

    private int Before(int piston) => piston == 0 ? _n - 1 : piston - 1;

    private int Port(int piston, Place destination) => destination == Place.AtL ? piston : piston + _n;

    private bool TrySentTo(int piston, out Place sent)
    {
        Place before = _place[Before(piston)];
        sent = SentTo(piston, before);
        return before != Place.MidTravel;
    }

    private bool AllInMidTravel()
    {
        foreach (Place place in _place)
        {
            if (place != Place.MidTravel)
                return false;
        }

        return true;
    }

    private void PutAtStart(int i, SectionDescription section, IReadOnlyList<OutletDescription> outlets)
    {
        _volume[i] = section.VolumePerStrokeM3;
        _share[i] = section.FlowShare;
        _need[i] = section.BreakawayPa + outlets[_outletOfPort[i]].BackPressurePa;
        _need[i + _n] = section.BreakawayPa + outlets[_outletOfPort[i + _n]].BackPressurePa;
        _position[i] = section.InitialTravel * section.VolumePerStrokeM3;
        _lastEnd[i] = section.InitialTravel < 0.5 ? Place.AtL : Place.AtR;
        _place[i] = section.InitialTravel is 0 or 1 ? _lastEnd[i] : Place.MidTravel;
        _lean[i] = Math.Sign(section.InitialTravel - 0.5);
    }

    private CycleSwitch[] MakeSwitches(PlantDescription plant, ulong seed)
    {
        var switches = new CycleSwitch[plant.CycleSwitches.Count];
        var seeds = new SeededGenerator(seed);
        for (int s = 0; s < switches.Length; s++)
        {
            int piston = PortGroups.IndexOf(plant.Divider, plant.CycleSwitches[s].Section);
            switches[s] = new CycleSwitch(plant.CycleSwitches[s], _volume[piston], _position[piston], seeds.Next());
        }

        return switches;
    }

    private CycleSwitch[] SwitchesOf(int piston, PlantDescription plant)
    {
        var found = new List<CycleSwitch>();
        for (int s = 0; s < _switches.Length; s++)
        {
            if (PortGroups.IndexOf(plant.Divider, plant.CycleSwitches[s].Section) == piston)
                found.Add(_switches[s]);
        }

        return [.. found];
    }
}
