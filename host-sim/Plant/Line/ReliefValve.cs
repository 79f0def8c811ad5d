using System;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Line;

/// <summary>
/// The relief valve: shut up to its opening pressure; once open, flow in proportion to the pressure above reseat, rated flow
/// at opening pressure plus override; shut again when next to nothing flows.
/// </summary>
internal sealed class ReliefValve
{
    // A valve without a stated override still needs some pressure to pass its flow.
    private const double LeastOverridePa = 100;

    // It closes when this part of the flow at opening pressure is left.
    private const double ShutPart = 1e-3;

    private readonly double _soundOpeningPa;
    private readonly double _band;
    private readonly double _conductance;

    internal ReliefValve(ReliefDescription description)
    {
        _soundOpeningPa = description.OpeningPressurePa;
        double reseat = description.ReseatPressurePa ?? description.OpeningPressurePa;
        _band = description.OpeningPressurePa - reseat;
        _conductance = description.RatedFlowM3PerS / (_band + Math.Max(description.OverridePa, LeastOverridePa));
        OpeningPa = _soundOpeningPa;
    }

    internal bool Open { get; private set; }

    internal bool StuckClosed { get; set; }

    /// <summary>The pressure at which it opens now, Pa.</summary>
    internal double OpeningPa { get; private set; }

    private double ReseatPa => Math.Max(0, OpeningPa - _band);

    private double ShutPa => ReseatPa + (ShutPart * (OpeningPa - ReseatPa));

    /// <summary>Whether it is open, and opens below its sound opening pressure.</summary>
    internal bool OpensEarly => Open && OpeningPa < _soundOpeningPa;

    /// <summary>Whether a sound one would open at a pressure.</summary>
    internal bool WouldOpenAt(double pressurePa) => pressurePa >= _soundOpeningPa - Crossing.NearPa(_soundOpeningPa);

    /// <summary>Sets the opening pressure lower; not a number: as described.</summary>
    internal void SetOpening(double openingPa) => OpeningPa = openingPa < _soundOpeningPa ? openingPa : _soundOpeningPa;

    internal void Resolve(Network network)
    {
        double pressure = network.PressurePa(0);
        if (StuckClosed)
            Open = false;
        else if (pressure >= OpeningPa - Crossing.NearPa(OpeningPa))
            Open = true;
        else if (pressure <= ShutPa + Crossing.NearPa(ShutPa))
            Open = false;
        if (Open)
            network.Add(new Branch { Kind = BranchKind.Relief, Outlet = -1, From = 0, To = -1, OffsetPa = ReseatPa, Weight = 1, Conductance = _conductance, OneWay = true });
    }

    internal void Look(Network network, ref Crossing crossing)
    {
        if (StuckClosed)
            return;
        if (!Open)
            crossing.Rising(network.PressurePa(0), network.PressureAt(0, 1), OpeningPa, Crossing.NearPa(OpeningPa));
        else if (_band > 0)
            crossing.Falling(network.PressurePa(0), network.PressureAt(0, 1), ShutPa, Crossing.NearPa(ShutPa));
    }
}
