using LubeController.Plant.Hydraulics;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Numbers;
using LubeController.Plant.Outlets;
using LubeController.Plant.Pistons;

namespace LubeController.Plant.Divider;

/// <summary>Which pistons can move, and by which ways.</summary>
internal sealed partial class ProgressiveDivider
{
    // How near a creeping flow needs its drive, Pa: half the clearance flow.
    private const double CreepHalfPa = 100;

    // Scratch of the last resolution: pistons that could move if the pressure were there, and where to.
    private readonly int[] _movable;
    private readonly PistonPosition[] _destination;
    private readonly int[] _branchOf;
    private readonly double[] _worn;
    private readonly double[] _stiff;
    private readonly bool[] _stuck;
    private readonly FlowTable _creep;
    private FlowTable[] _ways = [];
    private double _limitM3PerS;
    private double _halfLimitLossPa;
    private int _movableCount;
    private bool _creeping;

    /// <summary>Adds bypass to a piston, m3/s per Pa at reference viscosity.</summary>
    internal void Wear(int piston, double bypass) => _worn[piston] = bypass;

    /// <summary>Adds to what a piston needs, Pa.</summary>
    internal void Stiffen(int piston, double pressurePa) => _stiff[piston] = pressurePa;

    internal void Stick(int piston, bool stuck) => _stuck[piston] = stuck;

    /// <summary>Tabulates the ways through passages and outlet lines for the lubricant as it is now.</summary>
    internal void FollowLubricant(LubricantProperties lubricant)
    {
        double ratio = lubricant.ApparentViscosityPaS / lubricant.ReferenceViscosityPaS;
        var passage = new PassageLaw(_limitM3PerS, _halfLimitLossPa * ratio);
        for (int outlet = 0; outlet < _outlets.Length; outlet++)
        {
            if (_ways[outlet] is not { } way)
                continue;
            if (_outlets[outlet].HasLine)
                way.Fill(new PassageAndTubeLaw(passage, new TubeLaw(lubricant, _outlets[outlet].LineLengthM, _outlets[outlet].LineBoreM)));
            else
                way.Fill(passage);
        }

        _creep.Fill(new PassageLaw(_clearanceFlow / ratio, CreepHalfPa));
    }

    /// <summary>Lets pistons leave their ends that have the pressure to, and adds every open way to the network.</summary>
    /// <param name="network">The network; pressures as of now.</param>
    /// <param name="viscosityRatio">Viscosity now over that at reference temperature.</param>
    internal void Resolve(Network network, double viscosityRatio)
    {
        do
            FindMovable();
        while (LeaveEnds(network));
        for (int k = 0; k < _movableCount; k++)
        {
            int piston = _movable[k];
            _branchOf[piston] = -1;
            if (_place[piston] == PistonPosition.MidTravel && Driven(network, piston))
                AddStroke(network, piston);
        }

        if (!InletBlocked)
            AddBypasses(network, viscosityRatio);
    }

    /// <summary>What keeps a piston that could move, at the planned step's start (part 0) or end (1), Pa; above 0 it moves.</summary>
    private double DrivePa(Network network, int piston, double part)
    {
        OutletLine outlet = _outlets[_outletOfPort[Port(piston, _destination[piston])]];
        double drop = network.PressureAt(Node, part) - Need(piston) - outlet.OffsetPa;
        return outlet.Node < 0 ? drop : drop - network.PressureAt(outlet.Node, part);
    }

    private bool Driven(Network network, int piston) => DrivePa(network, piston, 0) >= -Crossing.NearPa(Need(piston));

    private double Need(int piston) => _stiff[piston] + (_place[piston] == PistonPosition.MidTravel ? _friction[piston] : _breakaway[piston]);

    /// <summary>Whether a piston stands that has its way open and the pressure to move, and only a blocked outlet keeps it.</summary>
    internal bool IsKeptBy(Network network, int outlet)
    {
        for (int i = 0; i < _n; i++)
        {
            if (TrySentTo(i, out PistonPosition sent) && sent != _place[i] && _outletOfPort[Port(i, sent)] == outlet && Pushed(network, i, sent))
                return true;
        }

        return false;
    }

