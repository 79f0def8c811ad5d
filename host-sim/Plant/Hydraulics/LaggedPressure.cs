using LubeController.Plant.Description;

namespace LubeController.Plant.Hydraulics;

/// <summary>
/// What a pressure transmitter makes of a pressure: a first-order lag, exact for a ramp but for the exponential, which is
/// taken as 1/(1 + z + z2/2); an offset; and its range.
/// </summary>
internal sealed class LaggedPressure(PressureTransmitterDescription description, int node)
{
    private double _value;
    private double _end;

    internal int Node { get; } = node;

    internal double OffsetPa { get; set; }

    /// <summary>Time constant that a fault puts in place of the described one, s; not a number: none.</summary>
    internal double LagS { get; set; } = double.NaN;

    /// <summary>Reading on the straight line to the planned step's end, Pa.</summary>
    internal double ReadingPa(double part)
    {
        double reading = _value + (part * (_end - _value)) + OffsetPa;
        return reading < 0 ? 0 : reading > description.RangePa ? description.RangePa : reading;
    }

    /// <summary>Whether what it shows differs from what it would show without its offset.</summary>
    internal bool IsOff(double part)
    {
        double sound = _value + (part * (_end - _value));
        return ReadingPa(part) != (sound < 0 ? 0 : sound > description.RangePa ? description.RangePa : sound);
    }

    /// <summary>Whether the reading still moves though the pressure may stand.</summary>
    internal bool Follows(Network network) => Lag > 0 && System.Math.Abs(network.PressurePa(Node) - _value) > 1;

    /// <summary>The longest step that draws its curve well, s.</summary>
    internal double LongestStepS(Network network) => Follows(network) ? Lag / 4 : double.PositiveInfinity;

    internal void Plan(Network network, double seconds)
    {
        double from = network.PressurePa(Node);
        double to = network.EndPressurePa(Node);
        if (Lag == 0)
        {
            _value = from;
            _end = to;
            return;
        }

        if (seconds == 0 || double.IsInfinity(seconds))
        {
            _end = _value;
            return;
        }

        double slope = (to - from) / seconds;
        double z = seconds / Lag;
        _end = to - (slope * Lag) + ((_value - from + (slope * Lag)) / (1 + z + (z * z / 2)));
    }

    internal void Commit(double part) => _value += part * (_end - _value);

    internal void AddTo(ref Fingerprint print)
    {
        print.Add(_value);
        print.Add(_end);
        print.Add(OffsetPa);
    }

    private double Lag => double.IsNaN(LagS) ? description.LagS : LagS;
}
