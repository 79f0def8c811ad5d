using System;
using System.Collections.Generic;
using LubeController.Plant.Hydraulics;
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
/// <remarks>
/// This part holds the ring; <c>ProgressiveDivider.Flow.cs</c> shares the flow, <c>ProgressiveDivider.Motion.cs</c> moves the pistons.
/// Ports are numbered by section on the left, then by section on the right. Positions are in m3 from L.
/// </remarks>
internal sealed partial class ProgressiveDivider
{
    private readonly int _n;
    private readonly double[] _volume;
    private readonly double[] _share;
    private readonly double[] _friction;
    private readonly double[] _breakaway;
    private readonly double[] _bypass;
    private readonly int[] _outletOfPort;
    private readonly double _clearanceFlow;
    private readonly CycleSwitch[][] _switchesOfPiston;

    private readonly double[] _position;
    private readonly Sum[] _displaced;
    private readonly PistonPosition[] _place;
    private readonly PistonPosition[] _lastEnd;
    private readonly int[] _lean;
    private readonly long[] _strokes;
    private readonly OutletLine[] _outlets;

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
        Node = node;
        _outlets = outlets;
        _n = divider.Sections.Count;
        _volume = new double[_n];
        _share = new double[_n];
        _friction = new double[_n];
        _breakaway = new double[_n];
        _bypass = new double[_n];
        _worn = new double[_n];
        _stiff = new double[_n];
        _stuck = new bool[_n];
        _outletOfPort = OutletOfPort(divider, outlets);
        _clearanceFlow = divider.LandClearanceFlowM3PerS ?? 0;
        _position = new double[_n];
        _displaced = new Sum[_n];
        _place = new PistonPosition[_n];
        _lastEnd = new PistonPosition[_n];
        _lean = new int[_n];
        _strokes = new long[2 * _n];
        _delta = new double[_n];
        _rate = new double[_n];
        _movable = new int[_n];
        _destination = new PistonPosition[_n];
        _branchOf = new int[_n];
        for (int i = 0; i < _n; i++)
            PutAtStart(i, divider.Sections[i]);
        _creep = new FlowTable();
        MakeTables(divider);
        _switchesOfPiston = new CycleSwitch[_n][];
        for (int i = 0; i < _n; i++)
            _switchesOfPiston[i] = SwitchesOf(divider.Sections[i].Name, switches);
    }

    /// <summary>Number of the divider: 0 the main one.</summary>
    internal int Unit { get; }

    /// <summary>Number of its first section among all of the plant.</summary>
    internal int FirstSection { get; }

    /// <summary>The node that its gallery belongs to.</summary>
    internal int Node { get; }

    internal int Sections => _n;

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
    /// The first piston that has its way open, is not where it is sent, and is kept there by a blocked outlet, the blocked
    /// inlet or its own stiffness; -1 if another could move, or none is kept.
    /// </summary>
    internal int BlockedPiston(out Side side)
    {
        int first = -1;
        side = Side.L;
        for (int i = 0; i < _n; i++)
        {
            if (!TrySentTo(i, out PistonPosition sent) || sent == _place[i])
                continue;
            if (!Kept(i, sent))
                return -1;
            if (first >= 0)
                continue;
            first = i;
            side = sent == PistonPosition.AtL ? Side.L : Side.R;
        }

        return first;
    }

    internal void AddTo(ref Fingerprint print)
    {
        print.Add(InletBlocked);
        for (int i = 0; i < _n; i++)
        {
            print.Add(_position[i]);
            print.Add(_delta[i]);
            _displaced[i].AddTo(ref print);
            print.Add((long)_place[i]);
            print.Add((long)_lastEnd[i]);
            print.Add(_lean[i]);
            print.Add(_strokes[i]);
            print.Add(_strokes[i + _n]);
        }
    }

    private static int[] OutletOfPort(DividerDescription divider, OutletLine[] outlets)
    {
        int[] root = PortGroups.Roots(divider);
        var outletOfPort = new int[root.Length];
        for (int outlet = 0; outlet < outlets.Length; outlet++)
        {
            if (outlets[outlet].Ports.Count == 0)
                continue;
            PortDescription first = outlets[outlet].Ports[0];
            int section = PortGroups.IndexOf(divider, first.Section);
            if (section < 0)
                continue;
            int group = root[first.Side == Side.L ? section : section + divider.Sections.Count];
            for (int port = 0; port < root.Length; port++)
            {
                if (root[port] == group)
                    outletOfPort[port] = outlet;
            }
        }

        return outletOfPort;
    }

    // The first piston is sent the other way: the ring is twisted once.
    private static PistonPosition SentTo(int piston, PistonPosition before) => piston == 0
        ? (before == PistonPosition.AtL ? PistonPosition.AtR : PistonPosition.AtL)
        : before;

    private int Before(int piston) => piston == 0 ? _n - 1 : piston - 1;

    private int Port(int piston, PistonPosition destination) => destination == PistonPosition.AtL ? piston : piston + _n;

    private bool TrySentTo(int piston, out PistonPosition sent)
    {
        PistonPosition before = _place[Before(piston)];
        sent = SentTo(piston, before);
        return before != PistonPosition.MidTravel;
    }

    private bool AllInMidTravel()
    {
        foreach (PistonPosition place in _place)
        {
            if (place != PistonPosition.MidTravel)
                return false;
        }

        return true;
    }

    private bool Kept(int piston, PistonPosition sent) =>
        InletBlocked || _stuck[piston] || _outlets[_outletOfPort[Port(piston, sent)]].Blocked;

    private void PutAtStart(int i, SectionDescription section)
    {
        _volume[i] = section.VolumePerStrokeM3;
        _share[i] = section.FlowShare;
        _breakaway[i] = section.BreakawayPa;
        _friction[i] = section.FrictionPa ?? section.BreakawayPa;
        _bypass[i] = section.BypassM3PerSPa;
        _position[i] = section.InitialTravel * section.VolumePerStrokeM3;
        _lastEnd[i] = section.InitialTravel < 0.5 ? PistonPosition.AtL : PistonPosition.AtR;
        _place[i] = section.InitialTravel is 0 or 1 ? _lastEnd[i] : PistonPosition.MidTravel;
        _lean[i] = Math.Sign(section.InitialTravel - 0.5);
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
}
