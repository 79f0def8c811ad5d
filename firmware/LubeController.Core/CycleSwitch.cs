namespace LubeController.Core;

/// <summary>What one sample of a cycle switch showed.</summary>
internal enum SwitchEdge
{
    None,
    On,
    Off,
}

/// <summary>
/// One cycle switch: its debounce, its timeout in pump-on time, its retries, and what speaks against it. The timeout is
/// renewed only by an accepted edge or by reset, never by a new dose or a retry.
/// </summary>
internal sealed class CycleSwitch
{
    private readonly DebouncedInput _input = new DebouncedInput();
    private readonly int[] _othersPulses = new int[Inputs.MaxCycleSwitches];
    private readonly Settings _settings;
    private readonly int _index;
    private int _sinceOnMs = Saturating.Never;
    private int _sinceOffMs = Saturating.Never;
    private int _timerMs;
    private int _allowanceMs;
    private bool _lastRaw;
    private int _changes;
    private int _windowMs;

    // Set and consumed within one scan, so it is not part of the state.
    private bool _chatterBegan;
    private int _pulses;
    private int _retriesUsed;
    private bool _chatters;
    private bool _provedWrong;

    public CycleSwitch(Settings settings, int index)
    {
        _settings = settings;
        _index = index;
    }

    /// <summary>Accepted edges since the first power-up, saturating.</summary>
    public int Pulses => _pulses;

    /// <summary>Whether its level changes too often now.</summary>
    public bool Chatters => _chatters;

    /// <summary>Whether a second witness proved it wrong; only reset ends that.</summary>
    public bool ProvedWrong => _provedWrong;

    /// <summary>Whether its edges are ignored, because cycle-switch-fault stands for it.</summary>
    public bool Distrusted { get; set; }

    private int DebounceMs => _settings.OfSwitch(_index, SettingField.SwitchDebounceMs);

    /// <summary>
    /// A switch found wrong is silent for a reason that is known. Only a try of a dose that this very switch should end
    /// must be bounded all the same.
    /// </summary>
    private bool TimeoutCounts =>
        !Distrusted || (_index == _settings.DoseEndingIndex && _settings.DoseMode == DoseMode.Cycles);

    private int LimitMs
    {
        get
        {
            // Retries used may be left over from settings that allowed more.
            int used = Saturating.Min(_retriesUsed, _settings.OfSwitch(_index, SettingField.SwitchRetries));
            return Saturating.Add(_allowanceMs, (used + 1) * _settings.OfSwitch(_index, SettingField.SwitchTimeoutMs));
        }
    }

    /// <summary>Beyond it the timer changes nothing, whatever allowance and retries are yet to come.</summary>
    private int LastLimitMs => Saturating.Add(
        Saturating.Add(_allowanceMs, _settings[SettingField.FirstPulseAllowanceMs]),
        (_settings.OfSwitch(_index, SettingField.SwitchRetries) + 1) * _settings.OfSwitch(_index, SettingField.SwitchTimeoutMs));

    /// <summary>Whether the present timeout is over.</summary>
    public bool TimeoutOver => TimeoutCounts && _timerMs >= LimitMs;

    /// <summary>Whether another timeout may follow.</summary>
    public bool RetryLeft => _retriesUsed < _settings.OfSwitch(_index, SettingField.SwitchRetries);

    public void Forget()
    {
        _input.Forget();
        _changes = 0;
        _windowMs = 0;
        _chatters = false;
    }

    public void Advance(int elapsedMs, bool doseRuns)
    {
        _input.Advance(elapsedMs);
        _sinceOnMs = Saturating.Add(_sinceOnMs, elapsedMs);
        _sinceOffMs = Saturating.Add(_sinceOffMs, elapsedMs);
        if (doseRuns)
            _timerMs = Saturating.Add(_timerMs, elapsedMs);
        AdvanceWindow(elapsedMs);
    }

    /// <summary>Takes the level as wired and returns the edge accepted just now. A baseline makes no edge.</summary>
    public SwitchEdge Sample(bool wired, bool ready)
    {
        bool raw = wired != (_settings.OfSwitch(_index, SettingField.SwitchInverted) != 0);
        if (raw != _lastRaw)
        {
            _lastRaw = raw;
            if (ready && _input.Known)
                CountChange();
        }

        bool known = _input.Known;
        if (!_input.Sample(raw, DebounceMs, ready) || !known)
            return SwitchEdge.None;
        return _input.Level ? SwitchEdge.On : SwitchEdge.Off;
    }

    /// <summary>Whether an edge comes faster than the pump can cause.</summary>
    public bool IsTooFast(SwitchEdge edge)
    {
        int shortest = _settings[SettingField.MinPulseIntervalMs];
        return (edge == SwitchEdge.On ? _sinceOnMs : _sinceOffMs) < shortest;
    }

