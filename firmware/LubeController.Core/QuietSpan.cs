namespace LubeController.Core;

/// <summary>
/// Time and shaft pulses since the last scan that decided, and how much more of both may pass before the next one must. Not part of
/// the state: a core that is restored decides in its next scan.
/// </summary>
internal sealed class QuietSpan
{
    private bool _clockKnown;
    private uint _lastMs;
    private int _deadlineMs;
    private int _deadlinePulses;
    private int _elapsedMs;
    private int _pulses;
    private int _pulseAgeMs;

    /// <summary>Milliseconds that have passed quietly.</summary>
    public int ElapsedMs => _elapsedMs;

    /// <summary>Shaft pulses that have come in that time.</summary>
    public int Pulses => _pulses;

    /// <summary>Milliseconds since the last of them.</summary>
    public int PulseAgeMs => _pulseAgeMs;

    /// <summary>Milliseconds until a scan must decide, 1 or more, or <see cref="Saturating.Never"/>.</summary>
    public int DeadlineMs => _deadlineMs == Saturating.Never ? Saturating.Never : Saturating.Remaining(_deadlineMs, _elapsedMs);

    /// <summary>Shaft pulses until a scan must decide, 1 or more, or <see cref="Saturating.Never"/>.</summary>
    public int DeadlinePulses => _deadlinePulses == Saturating.Never ? Saturating.Never : Saturating.Remaining(_deadlinePulses, _pulses);

    /// <summary>Sets the clock to 0, or forgets it, so that the next scan sees no time pass.</summary>
    public void ResetClock(bool known)
    {
        _clockKnown = known;
        _lastMs = 0;
    }

    /// <summary>Makes the next scan decide.</summary>
    public void EndNow() => _deadlineMs = 0;

    /// <summary>Adds the time and the shaft pulses since the last scan.</summary>
    /// <returns>Whether no deadline has been reached yet.</returns>
    public bool Extend(uint nowMs, Inputs inputs)
    {
        uint passed = _clockKnown ? unchecked(nowMs - _lastMs) : 0;
        int elapsedMs = passed > int.MaxValue ? int.MaxValue : (int)passed;
        _lastMs = nowMs;
        _clockKnown = true;
        int pulses = inputs.ShaftPulses;
        _elapsedMs = Saturating.Add(_elapsedMs, elapsedMs);
        _pulses = Saturating.Add(_pulses, pulses);
        _pulseAgeMs = pulses > 0 ? inputs.ShaftPulseAgeMs : Saturating.Add(_pulseAgeMs, elapsedMs);
        return _elapsedMs < _deadlineMs && _pulses < _deadlinePulses;
    }

    /// <summary>Takes what has passed off the deadlines; for time that passes without a decision.</summary>
    public void ShortenDeadlines()
    {
        if (_deadlineMs != Saturating.Never)
            _deadlineMs = _elapsedMs >= _deadlineMs ? 0 : _deadlineMs - _elapsedMs;
        if (_deadlinePulses != Saturating.Never)
            _deadlinePulses = _pulses >= _deadlinePulses ? 0 : _deadlinePulses - _pulses;
    }

    /// <summary>Begins a new span: all that has passed so far is accounted for.</summary>
    public void Clear()
    {
        _elapsedMs = 0;
        _pulses = 0;
    }

    /// <summary>Sets how long nothing can change.</summary>
    public void Plan(int deadlineMs, int deadlinePulses)
    {
        _deadlineMs = deadlineMs;
        _deadlinePulses = deadlinePulses;
    }
}
