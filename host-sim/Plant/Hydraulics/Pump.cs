using System;
using LubeController.Plant.Description;

namespace LubeController.Plant.Hydraulics;

/// <summary>
/// The motor and what it drives. A cam keeps its place while the motor stands. It delivers nothing while its suction is
/// blocked or dry; no air enters the line then: the element only compresses what it holds.
/// </summary>
internal sealed class Pump
{
    private readonly double[] _segmentFlow;
    private readonly double _deliverySegmentS;
    private readonly double _returnS;
    private readonly double _constantFlow;
    private int _segment;
    private double _segmentRemainingS;

    internal Pump(PumpDescription description)
    {
        if (description is CamPumpDescription cam)
        {
            int segments = cam.DeliverySegments;
            _returnS = 0.5 / cam.SpeedRevPerS;
            _deliverySegmentS = _returnS / segments;
            double displacement = Math.PI / 4 * cam.PistonBoreM * cam.PistonBoreM * cam.StrokeM * cam.VolumetricEfficiency;
            double[] fractions = CamTable.StrokeFractions(segments);
            _segmentFlow = new double[segments + 1];
            for (int k = 0; k < segments; k++)
                _segmentFlow[k] = displacement * fractions[k] / _deliverySegmentS;
            PlaceCam(cam.InitialAngle);
        }
        else
        {
            _segmentFlow = [];
            _constantFlow = ((ConstantFlowPumpDescription)description).FlowM3PerS;
        }
    }

    internal bool Contact { get; set; }

    internal bool ContactWelded { get; set; }

    internal bool MotorDead { get; set; }

    internal bool SuctionBlocked { get; set; }

    internal double RemainingEfficiency { get; set; } = 1;

    internal bool Turns => (Contact || ContactWelded) && !MotorDead;

    internal long Revolutions { get; private set; }

    /// <summary>What arrives in the line, m3/s, if the reservoir holds lubricant.</summary>
    internal double FlowM3PerS
    {
        get
        {
            if (!Turns || SuctionBlocked)
                return 0;
            return RemainingEfficiency * (_segmentFlow.Length == 0 ? _constantFlow : _segmentFlow[_segment]);
        }
    }

    /// <summary>Time until the flow changes by itself, s.</summary>
    internal double RemainingS => Turns && _segmentFlow.Length > 0 ? _segmentRemainingS : double.PositiveInfinity;

    /// <summary>Cam angle after a further time, fraction of a revolution from the start of delivery.</summary>
    internal double AngleAfter(double seconds)
    {
        if (_segmentFlow.Length == 0)
            return 0;
        double remaining = _segmentRemainingS - (Turns ? seconds : 0);
        int segments = _segmentFlow.Length - 1;
        if (_segment == segments)
            return 1 - (0.5 * remaining / _returnS);
        return 0.5 * (_segment + 1 - (remaining / _deliverySegmentS)) / segments;
    }

    /// <summary>Turns the cam; at the end of a piece the next begins.</summary>
    internal void Advance(double seconds)
    {
        if (_segmentFlow.Length == 0 || !Turns)
            return;
        _segmentRemainingS -= seconds;
        if (_segmentRemainingS > 0)
            return;
        _segment++;
        if (_segment == _segmentFlow.Length)
        {
            _segment = 0;
            Revolutions++;
        }

        _segmentRemainingS = _segment == _segmentFlow.Length - 1 ? _returnS : _deliverySegmentS;
    }

    internal void AddTo(ref Fingerprint print)
    {
        print.Add(Contact);
        print.Add(ContactWelded);
        print.Add(MotorDead);
        print.Add(SuctionBlocked);
        print.Add(RemainingEfficiency);
        print.Add(Revolutions);
        print.Add(_segment);
        print.Add(_segmentRemainingS);
    }

    private void PlaceCam(double angle)
    {
        int segments = _segmentFlow.Length - 1;
        if (angle >= 0.5)
        {
            _segment = segments;
            _segmentRemainingS = (1 - angle) * 2 * _returnS;
            return;
        }

        double place = angle * 2 * segments;
        _segment = Math.Min((int)place, segments - 1);
        _segmentRemainingS = (_segment + 1 - place) * _deliverySegmentS;
    }
}