    /// <summary>Accepts an edge: the timeout is renewed, without an allowance, since pressure stands.</summary>
    public void Accept(SwitchEdge edge)
    {
        _pulses = Saturating.Add(_pulses, 1);
        if (edge == SwitchEdge.On)
            _sinceOnMs = 0;
        else
            _sinceOffMs = 0;
        ClearWitness();
        Renew(0);
    }

    /// <summary>Renews the timeout and the retries.</summary>
    public void Renew(int allowanceMs)
    {
        _timerMs = 0;
        _allowanceMs = allowanceMs;
        _retriesUsed = 0;
    }

    /// <summary>A new try from failed: one more timeout with allowance, no retries.</summary>
    public void GrantTry(int allowanceMs)
    {
        int used = _settings.OfSwitch(_index, SettingField.SwitchRetries);
        Renew(allowanceMs);
        _retriesUsed = used;
        _timerMs = used * _settings.OfSwitch(_index, SettingField.SwitchTimeoutMs);
    }

    /// <summary>The pump is started for a dose: its first pulse may take longer. The timer itself is not renewed.</summary>
    public void Allow(int allowanceMs) => _allowanceMs = allowanceMs;

    public void UseRetry() => _retriesUsed++;

    /// <summary>Another switch gave a pulse.</summary>
    /// <returns>Whether that proves this switch wrong, just now.</returns>
    public bool CountOtherPulse(int other)
    {
        int needed = _settings[SettingField.WitnessPulses];
        _othersPulses[other] = Saturating.Add(_othersPulses[other], 1);
        if (needed == 0 || _provedWrong || _othersPulses[other] < needed)
            return false;
        _provedWrong = true;
        return true;
    }

    /// <summary>Whether chatter began, or began again, since the last call.</summary>
    public bool ConsumeChatterBegan()
    {
        bool began = _chatterBegan;
        _chatterBegan = false;
        return began;
    }

    /// <summary>Reset ends what only a running pump can show.</summary>
    public void EndProof()
    {
        _provedWrong = false;
        ClearWitness();
    }

    public int DeadlineMs(bool ready, bool doseRuns)
    {
        int deadline = ready ? _input.DeadlineMs(DebounceMs) : Saturating.Never;
        if (doseRuns && TimeoutCounts)
            deadline = Saturating.Min(deadline, Saturating.Remaining(LimitMs, _timerMs));
        if (WindowRuns)
            deadline = Saturating.Min(deadline, Saturating.Remaining(_settings[SettingField.ChatterWindowMs], _windowMs));
        return deadline;
    }

    public void Transfer(StateStream stream)
    {
        int shortest = _settings[SettingField.MinPulseIntervalMs];
        int chatter = _settings[SettingField.ChatterChanges];
        _input.Transfer(stream, DebounceMs);
        _sinceOnMs = stream.UpTo(_sinceOnMs, shortest);
        _sinceOffMs = stream.UpTo(_sinceOffMs, shortest);
        _timerMs = stream.UpTo(_timerMs, LastLimitMs);
        _allowanceMs = stream.Number(_allowanceMs);
        _lastRaw = stream.FlagIf(chatter > 0, _lastRaw);
        _changes = stream.UpTo(_changes, chatter);
        _windowMs = stream.NumberIf(chatter > 0, _windowMs);
        _pulses = stream.Counter(_pulses);
        _retriesUsed = stream.Number(_retriesUsed);
        _chatters = stream.Flag(_chatters);
        _provedWrong = stream.Flag(_provedWrong);
        Distrusted = stream.Flag(Distrusted);
        for (int index = 0; index < _othersPulses.Length; index++)
            _othersPulses[index] = stream.UpTo(_othersPulses[index], _settings[SettingField.WitnessPulses]);
    }

    private bool WindowRuns => _changes > 0 || _chatters;

    private void CountChange()
    {
        int limit = _settings[SettingField.ChatterChanges];
        if (limit == 0)
            return;
        _changes = Saturating.Add(_changes, 1);
        if (_changes < limit)
            return;
        _chatterBegan |= !_chatters;
        _chatters = true;
    }

    /// <summary>Chatter ends with the first whole window that has fewer changes than the limit.</summary>
    private void AdvanceWindow(int elapsedMs)
    {
        if (!WindowRuns)
            return;
        _windowMs = Saturating.Add(_windowMs, elapsedMs);
        if (_windowMs < _settings[SettingField.ChatterWindowMs])
            return;
        _chatters = _chatters && _changes >= _settings[SettingField.ChatterChanges];
        _changes = 0;
        _windowMs = 0;
    }

    private void ClearWitness()
    {
        for (int index = 0; index < _othersPulses.Length; index++)
            _othersPulses[index] = 0;
    }
}