    /// <summary>Whether a piston has its way open and pressure that a sound one would move by.</summary>
    internal bool IsPushed(Network network, int piston) =>
        TrySentTo(piston, out PistonPosition sent) && sent != _place[piston] && Pushed(network, piston, sent);

    /// <summary>Whether any piston would move if nothing but the inlet stood in its way.</summary>
    internal bool WouldMove(Network network)
    {
        for (int i = 0; i < _n; i++)
        {
            if (IsPushed(network, i))
                return true;
        }

        return false;
    }

    private bool Pushed(Network network, int piston, PistonPosition sent)
    {
        OutletLine outlet = _outlets[_outletOfPort[Port(piston, sent)]];
        double need = Need(piston) - _stiff[piston] + outlet.SoundOffsetPa + (outlet.Node < 0 ? 0 : network.PressurePa(outlet.Node));
        return network.PressurePa(Node) >= need - Crossing.NearPa(need);
    }

    private void FindMovable()
    {
        _movableCount = 0;
        _creeping = false;
        if (InletBlocked)
            return;
        bool anyAtEnd = false;
        for (int i = 0; i < _n; i++)
        {
            if (!TrySentTo(i, out PistonPosition sent))
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
        _creeping = true;
        for (int i = 0; i < _n; i++)
        {
            int lean = _lean[Before(i)];
            if (lean != 0)
                AddMovable(i, SentTo(i, lean < 0 ? PistonPosition.AtL : PistonPosition.AtR));
        }
    }

    private void AddMovable(int piston, PistonPosition sent)
    {
        if (_place[piston] == sent || Kept(piston, sent))
            return;
        _destination[piston] = sent;
        _movable[_movableCount++] = piston;
    }

    private bool LeaveEnds(Network network)
    {
        bool left = false;
        for (int k = 0; k < _movableCount; k++)
        {
            int piston = _movable[k];
            if (_place[piston] == PistonPosition.MidTravel || !Driven(network, piston))
                continue;
            _branchOf[piston] = -2;
            left = true;
        }

        // All that leave in the same instant were free to: only now do they close each other's ways.
        for (int k = 0; left && k < _movableCount; k++)
        {
            if (_branchOf[_movable[k]] == -2)
                _place[_movable[k]] = PistonPosition.MidTravel;
            _branchOf[_movable[k]] = -1;
        }

        return left;
    }

    private void AddStroke(Network network, int piston)
    {
        int port = Port(piston, _destination[piston]);
        OutletLine outlet = _outlets[_outletOfPort[port]];
        _branchOf[piston] = network.Branches;
        network.Add(new Branch
        {
            Kind = BranchKind.Stroke,
            Part = piston,
            Unit = Unit,
            Outlet = _outletOfPort[port],
            From = Node,
            To = outlet.Node,
            OffsetPa = Need(piston) + outlet.OffsetPa,
            Weight = _share[piston] * outlet.Open,
            Table = _creeping ? _creep : _ways[_outletOfPort[port]],
            OneWay = true,
        });
    }

    // The piston's pressure side leaks past it to the side that its way out is open from.
    private void AddBypasses(Network network, double viscosityRatio)
    {
        for (int i = 0; i < _n; i++)
        {
            double conductance = _bypass[i] + _worn[i];
            if (conductance == 0 || !TrySentTo(i, out PistonPosition sent))
                continue;
            OutletLine outlet = _outlets[_outletOfPort[Port(i, sent)]];
            if (outlet.Blocked)
                continue;
            network.Add(new Branch
            {
                Kind = BranchKind.Bypass,
                Part = i,
                Unit = Unit,
                Outlet = _outletOfPort[Port(i, sent)],
                From = Node,
                To = outlet.Node,
                OffsetPa = outlet.OffsetPa,
                Weight = 1,
                Conductance = conductance / viscosityRatio,
                OneWay = true,
            });
        }
    }

    private void MakeTables(DividerDescription divider)
    {
        _limitM3PerS = divider.StrokeFlowLimitM3PerS;
        _halfLimitLossPa = divider.HalfLimitLossPa;
        _ways = new FlowTable[_outlets.Length];
        foreach (int outlet in _outletOfPort)
            _ways[outlet] ??= new FlowTable();
    }
}
