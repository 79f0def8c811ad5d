using System;

namespace LubeController.Plant.Supplies;

/// <summary>
/// A supply whose voltage goes in straight pieces: level, ramps, brown-outs and drop-outs, with a triangular ripple on
/// top. Any voltage is found without stepping, and nothing is allocated. Whoever changes it first advances it to the
/// present.
/// </summary>
public sealed class Supply
{
    private const int MostPieces = 8;

    private readonly SupplyDescription _description;
    private readonly long[] _startUs = new long[MostPieces];
    private readonly double[] _startV = new double[MostPieces];
    private readonly double[] _perUs = new double[MostPieces];
    private int _pieces = 1;
    private double _rippleV;
    private long _ripplePeriodUs;
    private long _nextUs = long.MaxValue;

    /// <summary>Makes a supply at its nominal voltage.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A voltage outside its range.</exception>
    public Supply(SupplyDescription description)
    {
        ArgumentNullException.ThrowIfNull(description);
        if (!(description.NominalV is > 0 and <= 60))
            throw new ArgumentOutOfRangeException(nameof(description), description.NominalV, "the nominal voltage is above 0 and at most 60 V");
        if (!(description.LogicOffV > 0 && description.LogicOnV > description.LogicOffV))
            throw new ArgumentOutOfRangeException(nameof(description), description.LogicOffV, "the logic stops above 0 V and below the voltage at which it starts");
        _description = description;
        _startV[0] = description.NominalV;
        Powered = description.NominalV >= description.LogicOnV;
    }

    /// <summary>Virtual time, us.</summary>
    public long NowUs { get; private set; }

    /// <summary>Whether the voltage lets the logic work, with hysteresis.</summary>
    public bool Powered { get; private set; }

    /// <summary>Voltage now, V.</summary>
    public double NowV => VoltageAt(NowUs);

    /// <summary>Voltage now without the ripple, V.</summary>
    public double BaseV => BaseAt(NowUs);

    /// <summary>When the logic next starts or stops, us, as things stand; <see cref="long.MaxValue"/> for never.</summary>
    public long NextEventUs => _nextUs;

    /// <summary>Voltage at a time at or after the last change, V, never below 0.</summary>
    public double VoltageAt(long timeUs) => Math.Max(0, BaseAt(timeUs) + RippleAt(timeUs));

    /// <summary>When the ripple next reaches a peak or a trough, us; <see cref="long.MaxValue"/> where there is no ripple.</summary>
    public long NextCornerUs => CornerAfter(NowUs);

    /// <summary>Lets time pass.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Time runs backwards.</exception>
    public void AdvanceTo(long timeUs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(timeUs, NowUs);
        for (long at = NextEventUs; at <= timeUs; at = NextEventUs)
        {
            NowUs = at;
            Powered = !Powered;
            _nextUs = NextCrossing();
        }

        NowUs = timeUs;
    }

    /// <summary>Goes from the present voltage to another in a straight line, and stays there.</summary>
    /// <param name="volts">V, 0 to 60.</param>
    /// <param name="durationUs">us, 0 or more.</param>
    public void RampTo(double volts, long durationUs)
    {
        Check(volts);
        ArgumentOutOfRangeException.ThrowIfNegative(durationUs);
        double from = BaseAt(NowUs);
        _pieces = 0;
        if (durationUs > 0)
            Append(NowUs, from, (volts - from) / durationUs);
        Append(NowUs + durationUs, volts, 0);
        Settle();
    }

