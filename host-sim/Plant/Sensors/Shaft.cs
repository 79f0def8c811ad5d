using System;

namespace LubeController.Plant.Sensors;

/// <summary>
/// The machine's shaft and its switch. Speed is a ramp followed by a constant; pulses up to a time are a pure function of
/// the profile, so that nothing happens between changes of speed. A pulse too short for the switch is not counted.
/// </summary>
internal sealed class Shaft
{
    // Beyond this (3170 years) no pulse is foretold.
    private const long LatestUs = 100_000_000_000_000_000;

    private readonly int _pulsesPerRev;
    private readonly double _countableRevPerS;
    private readonly Piece[] _pieces = new Piece[3];
    private int _pieceCount;
    private long _anchorUs;
    private long _lastPulseBeforeUs = -1;
    private double _targetRevPerS;
    private double _rampEndS;
    private bool _lost;
    private bool _missed;

    internal Shaft(ShaftDescription description)
    {
        _pulsesPerRev = description.PulsesPerRevolution;
        _countableRevPerS = description.MinimumPulseWidthUs == 0
            ? double.PositiveInfinity
            : description.Duty / (_pulsesPerRev * description.MinimumPulseWidthUs * 1e-6);
        _targetRevPerS = description.InitialSpeedRevPerS;
        Lay(0, 0, description.InitialSpeedRevPerS, description.InitialSpeedRevPerS, 0);
    }

    internal bool Lost => _lost;

    internal double SpeedAt(long timeUs)
    {
        double s = (timeUs - _anchorUs) * 1e-6;
        ref readonly Piece piece = ref _pieces[PieceAt(s)];
        return piece.Speed + (piece.Acceleration * (s - piece.StartS));
    }

    internal double RevolutionsAt(long timeUs)
    {
        double s = (timeUs - _anchorUs) * 1e-6;
        return _pieces[PieceAt(s)].TurnedAt(s) / _pulsesPerRev;
    }

    /// <summary>Pulses counted up to a time at or after the last change.</summary>
    internal long PulsesAt(long timeUs)
    {
        double s = (timeUs - _anchorUs) * 1e-6;
        int index = PieceAt(s);
        long count = _pieces[index].CountAt(s);
        // Turns were rounded where pieces join; a count never falls.
        return index + 1 < _pieceCount ? Math.Min(count, _pieces[index + 1].Counted) : count;
    }

    /// <summary>The first whole us at which the count is at least n, or never; the last change if it was before.</summary>
    internal long TimeOfUs(long n)
    {
        if (n <= _pieces[0].Counted)
            return _anchorUs;
        for (int i = 0; i < _pieceCount; i++)
        {
            ref readonly Piece piece = ref _pieces[i];
            if (!piece.Countable || (i + 1 < _pieceCount && _pieces[i + 1].Counted < n))
                continue;
            double s = piece.TimeOfCount(n);
            if (s * 1e6 < LatestUs)
                return FirstAtLeast(n, _anchorUs + (long)(s * 1e6));
        }

        return long.MaxValue;
    }

    /// <summary>When the last pulse up to a time came, whole us rounded up; -1 if none did.</summary>
    internal long LastPulseUs(long timeUs)
    {
        long count = PulsesAt(timeUs);
        return count == _pieces[0].Counted ? _lastPulseBeforeUs : TimeOfUs(count);
    }

    /// <summary>Whether, since it was lost, the switch would have given a pulse up to a time at or after the last change.</summary>
    internal bool MissedPulse(long timeUs)
    {
        if (!_lost || _missed)
            return _lost;
        double s = (timeUs - _anchorUs) * 1e-6;
        int last = PieceAt(s);
        for (int i = 0; i <= last; i++)
        {
            if (_pieces[i].Passes(i < last ? _pieces[i + 1].StartS : s))
                return true;
        }

        return false;
    }

    /// <summary>Ramps from the present speed to another.</summary>
    /// <returns>Whether that changes anything.</returns>
    internal bool SetSpeed(long nowUs, double revPerS, double rampS)
    {
        double speed = SpeedAt(nowUs);
        if (revPerS == speed && revPerS == _targetRevPerS)
            return false;
        Change(nowUs, speed, revPerS, rampS);
        return true;
    }

    internal bool SetLost(long nowUs, bool lost)
    {
        if (lost == _lost)
            return false;
        double rampLeft = Math.Max(0, _rampEndS - ((nowUs - _anchorUs) * 1e-6));
        double speed = SpeedAt(nowUs);
        long last = LastPulseUs(nowUs);
        long counted = PulsesAt(nowUs);
        double turned = TurnedAt(nowUs);
        _lost = lost;
        _missed = false;
        _lastPulseBeforeUs = last;
        Relay(nowUs, counted, turned, speed, rampLeft);
        return true;
    }

