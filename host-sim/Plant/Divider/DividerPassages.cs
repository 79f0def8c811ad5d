using LubeController.Plant.Hydraulics;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Divider;

/// <summary>The passages of a divider from its ports to the outlets, each with the law of its flow.</summary>
internal sealed class DividerPassages
{
    // How near a creeping flow needs its drive, Pa: half the clearance flow.
    private const double CreepHalfPa = 100;

    private readonly OutletLine[] _outlets;
    private readonly int[] _outletOfPort;
    private readonly FlowTable?[] _tables;
    private readonly double _limitM3PerS;
    private readonly double _halfLimitLossPa;

    internal DividerPassages(DividerDescription divider, OutletLine[] outlets)
    {
        _outlets = outlets;
        _outletOfPort = MatchPorts(divider, outlets);
        _limitM3PerS = divider.StrokeFlowLimitM3PerS;
        _halfLimitLossPa = divider.HalfLimitLossPa;
        ClearanceFlowM3PerS = divider.LandClearanceFlowM3PerS ?? 0;
        _tables = new FlowTable[outlets.Length];
        foreach (int outlet in _outletOfPort)
            _tables[outlet] ??= new FlowTable();
    }

    /// <summary>The most flow past closed lands, m3/s at reference viscosity; 0 where they are tight.</summary>
    internal double ClearanceFlowM3PerS { get; }

    /// <summary>The flow past closed lands over what drives it.</summary>
    internal FlowTable Creep { get; } = new();

    internal int OutletOf(int port) => _outletOfPort[port];

    internal OutletLine Outlet(int port) => _outlets[_outletOfPort[port]];

    /// <summary>The flow from a port to its outlet over what drives it.</summary>
    internal FlowTable Table(int port) => _tables[_outletOfPort[port]]!;

    /// <summary>Tabulates the ways through passages and outlet lines for the lubricant as it is now.</summary>
    internal void FollowLubricant(LubricantProperties lubricant)
    {
        double ratio = lubricant.ApparentViscosityPaS / lubricant.ReferenceViscosityPaS;
        var passage = new PassageLaw(_limitM3PerS, _halfLimitLossPa * ratio);
        for (int outlet = 0; outlet < _outlets.Length; outlet++)
        {
            if (_tables[outlet] is not { } table)
                continue;
            if (_outlets[outlet].HasLine)
                table.Fill(new PassageAndTubeLaw(passage, new TubeLaw(lubricant, _outlets[outlet].LineLengthM, _outlets[outlet].LineBoreM)));
            else
                table.Fill(passage);
        }

        Creep.Fill(new PassageLaw(ClearanceFlowM3PerS / ratio, CreepHalfPa));
    }

    private static int[] MatchPorts(DividerDescription divider, OutletLine[] outlets)
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
}
