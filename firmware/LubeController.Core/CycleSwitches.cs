namespace LubeController.Core;

/// <summary>The cycle switches together: when they are trusted after power-up, and what a dose, a try and a reset do to their timers.</summary>
internal sealed class CycleSwitches
{
    private readonly CycleSwitch[] _switches = new CycleSwitch[Inputs.MaxCycleSwitches];
    private readonly Settings _settings;
    private int _readyMs;

    public CycleSwitches(Settings settings)
    {
        _settings = settings;
        for (int index = 0; index < _switches.Length; index++)
            _switches[index] = new CycleSwitch(settings, index);
    }

    /// <summary>How many are fitted.</summary>
    public int Count => _settings[SettingField.SwitchCount];

    /// <summary>Whether the ready delay is over, so that the switches are trusted.</summary>
    public bool AreReady => _readyMs == 0;

    public CycleSwitch this[int index] => _switches[index];

    /// <summary>Begins the ready delay; the first level after it is a baseline.</summary>
    public void Forget()
    {
        _readyMs = _settings[SettingField.ReadyDelayMs];
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].Forget();
    }

    public void Advance(int elapsedMs, bool doseRuns, bool supplyLow)
    {
        for (int index = 0; index < Count; index++)
            _switches[index].Advance(elapsedMs, doseRuns);
        if (!supplyLow)
            _readyMs = _readyMs > elapsedMs ? _readyMs - elapsedMs : 0;
    }

    /// <summary>Renews every timer, as a reset does.</summary>
    public void Renew()
    {
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].Renew(AllowanceMs(index));
    }

    /// <summary>Gives a new try from failed one timeout of its own.</summary>
    public void GrantTry()
    {
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].GrantTry(AllowanceMs(index));
    }

    /// <summary>The pump starts for a dose: the first pulse of the dose-ending switch waits for pressure.</summary>
    public void AllowFirstPulse() =>
        _switches[_settings.DoseEndingIndex].Allow(_settings[SettingField.FirstPulseAllowanceMs]);

    /// <summary>Reset ends what a second witness proved: only a running pump can show whether a silent switch is wrong.</summary>
    /// <returns>Whether a switch was proved wrong and none chatters now.</returns>
    public bool EndProofs()
    {
        bool chatters = false;
        bool proved = false;
        for (int index = 0; index < Count; index++)
        {
            proved |= _switches[index].ProvedWrong;
            _switches[index].EndProof();
            chatters |= _switches[index].Chatters;
        }

        return proved && !chatters;
    }

    /// <summary>Trusts every switch again.</summary>
    public void Trust()
    {
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].Distrusted = false;
    }

    public int DeadlineMs(bool doseRuns, bool supplyLow)
    {
        int deadline = _readyMs > 0 && !supplyLow ? _readyMs : Saturating.Never;
        for (int index = 0; index < Count; index++)
            deadline = Saturating.Min(deadline, _switches[index].DeadlineMs(AreReady, doseRuns));
        return deadline;
    }

    public void TransferReady(StateStream stream) => _readyMs = stream.Number(_readyMs);

    public void Transfer(StateStream stream)
    {
        for (int index = 0; index < _switches.Length; index++)
            _switches[index].Transfer(stream);
    }

    private int AllowanceMs(int index) =>
        index == _settings.DoseEndingIndex ? _settings[SettingField.FirstPulseAllowanceMs] : 0;
}
