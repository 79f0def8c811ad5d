namespace LubeController.Core;

/// <summary>What the shaft switch says: turning, standing still, or lost while the machine runs.</summary>
internal sealed class ShaftWatch
{
    private readonly Settings _settings;
    private int _sincePulseMs;
    private int _lostMs;
    private int _turningMs;

    // Every scan sets it before it is read, so it is not part of the state.
    private bool _running;
    private bool _isContradicted;

    public ShaftWatch(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Whether the shaft signal is lost: no pulse for the set time of running, the machine running. Neither standstill nor a power cut renews that time; otherwise a machine that runs in bursts would never raise the alarm.</summary>
    public bool IsLost => Fitted && _running && _lostMs >= _settings[SettingField.ShaftLostMs];

    /// <summary>Whether the shaft says standstill. A shaft switch that is not fitted says nothing.</summary>
    public bool SaysStandstill => Fitted && _sincePulseMs >= _settings[SettingField.ShaftStandstillMs];

    /// <summary>Whether the shaft gave a pulse too long after the machine is said to stand.</summary>
    public bool IsContradicted => _isContradicted;

    private int RunDownMs => _settings[SettingField.RunDownMs];

    private bool AwaitsRunDown => RunDownMs > 0 && !_isContradicted;

    private bool Fitted => _settings.Is(SettingField.ShaftFitted);

    public void PowerUp()
    {
        _sincePulseMs = 0;
        _turningMs = 0;
        _isContradicted = false;
    }

    /// <param name="elapsedMs">Time that has passed.</param>
    /// <param name="pulses">Shaft pulses in it.</param>
    /// <param name="ageMs">Time since the last of them.</param>
    /// <param name="wasRunning">Whether the machine-running input was on throughout.</param>
    public void Advance(int elapsedMs, int pulses, int ageMs, bool wasRunning)
    {
        if (!Fitted)
            return;
        bool stood = SaysStandstill;
        AdvancePulses(elapsedMs, pulses, ageMs, wasRunning);
        if (wasRunning || SaysStandstill)
        {
            _turningMs = 0;
            _isContradicted = false;
            return;
        }

        _turningMs = stood ? ageMs : Saturating.Add(_turningMs, elapsedMs);
        if (pulses > 0 && RunDownMs > 0 && _turningMs - ageMs >= RunDownMs)
            _isContradicted = true;
    }

    private void AdvancePulses(int elapsedMs, int pulses, int ageMs, bool wasRunning)
    {
        if (pulses > 0)
        {
            _sincePulseMs = ageMs;
            _lostMs = wasRunning ? ageMs : 0;
            return;
        }

        _sincePulseMs = Saturating.Add(_sincePulseMs, elapsedMs);
        if (wasRunning)
            _lostMs = Saturating.Add(_lostMs, elapsedMs);
    }

    /// <summary>A machine that stands gives no pulses; one that runs may turn.</summary>
    public void Sample(bool running)
    {
        if (!Fitted || running)
        {
            _turningMs = 0;
            _isContradicted = false;
        }

        _running = running;
    }

    public int DeadlineMs(bool running)
    {
        if (!Fitted)
            return Saturating.Never;
        if (running)
            return IsLost ? Saturating.Never : Saturating.Remaining(_settings[SettingField.ShaftLostMs], _lostMs);
        if (SaysStandstill)
            return Saturating.Never;
        int deadline = Saturating.Remaining(_settings[SettingField.ShaftStandstillMs], _sincePulseMs);
        return !AwaitsRunDown || _turningMs >= RunDownMs ? deadline : Saturating.Min(deadline, Saturating.Remaining(RunDownMs, _turningMs));
    }

    /// <summary>Where the shaft is lost, stands, or should have run down, its next pulse changes something.</summary>
    public int DeadlineShaftPulses(bool running) =>
        Fitted && (IsLost || (!running && (SaysStandstill || (AwaitsRunDown && _turningMs >= RunDownMs)))) ? 1 : Saturating.Never;

    public void Transfer(StateStream stream)
    {
        _sincePulseMs = stream.UpTo(_sincePulseMs, _settings[SettingField.ShaftStandstillMs]);
        _lostMs = stream.UpTo(_lostMs, _settings[SettingField.ShaftLostMs]);
        _turningMs = stream.UpTo(_turningMs, RunDownMs);
        _isContradicted = stream.Flag(_isContradicted);
    }
}
