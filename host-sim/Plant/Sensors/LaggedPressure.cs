using System;
using LubeController.Plant.Faults;
using LubeController.Plant.Hydraulics;
using LubeController.Plant.Inputs;

namespace LubeController.Plant.Sensors;

/// <summary>
/// What a pressure transmitter makes of a pressure: a first-order lag, exact for a ramp but for the exponential, which is
/// taken as 1/(1 + z + z2/2); an offset; and its range.
/// </summary>
internal sealed class LaggedPressure(PressureTransmitterDescription description, int node)
{
    private static readonly LoopFault[] NearestToInput = [LoopFault.WireBroken, LoopFault.Shorted, LoopFault.DrivesLow, LoopFault.DrivesHigh];

    private readonly CurrentLoop _loop = new(new CurrentLoopDescription
    {
        LowValue = 0,
        HighValue = description.RangePa,
        LeastVoltageV = description.Loop.LeastVoltageV,
        LoopOhms = description.Loop.LoopOhms,
    });

    private int _loopFaults;
    private double _value;
    private double _end;
    private double _supplyPart = 1;

    internal int Node { get; } = node;

    internal double OffsetPa { get; set; }

    /// <summary>Time constant that a fault puts in place of the described one, s; not a number: none.</summary>
    internal double LagS { get; set; } = double.NaN;

    /// <summary>Sets a fault of the loop or takes it away; of several at once the one that lies nearest to the input counts.</summary>
    internal void SetLoopFault(LoopFault fault, bool on)
    {
        _loopFaults = on ? _loopFaults | Bit(fault) : _loopFaults & ~Bit(fault);
        _loop.Fault = Array.Find(NearestToInput, near => (_loopFaults & Bit(near)) != 0);
    }

    /// <summary>Resistance that the loop has beyond the described one, ohm.</summary>
    internal double ExtraOhms
    {
        get => _loop.ExtraOhms;
        set => _loop.ExtraOhms = value;
    }

    /// <summary>Part of its described voltage that feeds the loop.</summary>
    internal double SupplyPart
    {
        get => _supplyPart;
        set
        {
            _supplyPart = value;
            _loop.SupplyV = value * description.Loop.SupplyV;
        }
    }

    /// <summary>
    /// Reading on the straight line to the planned step's end, Pa: within its range while the loop is sound, else what the
    /// loop's current means, which may lie beyond either end.
    /// </summary>
    internal double ReadingPa(double part)
    {
        double reading = InRange(_value + (part * (_end - _value)) + OffsetPa);
        bool sound = _loop.Fault == LoopFault.None && ExtraOhms == 0 && SupplyPart == 1;
        return sound ? reading : _loop.ValueOf(_loop.CurrentA(reading));
    }

    /// <summary>What the loop's current means by NAMUR NE 43. It changes only where a fault or the supply does: a sound transmitter drives 4 to 20 mA.</summary>
    internal Ne43Reading Meaning(double part) => Ne43.Read(_loop.CurrentA(InRange(_value + (part * (_end - _value)) + OffsetPa)));

    /// <summary>Whether what it shows differs from what it would show without its faults, by more than rounding.</summary>
    internal bool IsOff(double part) => Math.Abs(ReadingPa(part) - InRange(_value + (part * (_end - _value)))) > 1e-9 * description.RangePa;

    /// <summary>Whether what it shows lags behind a pressure by so much that a person would notice.</summary>
    internal bool LagsBehind(double pressurePa) => Math.Abs(ReadingPa(0) - pressurePa) > FaultedPlant.NoticedPa;

    private static int Bit(LoopFault fault) => 1 << (int)fault;

    private double InRange(double pressurePa) => pressurePa < 0 ? 0 : pressurePa > description.RangePa ? description.RangePa : pressurePa;

    /// <summary>Whether the reading still moves though the pressure may stand.</summary>
    internal bool Follows(Network network) => Lag > 0 && Math.Abs(network.PressurePa(Node) - _value) > 1;

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

    private double Lag => double.IsNaN(LagS) ? description.LagS : LagS;
}