    private void Change(long nowUs, double speed, double target, double rampS)
    {
        long last = LastPulseUs(nowUs);
        long counted = PulsesAt(nowUs);
        double turned = TurnedAt(nowUs);
        _missed = MissedPulse(nowUs);
        _lastPulseBeforeUs = last;
        _targetRevPerS = target;
        Relay(nowUs, counted, turned, speed, rampS);
    }

    private void Relay(long nowUs, long counted, double turned, double speed, double rampS)
    {
        _anchorUs = nowUs;
        Lay(counted, turned, rampS > 0 ? speed : _targetRevPerS, _targetRevPerS, rampS);
    }

    private double TurnedAt(long timeUs)
    {
        double s = (timeUs - _anchorUs) * 1e-6;
        return _pieces[PieceAt(s)].TurnedAt(s);
    }

    // The ramp is cut where its pulses become, or cease to be, long enough to count.
    private void Lay(long counted, double turned, double speed, double target, double rampS)
    {
        _pieceCount = 0;
        _rampEndS = speed == target ? 0 : rampS;
        if (_rampEndS > 0)
        {
            double acceleration = (target - speed) / rampS;
            double cut = (_countableRevPerS - speed) / acceleration;
            if (cut > 0 && cut < rampS)
            {
                Append(0, counted, turned, speed, acceleration, speed < _countableRevPerS);
                AppendAfter(cut, _countableRevPerS, acceleration, target < _countableRevPerS);
            }
            else
            {
                Append(0, counted, turned, speed, acceleration, Math.Max(speed, target) <= _countableRevPerS);
            }

            AppendAfter(rampS, target, 0, target <= _countableRevPerS);
            return;
        }

        Append(0, counted, turned, target, 0, target <= _countableRevPerS);
    }

    private void AppendAfter(double startS, double speed, double acceleration, bool countable)
    {
        ref readonly Piece before = ref _pieces[_pieceCount - 1];
        Append(startS, before.CountAt(startS), before.TurnedAt(startS), speed, acceleration, countable);
    }

    private void Append(double startS, long counted, double turned, double speed, double acceleration, bool countable)
    {
        _pieces[_pieceCount] = new Piece(startS, counted, turned, speed, acceleration, countable, _lost, _pulsesPerRev);
        _pieceCount++;
    }

    private int PieceAt(double s)
    {
        int index = _pieceCount - 1;
        while (index > 0 && s < _pieces[index].StartS)
            index--;
        return index;
    }

    // The closed form is right to a rounding; the count itself decides which microsecond is the first. A very slow shaft
    // makes a rounding many microseconds long: bracket it in doubling steps, then halve.
    private long FirstAtLeast(long n, long guessUs)
    {
        long below = guessUs;
        for (long step = 1; below > _anchorUs && PulsesAt(below) >= n; step *= 2)
            below = Math.Max(_anchorUs, below - step);
        long reached = Math.Max(guessUs, _anchorUs);
        for (long step = 1; reached < LatestUs && PulsesAt(reached) < n; step *= 2)
            reached += step;
        while (reached - below > 1)
        {
            long middle = below + ((reached - below) / 2);
            if (PulsesAt(middle) >= n)
                reached = middle;
            else
                below = middle;
        }

        return reached;
    }

    /// <summary>A stretch of constant acceleration; what it has turned counts pulses, those not counted among them.</summary>
    private readonly struct Piece(
        double startS,
        long counted,
        double turned,
        double speed,
        double acceleration,
        bool slowEnough,
        bool lost,
        int pulsesPerRev)
    {
        internal double StartS { get; } = startS;

        internal long Counted { get; } = counted;

        internal double Turned { get; } = turned;

        internal double Speed { get; } = speed;

        internal double Acceleration { get; } = acceleration;

        internal bool Countable { get; } = slowEnough && !lost;

        internal double TurnedAt(double s)
        {
            double t = s - StartS;
            return Turned + (pulsesPerRev * ((Speed + (Acceleration / 2 * t)) * t));
        }

        internal long CountAt(double s) =>
            Countable ? Counted + (long)(Math.Floor(TurnedAt(s)) - Math.Floor(Turned)) : Counted;

        /// <summary>Whether a sound switch gives a pulse up to a time of this piece.</summary>
        internal bool Passes(double s) => slowEnough && Math.Floor(TurnedAt(s)) > Math.Floor(Turned);

        /// <summary>When the count reaches n, s, or infinity: the smaller root, in the form that does not cancel.</summary>
        internal double TimeOfCount(long n)
        {
            double revolutions = (Math.Floor(Turned) + (n - Counted) - Turned) / pulsesPerRev;
            double root = (Speed * Speed) + (2 * Acceleration * revolutions);
            if (root < 0)
                return double.PositiveInfinity;
            double divisor = Speed + Math.Sqrt(root);
            return divisor > 0 ? StartS + (2 * revolutions / divisor) : double.PositiveInfinity;
        }
    }
}
