namespace LubeController.Core;

/// <summary>Whether the pump turns when it should: its motor's overload contact, and its revolutions where they are counted.</summary>
internal sealed class PumpWatch
{
    private readonly DebouncedInput _overload = new DebouncedInput();
    private readonly Settings _settings;
    private int _withoutMs;
    private bool _isStill;

    public PumpWatch(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Whether the pump ran for too long without a revolution, short runs added up; until <see cref="Renew"/>, since only a running pump can show otherwise.</summary>
    public bool IsStill => _isStill;

    /// <summary>Whether the overload contact is accepted as on.</summary>
    public bool IsOverloaded => _settings.Is(SettingField.OverloadFitted) && _overload.Known && _overload.Level;

    /// <summary>Whether the overload contact, if one is fitted, has shown something since power-up.</summary>
    public bool IsKnown => !_settings.Is(SettingField.OverloadFitted) || _overload.Known;

    private bool Counts => _settings.Is(SettingField.PumpRevolutionsFitted);

    private int DebounceMs => _settings[SettingField.OverloadDebounceMs];

    public void Forget() => _overload.Forget();

    /// <summary>Reset, or a new try: the pump gets its whole time without a revolution again.</summary>
    public void Renew()
    {
        _isStill = false;
        _withoutMs = 0;
    }

    /// <param name="elapsedMs">Time that has passed.</param>
    /// <param name="pumpOn">Whether the pump was on throughout.</param>
    public void Advance(int elapsedMs, bool pumpOn)
    {
        _overload.Advance(elapsedMs);
        if (!Counts)
            _withoutMs = 0;
        else if (pumpOn)
            _withoutMs = Saturating.Add(_withoutMs, elapsedMs);
    }

    public void Sample(Inputs inputs)
    {
        _overload.Sample(inputs.PumpOverload != _settings.Is(SettingField.OverloadInverted), DebounceMs, true);
        if (!Counts)
        {
            _isStill = false;
            return;
        }

        if (inputs.PumpRevolutions > 0)
            _withoutMs = Saturating.Min(_withoutMs, inputs.PumpRevolutionAgeMs);
        if (_withoutMs >= _settings[SettingField.RevolutionMissingMs])
            _isStill = true;
    }

    public int DeadlineMs(bool pumpOn)
    {
        int deadline = _overload.DeadlineMs(DebounceMs);
        if (pumpOn && Counts && !_isStill)
            deadline = Saturating.Min(deadline, Saturating.Remaining(_settings[SettingField.RevolutionMissingMs], _withoutMs));
        return deadline;
    }

    public void Transfer(StateStream stream)
    {
        _overload.Transfer(stream, DebounceMs);
        _withoutMs = stream.UpTo(_withoutMs, _settings[SettingField.RevolutionMissingMs]);
        _isStill = stream.Flag(_isStill);
    }
}
