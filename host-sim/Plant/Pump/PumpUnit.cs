using System;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Numbers;

namespace LubeController.Plant.Pump;

/// <summary>
/// The motor and what it drives. A cam keeps its place while the motor stands. Speed is supply less sag, as of a
/// direct-current motor: 1 - T/T0 near its working point, and shifted down whole by a low supply. It is taken as constant within
/// one step of the network. A motor whose load exceeds its torque stands until the load has fallen. A cam loads it in the
/// delivery half only: behind the check valve the line's pressure does not reach an element that fills.
/// </summary>
internal sealed class PumpUnit
{
    // Slower than this part of nominal speed no motor turns against its own friction (common practice).
    private const double LeastSpeed = 0.02;

    // A motor that stands starts against this part of the load that stalled it (assumed).
    private const double RestartPart = 0.9;

    // From there it takes this long to come up to speed (assumed).
    private const double RunUpS = 0.2;

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
    private readonly double _nominalStallPa;
    private readonly double[] _fallingShare = [1];
    private bool _stands;
    private double _runUpS = double.PositiveInfinity;
    private int _segment;
    private double _segmentRemainingRev;
    private double _speed;

    internal PumpUnit(PumpDescription description, double reliefOpeningPa)
    {
        _nominalStallPa = description.StallPressurePa ?? (PumpDescription.DefaultStallRatio * reliefOpeningPa);
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
            _fallingShare = _segmentShare[..cam.DeliverySegments];
            Array.Sort(_fallingShare);
            Array.Reverse(_fallingShare);
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

    /// <summary>Whether the motor's contact is driven closed or welded.</summary>
    internal bool ContactCloses => Contact || ContactWelded;

    internal bool MotorDead { get; set; }

    /// <summary>Whether the overload relay keeps the motor's contact open.</summary>
    internal bool Tripped { get; set; }

    /// <summary>Whether no torque turns it.</summary>
    internal bool Seized { get; set; }

    internal bool SuctionBlocked { get; set; }

    /// <summary>Fraction of its speed that a slow motor keeps.</summary>
    internal double SpeedFactor { get; set; } = 1;

    /// <summary>The motor's supply, fraction of nominal; speed and torque follow it.</summary>
    internal double Supply { get; set; } = 1;

    /// <summary>Fraction of the stroke that fills where suction is poor.</summary>
    internal double Filling { get; set; } = 1;

    /// <summary>What leaks back past a worn element beyond a new one's slip, per pressure at reference viscosity, m3/s per Pa.</summary>
    internal double WornSlipM3PerSPa { get; private set; }

    internal bool Turns => Driven && !_stands && !Seized;

    private bool Driven => ((Contact && !Tripped) || ContactWelded) && !MotorDead && Supply > LeastSpeed && SpeedFactor > 0;

    /// <summary>Whether current flows and the motor stands.</summary>
    internal bool StandsUnderPower => Driven && (_stands || Seized);

    private bool Delivers => _segmentShare.Length == 0 || _segment < _segmentShare.Length - 1;

    // Torque follows the supply.
    private double StallPa => Math.Min(Supply * _nominalStallPa, _sagPerPa > 0 ? (Supply - LeastSpeed) / _sagPerPa : double.PositiveInfinity);

    private double RestartPa => RestartPart * StallPa;

    internal long Revolutions { get; private set; }

    /// <summary>Time until the flow changes by itself, s.</summary>
    internal double RemainingS => _stands ? _runUpS : Turns && _segmentShare.Length > 0 ? _segmentRemainingRev / _speed : double.PositiveInfinity;

    /// <summary>Finds whether the motor stands under its load, or would if it were driven.</summary>
    internal void Resolve(double pressurePa)
    {
        bool starts = pressurePa <= RestartPa + Crossing.NearPa(RestartPa);
        if (!Delivers)
            _stands = false;
        else if (!Driven)
            _stands = !starts;
        else if (!_stands)
            _stands = pressurePa >= StallPa - Crossing.NearPa(StallPa);
        _runUpS = _stands && Driven && starts ? Math.Min(_runUpS, RunUpS) : double.PositiveInfinity;
    }

    /// <summary>Looks for the motor's stalling or starting within the tried step.</summary>
    internal void Look(double startPa, double endPa, ref Crossing crossing)
    {
        if (!Driven || !Delivers)
            return;
        if (_stands)
            crossing.Falling(startPa, endPa, RestartPa, Crossing.NearPa(RestartPa));
        else
            crossing.Rising(startPa, endPa, StallPa, Crossing.NearPa(StallPa));
    }

    /// <summary>
    /// Wears the element so far that at a pressure, reference viscosity and nominal supply this part of a new one's delivery
    /// remains; what is missing leaks back.
    /// </summary>
    internal void Wear(double remaining, double atPa)
    {
        WornSlipM3PerSPa = 0;
        if (remaining >= 1)
            return;
        double relative = Math.Max(LeastSpeed, 1 - (_sagPerPa * atPa));
        double perShare = _efficiency * relative / (1 + (_fillingLoss * relative));
        perShare *= _segmentShare.Length == 0 ? _constantFlow : _strokeM3 * _nominalRevPerS / _segmentRev;
        double slip = _slip * atPa;
        double target = 0;
        foreach (double share in _fallingShare)
            target += remaining * Math.Max(0, (perShare * share) - slip);

        // The sum of what each piece of the stroke delivers beyond its slip is piecewise straight: the target lies where
        // only the strongest pieces deliver, so many that the next one's flow is all slip.
        double sum = 0;
        double worn = perShare * _fallingShare[0];
        for (int i = 0; i < _fallingShare.Length && perShare * _fallingShare[i] >= worn; i++)
        {
            sum += perShare * _fallingShare[i];
            worn = (sum - target) / (i + 1);
        }

        WornSlipM3PerSPa = Math.Max(0, worn - slip) / atPa;
    }

    /// <summary>What it draws and brings from now on, at a pressure at its outlet and the viscosity relative to reference.</summary>
    internal Inflow Draw(double pressurePa, double viscosityRatio, double airShare)
    {
        // A tried step may reach beyond the stall, which will end it.
        double relative = SpeedFactor * Math.Max(LeastSpeed, Supply - (Delivers ? _sagPerPa * pressurePa : 0));
        _speed = _nominalRevPerS * relative;
        if (!Turns || SuctionBlocked)
            return default;
        double fills = Filling / (1 + (_fillingLoss * viscosityRatio * relative));
        double part = _efficiency * fills;
        double slip = (_slip + WornSlipM3PerSPa) / viscosityRatio;
        if (_segmentShare.Length == 0)
            return new Inflow(part * _constantFlow * relative, slip, airShare, _deadVolume);
        if (!Delivers)
            return default;
        double flow = _strokeM3 * _segmentShare[_segment] / (_segmentRev / _speed);
        return new Inflow(part * flow, slip, airShare, _deadVolume);
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
        if (_stands)
        {
            _runUpS -= seconds;
            _stands = !pieceEnds && _runUpS > 0;
            return;
        }

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
