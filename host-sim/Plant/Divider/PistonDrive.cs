using LubeController.Plant.Hydraulics;
using LubeController.Plant.Numbers;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Divider;

/// <summary>What the pistons of a divider need to move, what pushes them, and what keeps them where they stand.</summary>
internal sealed class PistonDrive
{
    private readonly int _node;
    private readonly PistonRing _ring;
    private readonly DividerPassages _passages;
    private readonly double[] _friction;
    private readonly double[] _breakaway;
    private readonly double[] _stiff;
    private readonly bool[] _stuck;

    internal PistonDrive(DividerDescription divider, int node, PistonRing ring, DividerPassages passages)
    {
        _node = node;
        _ring = ring;
        _passages = passages;
        _friction = new double[ring.Count];
        _breakaway = new double[ring.Count];
        _stiff = new double[ring.Count];
        _stuck = new bool[ring.Count];
        for (int i = 0; i < ring.Count; i++)
        {
            _breakaway[i] = divider.Sections[i].BreakawayPa;
            _friction[i] = divider.Sections[i].FrictionPa ?? _breakaway[i];
        }
    }

    internal bool InletBlocked { get; set; }

    /// <summary>Adds to what a piston needs, Pa.</summary>
    internal void Stiffen(int piston, double pressurePa) => _stiff[piston] = pressurePa;

    internal void Stick(int piston, bool stuck) => _stuck[piston] = stuck;

    /// <summary>The pressure that a piston needs to move on, or to leave its end, Pa.</summary>
    internal double NeedPa(int piston) => _stiff[piston] + SoundNeedPa(piston);

    /// <summary>
    /// What is left of the pressure to move a piston to an end, on the straight line from the planned step's start (part 0) to
    /// its end (1), Pa; above 0 it moves.
    /// </summary>
    internal double DrivePa(Network network, int piston, PistonPosition end, double part)
    {
        OutletLine outlet = _passages.Outlet(_ring.Port(piston, end));
        double drop = network.PressureAt(_node, part) - NeedPa(piston) - outlet.OffsetPa;
        return outlet.Node < 0 ? drop : drop - network.PressureAt(outlet.Node, part);
    }

    internal bool IsDriven(Network network, int piston, PistonPosition end) =>
        DrivePa(network, piston, end, 0) >= -Crossing.NearPa(NeedPa(piston));

    /// <summary>Whether the blocked inlet, a blocked outlet or the piston itself keeps it from an end.</summary>
    internal bool IsKept(int piston, PistonPosition end) => InletBlocked || _stuck[piston] || _passages.Outlet(_ring.Port(piston, end)).Blocked;

    /// <summary>Whether a piston stands that has its way open and the pressure to move, and only a blocked outlet keeps it.</summary>
    internal bool IsKeptBy(Network network, int outlet)
    {
        for (int i = 0; i < _ring.Count; i++)
        {
            if (IsSent(i, out PistonPosition end) && _passages.OutletOf(_ring.Port(i, end)) == outlet && IsPushed(network, i, end))
                return true;
        }

        return false;
    }

    /// <summary>Whether a piston has its way open and pressure that a sound one would move by.</summary>
    internal bool IsPushed(Network network, int piston) => IsSent(piston, out PistonPosition end) && IsPushed(network, piston, end);

    /// <summary>Whether any piston would move if nothing but the inlet stood in its way.</summary>
    internal bool AnyPushed(Network network)
    {
        for (int i = 0; i < _ring.Count; i++)
        {
            if (IsPushed(network, i))
                return true;
        }

        return false;
    }

    /// <summary>
    /// The first piston that has its way open, is not where it is sent, and is kept there by a blocked outlet, the blocked
    /// inlet or its own stiffness; -1 if another could move, or none is kept.
    /// </summary>
    internal int BlockedPiston(out Side side)
    {
        int first = -1;
        side = Side.L;
        for (int i = 0; i < _ring.Count; i++)
        {
            if (!IsSent(i, out PistonPosition end))
                continue;
            if (!IsKept(i, end))
                return -1;
            if (first >= 0)
                continue;
            first = i;
            side = end == PistonPosition.AtL ? Side.L : Side.R;
        }

        return first;
    }

    private double SoundNeedPa(int piston) => _ring.At(piston) == PistonPosition.MidTravel ? _friction[piston] : _breakaway[piston];

    // Whether a piston is sent to an end that it does not stand at.
    private bool IsSent(int piston, out PistonPosition end) => _ring.TrySentTo(piston, out end) && end != _ring.At(piston);

    private bool IsPushed(Network network, int piston, PistonPosition end)
    {
        OutletLine outlet = _passages.Outlet(_ring.Port(piston, end));
        double need = NeedPa(piston) - _stiff[piston] + outlet.SoundOffsetPa + (outlet.Node < 0 ? 0 : network.PressurePa(outlet.Node));
        return network.PressurePa(_node) >= need - Crossing.NearPa(need);
    }
}