    /// <summary>Goes to another voltage at once, and back to nominal after a while: a brown-out, or at 0 V a drop-out.</summary>
    /// <param name="volts">V, 0 to 60.</param>
    /// <param name="durationUs">us, 1 or more.</param>
    /// <param name="recoveryUs">How long it takes to come back, us, 0 or more.</param>
    public void Dip(double volts, long durationUs, long recoveryUs)
    {
        Check(volts);
        ArgumentOutOfRangeException.ThrowIfLessThan(durationUs, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(recoveryUs);
        _pieces = 0;
        Append(NowUs, volts, 0);
        if (recoveryUs > 0)
            Append(NowUs + durationUs, volts, (_description.NominalV - volts) / recoveryUs);
        Append(NowUs + durationUs + recoveryUs, _description.NominalV, 0);
        Settle();
    }

    /// <summary>Lays a triangular ripple on the voltage, which rises through the voltage at whole multiples of its period; a peak-to-peak of 0 takes it off.</summary>
    /// <param name="peakToPeakV">V, 0 to 60.</param>
    /// <param name="periodUs">us, a multiple of 4, 4 or more.</param>
    public void SetRipple(double peakToPeakV, long periodUs)
    {
        Check(peakToPeakV);
        if (periodUs < 4 || periodUs % 4 != 0)
            throw new ArgumentOutOfRangeException(nameof(periodUs), periodUs, "a multiple of 4 us");
        _rippleV = peakToPeakV;
        _ripplePeriodUs = peakToPeakV > 0 ? periodUs : 0;
        Settle();
    }

    private static void Check(double volts)
    {
        if (!(volts is >= 0 and <= 60))
            throw new ArgumentOutOfRangeException(nameof(volts), volts, "0 to 60 V");
    }

    private void Append(long startUs, double startV, double perUs)
    {
        _startUs[_pieces] = startUs;
        _startV[_pieces] = startV;
        _perUs[_pieces] = perUs;
        _pieces++;
    }

    // A change may jump across a threshold at this very instant.
    private void Settle()
    {
        double now = NowV;
        Powered = Powered ? now >= _description.LogicOffV : now >= _description.LogicOnV;
        _nextUs = NextCrossing();
    }

    private int PieceAt(long timeUs)
    {
        int piece = _pieces - 1;
        while (piece > 0 && timeUs < _startUs[piece])
            piece--;
        return piece;
    }

    private double BaseAt(long timeUs)
    {
        int piece = PieceAt(timeUs);
        return _startV[piece] + (_perUs[piece] * (timeUs - _startUs[piece]));
    }

    private double RippleAt(long timeUs)
    {
        if (_ripplePeriodUs == 0)
            return 0;
        long quarter = _ripplePeriodUs / 4;
        long phase = timeUs % _ripplePeriodUs;
        long height = phase < quarter ? phase : phase < 3 * quarter ? (2 * quarter) - phase : phase - _ripplePeriodUs;
        return _rippleV / 2 * height / quarter;
    }

    /// <summary>
    /// The first whole us after the present at which the logic changes. Between corners the voltage is straight; where the base
    /// is level one period of ripple says all.
    /// </summary>
    private long NextCrossing()
    {
        bool powered = Powered;
        long at = NowUs;
        long levelSince = -1;
        while (true)
        {
            int piece = PieceAt(at);
            bool last = piece == _pieces - 1;
            long pieceEnd = last ? long.MaxValue : _startUs[piece + 1];
            // The last piece is level: past one period of ripple nothing new comes.
            if (last && levelSince < 0)
                levelSince = at;
            if (last && at - levelSince > _ripplePeriodUs)
                return long.MaxValue;
            long end = Math.Min(pieceEnd, CornerAfter(at));
            if (end == long.MaxValue)
                return Crosses(at + 1, powered) ? at + 1 : long.MaxValue;
            // Jumps lie between pieces, so the stretch is straight up to a microsecond before its end.
            if (end - 1 > at && Crosses(end - 1, powered))
                return FirstCrossing(at, end - 1, powered);
            if (Crosses(end, powered))
                return end;
            at = end;
        }
    }

    private long CornerAfter(long timeUs)
    {
        if (_ripplePeriodUs == 0)
            return long.MaxValue;
        long quarter = _ripplePeriodUs / 4;
        long phase = timeUs % _ripplePeriodUs;
        long next = phase < quarter ? quarter : phase < 3 * quarter ? 3 * quarter : 5 * quarter;
        return timeUs - phase + next;
    }

    private bool Crosses(long timeUs, bool powered)
    {
        double volts = VoltageAt(timeUs);
        return powered ? volts < _description.LogicOffV : volts >= _description.LogicOnV;
    }

    // Not crossed at the one, crossed at the other, straight in between: halve.
    private long FirstCrossing(long notYetUs, long crossedUs, bool powered)
    {
        while (crossedUs - notYetUs > 1)
        {
            long middle = notYetUs + ((crossedUs - notYetUs) / 2);
            if (Crosses(middle, powered))
                crossedUs = middle;
            else
                notYetUs = middle;
        }

        return crossedUs;
    }
}
