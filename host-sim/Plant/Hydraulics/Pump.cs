using System;
using LubeController.Plant.Description;

namespace LubeController.Plant.Hydraulics;

/// <summary>
/// The motor and what it drives. A cam keeps its place while the motor stands. Speed follows supply, load and faults, and is
/// taken as constant within one step of the network.
/// </summary>
internal sealed class Pump
{
    private const double LeastSpeed = 0.02;

    private readonly double[] _segmentShare;
    private readonly double _segmentRev;
    private readonly double _strokeM3;
    private readonly double _nominalRevPerS;
    private readonly double _efficiency;
    private readonly double _slip;
    private readonly double _fillingLoss;
    private readonly double _sagPerPa;
    private readonly double _deadVolume;
    private readonly double _constantFlow;
    private int _segment;
    private double _segmentRemainingRev;
    private double _speed;

    internal Pump(PumpDescription description)
    {
        if (description is CamPumpDescription cam)
        {
            _nominalRevPerS = cam.SpeedRevPerS;
            _segmentRev = 0.5 / cam.DeliverySegments;
            _strokeM3 = Math.PI / 4 * cam.PistonBoreM * cam.PistonBoreM * cam.StrokeM;
            _efficiency = cam.VolumetricEfficiency;
            _slip = cam.SlipM3PerSPa;
            _fillingLoss = cam.FillingLoss;
            _sagPerPa = cam.SpeedSagPerPa;
            _deadVolume = cam.DeadVolume;
            _segmentShare = new double[cam.DeliverySegments + 1];
            CamTable.StrokeFractions(cam.DeliverySegments).CopyTo(_segmentShare, 0);
            PlaceCam(cam.InitialAngle);
        }
        else
        {
            _segmentShare = [];
            _efficiency = 1;
            _constantFlow = ((ConstantFlowPumpDescription)description).FlowM3PerS;
        }
    }

    internal bool Contact { get; set; }

    internal bool ContactWelded { get; set; }

    internal bool MotorDead { get; set; }

    internal bool SuctionBlocked { get; set; }

    internal double RemainingEfficiency { get; set; } = 1;

    /// <summary>Fraction of its speed that a slow motor keeps.</summary>
    internal double SpeedFactor { get; set; } = 1;

    /// <summary>The motor's supply, fraction of nominal; speed follows it.</summary>
    internal double Supply { get; set; } = 1;

    /// <summary>Fraction of the stroke that fills where suction is poor.</summary>
    internal double Filling { get; set; } = 1;

    internal bool Turns => (Contact || ContactWelded) && !MotorDead && Supply > 0 && SpeedFactor > 0;

    internal long Revolutions { get; private set; }

    /// <summary>Time until the flow changes by itself, s.</summary>
    internal double RemainingS => Turns && _segmentShare.Length > 0 ? _segmentRemainingRev / _speed : double.PositiveInfinity;

    /// <summary>What it draws and brings from now on, at a pressure at its outlet and the viscosity relative to reference.</summary>
    internal Inflow Draw(double pressurePa, double viscosityRatio, double airShare)
    {
        double relative = Supply * SpeedFactor * Math.Max(LeastSpeed, 1 - (_sagPerPa * pressurePa));
        _speed = _nominalRevPerS * relative;
        if (!Turns || SuctionBlocked)
            return default;
        double fills = Filling / (1 + (_fillingLoss * viscosityRatio * relative));
        double part = _efficiency * RemainingEfficiency * fills;
        if (_segmentShare.Length == 0)
            return new Inflow(part * _constantFlow * relative, 0, airShare, _deadVolume);
        if (_segment == _segmentShare.Length - 1)
            return default;
        double flow = _strokeM3 * _segmentShare[_segment] / (_segmentRev / _speed);
        return new Inflow(part * flow, _slip / viscosityRatio, airShare, _deadVolume);
    }

    /// <summary>Cam angle after a further time, fraction of a revolution from the start of delivery.</summary>
    internal double AngleAfter(double seconds)
    {
        if (_segmentShare.Length == 0)
            return 0;
        double remaining = _segmentRemainingRev - (Turns ? seconds * _speed : 0);
        int segments = _segmentShare.Length - 1;
        return _segment == segments ? 1 - remaining : ((_segment + 1) * _segmentRev) - remaining;
    }

    /// <summary>Turns the cam; at the end of a piece the next begins.</summary>
    /// <param name="seconds">Time, s.</param>
    /// <param name="pieceEnds">Whether that is exactly the piece's remaining time.</param>
    internal void Advance(double seconds, bool pieceEnds)
    {
        if (_segmentShare.Length == 0 || !Turns)
            return;
        _segmentRemainingRev -= seconds * _speed;
        if (!pieceEnds && _segmentRemainingRev > 0)
            return;
        _segment++;
        if (_segment == _segmentShare.Length)
        {
            _segment = 0;
            Revolutions++;
        }

        _segmentRemainingRev = _segment == _segmentShare.Length - 1 ? 0.5 : _segmentRev;
    }

    internal void AddTo(ref Fingerprint print)
    {
        print.Add(Contact);
        print.Add(ContactWelded);
        print.Add(MotorDead);
        print.Add(SuctionBlocked);
        print.Add(RemainingEfficiency);
        print.Add(SpeedFactor);
        print.Add(Supply);
        print.Add(Filling);
        print.Add(Revolutions);
        print.Add(_segment);
        print.Add(_segmentRemainingRev);
        print.Add(_speed);
    }

    private void PlaceCam(double angle)
    {
        int segments = _segmentShare.Length - 1;
        if (angle >= 0.5)
        {
            _segment = segments;
            _segmentRemainingRev = 1 - angle;
            return;
        }

        double place = angle * 2 * segments;
        _segment = Math.Min((int)place, segments - 1);
        _segmentRemainingRev = (_segment + 1 - place) * _segmentRev;
    }
}
