namespace LubeController.Core;

/// <summary>What switch and transmitter say about the line pressure, and how long the pump has run without it.</summary>
/// <remarks>
/// With both fitted, either shows that pressure is reached, except in a dose by pressure: there it takes both to count as
/// reached and both to count as fallen, so that one that lies ends the dose instead of making it pass.
/// </remarks>
internal sealed class PressureWatch
{
    private readonly DebouncedInput _switch = new DebouncedInput();
    private readonly Settings _settings;
    private int _missingMs;
    private bool _isReached;
    private bool _isOver;
    private bool _isFallen;
    private bool _isLost;
    private bool _isKnown;
    private int _quietLowMbar = int.MinValue;
    private int _quietHighMbar = int.MaxValue;

    public PressureWatch(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Whether line pressure is reached.</summary>
    public bool IsReached => _isReached;

    /// <summary>Whether line pressure is above its limit.</summary>
    public bool IsOver => _isOver;

    /// <summary>Whether the line of a single-line system is vented; false while it is not known.</summary>
    public bool IsFallen => _isFallen;

    /// <summary>Whether the transmitter's reading is none that a working one gives (NAMUR NE 43: below 3.6 mA or above 21 mA; from memory).</summary>
    public bool IsLost => _isLost;

    /// <summary>Whether everything that a dose by pressure goes by has shown something since power-up.</summary>
    public bool IsKnown => _isKnown;

    /// <summary>Whether a switch that shows the limit, if one is fitted, has shown something since power-up.</summary>
    public bool IsLimitKnown => _settings.PressureSwitchUse != PressureSwitchUse.Limit || _switch.Known;

    /// <summary>Lowest transmitter reading that would say the same as the present one.</summary>
    public int QuietLowMbar => _quietLowMbar;

    /// <summary>Highest transmitter reading that would say the same as the present one.</summary>
    public int QuietHighMbar => _quietHighMbar;

    /// <summary>Whether the pump has run for too long without line pressure.</summary>
    public bool IsMissing => IsTimed && _missingMs >= _settings[SettingField.PressureMissingMs];

    private bool IsTimed => _settings[SettingField.PressureMissingMs] > 0;

    private int SpanMbar => _settings[SettingField.PressureSpanMbar];

    /// <summary>3.6 mA: a fortieth of the span below zero.</summary>
    private int LowestMbar => SpanMbar == 0 ? int.MinValue : -(SpanMbar / 40);

    /// <summary>21 mA: a sixteenth of the span above it.</summary>
    private int HighestMbar => SpanMbar == 0 ? int.MaxValue : SpanMbar + (SpanMbar / 16);

    private int DebounceMs => _settings[SettingField.PressureDebounceMs];

    public void Forget() => _switch.Forget();

    /// <summary>Restarts the time without pressure.</summary>
    public void Renew() => _missingMs = 0;

    public void Advance(int elapsedMs, bool doseRuns)
    {
        _switch.Advance(elapsedMs);
        if (doseRuns && IsTimed && !_isReached)
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

        bool bySwitch = use == PressureSwitchUse.Reached;
        bool byTransmitter = _settings.Is(SettingField.PressureTransmitterFitted);
        bool above = byTransmitter && inputs.PressureMbar >= _settings[SettingField.PressureReachedMbar];
        bool needsBoth = bySwitch && byTransmitter && _settings.DoseMode == DoseMode.Pressure;
        _isReached = needsBoth ? on && above : (on && bySwitch) || above;
        _isOver = on && use == PressureSwitchUse.Limit;
        _isKnown = !bySwitch || _switch.Known;
        _isFallen = _isKnown && !(bySwitch && on);
        _isLost = false;
        if (byTransmitter)
            SampleTransmitter(inputs.PressureMbar);
        if (_isReached)
            _missingMs = 0;
    }

    public int DeadlineMs(bool doseRuns)
    {
        int deadline = _switch.DeadlineMs(DebounceMs);
        if (doseRuns && IsTimed && !_isReached)
            deadline = Saturating.Min(deadline, Saturating.Remaining(_settings[SettingField.PressureMissingMs], _missingMs));
        return deadline;
    }

    public void Transfer(StateStream stream)
    {
        _switch.Transfer(stream, DebounceMs);
        _missingMs = stream.UpTo(_missingMs, _settings[SettingField.PressureMissingMs]);
        _isReached = stream.Flag(_isReached);
        _isOver = stream.Flag(_isOver);
        _isFallen = stream.Flag(_isFallen);
        _isKnown = stream.Flag(_isKnown);
        _isLost = stream.Flag(_isLost);
        _quietLowMbar = stream.Counter(_quietLowMbar);
        _quietHighMbar = stream.Counter(_quietHighMbar);
    }

    private void SampleTransmitter(int pressureMbar)
    {
        int limit = _settings[SettingField.PressureLimitMbar];
        int vented = _settings[SettingField.PressureVentedMbar];
        _isOver |= pressureMbar > limit;
        int lowest = LowestMbar;
        int highest = HighestMbar;
        _isLost = pressureMbar < lowest || pressureMbar > highest;
        _isFallen &= pressureMbar <= vented;
        if (_settings.RestMode == RestMode.Rule)
        {
            // A user's rule may look at the pressure: to it every reading is another one.
            _quietLowMbar = pressureMbar;
            _quietHighMbar = pressureMbar;
            return;
        }

        _quietLowMbar = int.MinValue;
        _quietHighMbar = int.MaxValue;
        Narrow(pressureMbar, _settings[SettingField.PressureReachedMbar]);
        Narrow(pressureMbar, limit + 1);
        if (SpanMbar > 0)
        {
            Narrow(pressureMbar, lowest);
            Narrow(pressureMbar, highest + 1);
        }

        if (_settings.DoseMode == DoseMode.Pressure)
            Narrow(pressureMbar, vented + 1);
    }

    /// <summary>Readings on the other side of a threshold, the first at or above it, say something else.</summary>
    private void Narrow(int pressureMbar, int threshold)
    {
        if (pressureMbar < threshold)
            _quietHighMbar = Saturating.Min(_quietHighMbar, threshold - 1);
        else if (threshold > _quietLowMbar)
            _quietLowMbar = threshold;
    }
}
