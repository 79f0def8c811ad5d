using System.Collections.Generic;
using LubeController.Plant.Divider;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Lubricant;

namespace LubeController.Plant.Line;

/// <summary>
/// The line cut into nodes and tubes: node 0 at the pump's outlet, half of each cell's volume at each of its ends, then one
/// node for each secondary divider. A strainer stands behind node 0.
/// </summary>
internal sealed class LineLayout
{
    // A proportional loss, as a passage so wide that its limit is never felt.
    private const double NeverPa = 1e12;

    private readonly LineDescription _line;
    private readonly List<double> _volume = [];
    private readonly List<double> _compliance = [];
    private readonly List<Tube> _tubes = [];
    private readonly List<int> _segmentEnd = [];

    internal LineLayout(LineDescription line, IReadOnlyList<SecondaryDividerDescription> secondaries)
    {
        _line = line;
        bool split = _line.Segments.Count == 0 && _line.StrainerLossPa > 0;
        AddNode();
        Store(0, _line.VolumeM3 * (split ? 0.5 : 1), 0);
        if (split)
        {
            _tubes.Add(new Tube(0, AddNode(), 0, 1));
            Store(1, _line.VolumeM3 / 2, 0);
        }

        foreach (LineSegmentDescription segment in _line.Segments)
            AddSegment(segment);
        End = _volume.Count - 1;
        MainNodes = _volume.Count;
        foreach (SecondaryDividerDescription secondary in secondaries)
        {
            AddNode();
            _volume[^1] += secondary.VolumeM3;
            _compliance[^1] += secondary.VolumeM3 / secondary.BulkModulusPa;
        }

        Tables = new FlowTable[_tubes.Count];
        for (int tube = 0; tube < Tables.Length; tube++)
            Tables[tube] = new FlowTable();
    }

    /// <summary>The last node of the line.</summary>
    internal int End { get; }

    /// <summary>Nodes of the line, those of secondary dividers not among them.</summary>
    internal int MainNodes { get; }

    /// <summary>What is left of the strainer's conductance, 0 to 1.</summary>
    internal double StrainerOpen { get; set; } = 1;

    internal FlowTable[] Tables { get; }

    internal double[] Volumes => [.. _volume];

    internal double[] Compliances => [.. _compliance];

    /// <summary>The node at the end of a segment, counted from 1; of 0 the pump's outlet.</summary>
    internal int SegmentEnd(int segment) => segment == 0 ? 0 : _segmentEnd[segment - 1];

    /// <summary>The air of each node, spread by volume over the line and none in secondaries.</summary>
    internal double[] Airs(double airM3, double entrained)
    {
        double whole = 0;
        for (int node = 0; node < MainNodes; node++)
            whole += _volume[node];
        var airs = new double[_volume.Count];
        for (int node = 0; node < airs.Length; node++)
            airs[node] = (entrained * _volume[node]) + (node < MainNodes ? airM3 * (_volume[node] / whole) : 0);
        return airs;
    }

    internal void FollowLubricant(LubricantProperties lubricant)
    {
        for (int tube = 0; tube < _tubes.Count; tube++)
            Fill(tube, lubricant);
    }

    internal void AddBranches(Network network)
    {
        for (int tube = 0; tube < _tubes.Count; tube++)
            network.Add(new Branch { Kind = BranchKind.Line, Part = tube, Outlet = -1, From = _tubes[tube].From, To = _tubes[tube].To, Weight = 1, Table = Tables[tube] });
    }

    private void Fill(int index, LubricantProperties lubricant)
    {
        Tube tube = _tubes[index];
        var law = new TubeLaw(lubricant, tube.LengthM, tube.BoreM);
        if (index > 0 || _line.StrainerLossPa == 0)
        {
            Tables[index].Fill(law);
            return;
        }

        double ratio = lubricant.ApparentViscosityPaS / lubricant.ReferenceViscosityPaS;
        double conductance = _line.StrainerFlowM3PerS / _line.StrainerLossPa / ratio * StrainerOpen;
        var strainer = new PassageLaw(conductance * NeverPa, NeverPa);
        if (tube.LengthM == 0)
            Tables[index].Fill(strainer);
        else
            Tables[index].Fill(new PassageAndTubeLaw(strainer, law));
    }

    private void AddSegment(LineSegmentDescription segment)
    {
        double length = segment.LengthM / segment.Cells;
        double volume = System.Math.PI / 4 * segment.BoreM * segment.BoreM * length;
        for (int cell = 0; cell < segment.Cells; cell++)
        {
            int from = _volume.Count - 1;
            int to = AddNode();
            Store(from, volume / 2, 1 / segment.WallModulusPa);
            Store(to, volume / 2, 1 / segment.WallModulusPa);
            _tubes.Add(new Tube(from, to, length, segment.BoreM));
        }

        _segmentEnd.Add(_volume.Count - 1);
    }

    private int AddNode()
    {
        _volume.Add(0);
        _compliance.Add(0);
        return _volume.Count - 1;
    }

    private void Store(int node, double volumeM3, double perWallPa)
    {
        _volume[node] += volumeM3;
        _compliance[node] += volumeM3 * ((1 / _line.BulkModulusPa) + perWallPa);
    }

    private readonly record struct Tube(int From, int To, double LengthM, double BoreM);
}
