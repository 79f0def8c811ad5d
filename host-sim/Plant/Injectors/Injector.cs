using System;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Lubricant;
using LubeController.Plant.Numbers;
using LubeController.Plant.Outlets;

namespace LubeController.Plant.Injectors;

/// <summary>
/// An injector: pressure behind its piston discharges the measured volume; once the pressure has fallen, the spring carries
/// the piston back and what stood behind it becomes the next measure. Line flow is taken on discharge alone.
/// </summary>
internal sealed class Injector
{
    private const double Near = 1e-9;

    // The passages of an injector: half of the limit at this loss and reference viscosity.
    private const double LimitM3PerS = 1e-6;
    private const double HalfLimitLossPa = 1e5;

    private readonly InjectorDescription _description;
    private readonly OutletLine _outlet;
    private readonly int _outletIndex;
    private readonly FlowTable _way = new();
    private double _position;
    private double _delta;
    private double _recharge;
    private double _rate;
    private bool _recharging;
    private int _branch = -1;
    private Sum _displaced;

    internal Injector(InjectorDescription description, int node, OutletLine outlet, int outletIndex)
    {
        _description = description;
        Node = node;
        _outlet = outlet;
        _outletIndex = outletIndex;
    }

    internal int Node { get; }

    internal int OutletIndex => _outletIndex;

    /// <summary>Whether a sound one would discharge or recharge at the pressure that stands.</summary>
    internal bool WouldMove(Network network) =>
        (_position < _description.VolumeM3 && DrivePa(network, 0) >= -Crossing.NearPa(_description.DischargePa))
        || (_position > 0 && network.PressurePa(Node) <= _description.RechargePa);

    internal bool Stuck { get; set; }

    /// <summary>Complete discharges since the start.</summary>
    internal long Discharges { get; private set; }

    internal bool Changed { get; private set; }

    /// <summary>How much of the measure is discharged: 0 charged, 1 spent.</summary>
    internal double DischargedAfter(double part) => Math.Clamp((_position + (_delta * part)) / _description.VolumeM3, 0, 1);

    internal void FollowLubricant(LubricantProperties lubricant)
    {
        double ratio = lubricant.ApparentViscosityPaS / lubricant.ReferenceViscosityPaS;
        var passage = new PassageLaw(LimitM3PerS, HalfLimitLossPa * ratio);
        if (_outlet.HasLine)
            _way.Fill(new PassageAndTubeLaw(passage, new TubeLaw(lubricant, _outlet.LineLengthM, _outlet.LineBoreM)));
        else
            _way.Fill(passage);
        _recharge = _description.VolumeM3 / (_description.RechargeS * ratio);
    }

    internal void Resolve(Network network, int index)
    {
        double pressure = network.PressurePa(Node);
        double rechargeAt = _description.RechargePa;
        if (pressure <= rechargeAt + Crossing.NearPa(rechargeAt))
            _recharging = _position > 0 && !Stuck;
        else
            _recharging = false;
        _branch = -1;
        if (Stuck || _recharging || _outlet.Blocked || _position >= _description.VolumeM3 || DrivePa(network, 0) < -Crossing.NearPa(_description.DischargePa))
            return;
        _branch = network.Branches;
        network.Add(new Branch
        {
            Kind = BranchKind.Injector,
            Part = index,
            Outlet = _outletIndex,
            From = Node,
            To = -1,
            OffsetPa = _description.DischargePa + _outlet.OffsetPa,
            Weight = _outlet.Open,
            Table = _way,
            OneWay = true,
        });
    }

    internal void Look(Network network, double seconds, ref Crossing crossing)
    {
        double start = network.PressurePa(Node);
        double end = network.PressureAt(Node, 1);
        double near = Crossing.NearPa(_description.RechargePa);
        if (_position < _description.VolumeM3 && !Stuck && !_outlet.Blocked && _branch < 0)
            crossing.Rising(DrivePa(network, 0), DrivePa(network, 1), 0, Crossing.NearPa(_description.DischargePa));
        if (_position > 0 && !_recharging)
            crossing.Falling(start, end, _description.RechargePa, near);
        if (_recharging)
        {
            crossing.Rising(start, end, _description.RechargePa + (2 * near), near / 2);
            crossing.Rising(0, _recharge * seconds, _position, Near * _description.VolumeM3);
        }
        else if (_branch >= 0)
        {
            crossing.Rising(0, network.BranchVolumeM3(_branch), _description.VolumeM3 - _position, Near * _description.VolumeM3);
        }
    }

    internal bool Plan(Network network, double seconds, double perSecond)
    {
        bool madeUp = false;
        double delta = 0;
        if (_recharging)
        {
            delta = -Math.Min(_recharge * seconds, _position);
        }
        else if (_branch >= 0)
        {
            delta = network.BranchVolumeM3(_branch);
            double left = _description.VolumeM3 - _position;
            if (delta > 0 && delta != left && Math.Abs(delta - left) <= 2 * Near * _description.VolumeM3)
            {
                network.SetBranchVolume(_branch, left);
                delta = left;
                madeUp = true;
            }
        }

        _delta = delta;
        Changed = delta * perSecond != _rate;
        _rate = delta * perSecond;
        return madeUp;
    }

    /// <summary>Whether it moves by itself, without flow in the network.</summary>
    internal bool Recharges => _recharging;

    internal void Commit(double part)
    {
        _position += part * _delta;
        if (_delta > 0)
            _displaced.Add(part * _delta);
    }

    internal void Reach()
    {
        if (_delta > 0 && _description.VolumeM3 - _position <= Near * _description.VolumeM3)
        {
            _position = _description.VolumeM3;
            Discharges++;
        }
        else if (_delta < 0 && _position <= Near * _description.VolumeM3)
        {
            _position = 0;
        }
    }

    internal double DisplacedAfter(double part) => _displaced.Value + (part * Math.Max(0, _delta));

    private double DrivePa(Network network, double part) =>
        network.PressureAt(Node, part) - _description.DischargePa - _outlet.OffsetPa;
}
