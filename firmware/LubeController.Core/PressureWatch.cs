namespace LubeController.Core;

/// <summary>What switch and transmitter say about the line pressure, and how long the pump has run without it.</summary>
internal sealed class PressureWatch
{
    private readonly DebouncedInput _switch = new DebouncedInput();
    private readonly Settings _settings;
    private int _missingMs;

    public PressureWatch(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Whether line pressure is reached.</summary>
    public bool IsReached { get; private set; }

    /// <summary>Whether line pressure is above its limit.</summary>
    public bool IsOver { get; private set; }

    /// <summary>Lowest transmitter reading that would say the same as the present one.</summary>
    public int QuietLowMbar { get; private set; } = int.MinValue;

    /// <summary>Highest transmitter reading that would say the same as the present one.</summary>
    public int QuietHighMbar { get; private set; } = int.MaxValue;

    /// <summary>Whether the pump has run for too long without line pressure.</summary>
    public bool IsMissing => Judges && _missingMs >= _settings[SettingField.PressureMissingMs];

    private bool Judges => _settings[SettingField.PressureMissingMs] > 0;

    private int DebounceMs => _settings[SettingField.PressureDebounceMs];

    public void Forget() => _switch.Forget();

    /// <summary>Starts the time without pressure anew.</summary>
    public void Renew() => _missingMs = 0;

    public void Advance(int elapsedMs, bool doseRuns)
    {
        _switch.Advance(elapsedMs);
        if (doseRuns && Judges && !IsReached)
            _missingMs = Saturating.Add(_missingMs, elapsedMs);
    }

    public void Sample(Inputs inputs)
    {
        PressureSwitchUse use = _settings.PressureSwitchUse;
        bool on = false;
        if (use != PressureSwitchUse.Nothing)
        {
            bool raw = inputs.PressureSwitch != _settings.Is(SettingField.PressureSwitchInverted);
            _switch.Sample(raw, DebounceMs, true);
            on = _switch.Known && _switch.Level;
        }

        IsReached = on && use == PressureSwitchUse.Reached;
        IsOver = on && use == PressureSwitchUse.Limit;
        if (_settings.Is(SettingField.PressureTransmitterFitted))
            SampleTransmitter(inputs.PressureMbar);
        if (IsReached)
            _missingMs = 0;
    }

    public int DeadlineMs(bool doseRuns)
    {
        int deadline = _switch.DeadlineMs(DebounceMs);
        if (doseRuns && Judges && !IsReached)
            deadline = Saturating.Min(deadline, Saturating.Remaining(_settings[SettingField.PressureMissingMs], _missingMs));
        return deadline;
    }

    public void Transfer(StateStream stream)
    {
        _switch.Transfer(stream);
        _missingMs = stream.Number(_missingMs);
        IsReached = stream.Flag(IsReached);
        IsOver = stream.Flag(IsOver);
        QuietLowMbar = stream.Number(QuietLowMbar);
        QuietHighMbar = stream.Number(QuietHighMbar);
    }

    private void SampleTransmitter(int pressureMbar)
    {
        int reached = _settings[SettingField.PressureReachedMbar];
        int limit = _settings[SettingField.PressureLimitMbar];
        QuietLowMbar = pressureMbar > limit ? limit + 1 : pressureMbar >= reached ? reached : int.MinValue;
        QuietHighMbar = pressureMbar < reached ? reached - 1 : pressureMbar <= limit ? limit : int.MaxValue;
        IsReached |= pressureMbar >= reached;
        IsOver |= pressureMbar > limit;
    }
}
