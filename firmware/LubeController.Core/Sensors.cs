namespace LubeController.Core;

/// <summary>Everything that the inputs are watched by, from cycle switches to the supply voltage.</summary>
internal sealed class Sensors
{
    /// <summary>The inputs as the last deciding scan took them: they have stood since.</summary>
    public readonly Inputs Held = new Inputs();

    public readonly CycleSwitches Switches;
    public readonly DebouncedInput LevelLow = new DebouncedInput();
    public readonly DebouncedInput LevelEmpty = new DebouncedInput();
    public readonly PressureWatch Pressure;
    public readonly ShaftWatch Shaft;
    public readonly PumpWatch Pump;
    public readonly SensorComparison Comparison;
    public readonly LimitWatch Supply = new LimitWatch();
    public readonly LimitWatch Warmth = new LimitWatch();

    private readonly Settings _settings;
    private readonly Inputs _inputs;

    public Sensors(Settings settings, Inputs inputs)
    {
        _settings = settings;
        _inputs = inputs;
        Switches = new CycleSwitches(settings);
        Pressure = new PressureWatch(settings);
        Shaft = new ShaftWatch(settings);
        Pump = new PumpWatch(settings);
        Comparison = new SensorComparison(settings);
    }

    /// <summary>Whether both the shaft and the machine-running input say standstill.</summary>
    public bool StandStill => Shaft.SaysStandstill && !Held.MachineRunning;

    /// <summary>Whether no input says anything else than the one held.</summary>
    public bool AreQuiet =>
        _inputs.Levels == Held.Levels
        && _inputs.PumpRevolutions == 0
        && Supply.IsQuiet(_inputs.SupplyMv)
        && _inputs.TemperatureDeciC == Held.TemperatureDeciC
        && _inputs.PressureMbar >= Pressure.QuietLowMbar
        && _inputs.PressureMbar <= Pressure.QuietHighMbar;

    /// <summary>Power has come: contacts show nothing yet.</summary>
    public void Forget()
    {
        Switches.Forget();
        LevelLow.Forget();
        LevelEmpty.Forget();
        Pressure.Forget();
        Pump.Forget();
        Shaft.PowerUp();
    }

    /// <summary>Lets time pass under all of them.</summary>
    /// <param name="span">The time, and the shaft pulses in it.</param>
    /// <param name="doseRuns">Whether the pump ran for a dose throughout.</param>
    /// <param name="pumpOn">Whether the pump was on throughout.</param>
    /// <param name="supplyLow">Whether the supply was too low throughout.</param>
    public void Advance(QuietSpan span, bool doseRuns, bool pumpOn, bool supplyLow)
    {
        int elapsedMs = span.ElapsedMs;
        Switches.Advance(elapsedMs, doseRuns, supplyLow);
        LevelLow.Advance(elapsedMs);
        LevelEmpty.Advance(elapsedMs);
        Pressure.Advance(elapsedMs, doseRuns);
        Pump.Advance(elapsedMs, pumpOn);
        Comparison.Advance(elapsedMs, pumpOn);
        Shaft.Advance(elapsedMs, span.Pulses, span.PulseAgeMs, Held.MachineRunning);
    }

    public void SampleSupply() => Supply.Sample(
        _inputs.SupplyMv, _settings.Is(SettingField.SupplyMeasured), _settings[SettingField.SupplyLimitMv], _settings[SettingField.SupplyHysteresisMv]);

    public void SampleWarmth() => Warmth.Sample(
        _inputs.TemperatureDeciC, _settings.Is(SettingField.ColdJudged), _settings[SettingField.ColdLimitDeciC], _settings[SettingField.ColdHysteresisDeciC]);

    /// <summary>Takes the inputs other than the cycle switches.</summary>
    public void Sample()
    {
        int levels = _settings[SettingField.LevelDebounceMs];
        LevelLow.Sample(_inputs.LevelLow != _settings.Is(SettingField.LevelLowInverted), levels, true);
        LevelEmpty.Sample(_inputs.LevelEmpty != _settings.Is(SettingField.LevelEmptyInverted), levels, true);
        Pressure.Sample(_inputs);
        Shaft.Sample(_inputs.MachineRunning);
        Pump.Sample(_inputs);
    }

    public int DeadlineMs(bool doseRuns, bool pumpOn, bool supplyLow)
    {
        int levels = _settings[SettingField.LevelDebounceMs];
        int deadline = Saturating.Min(LevelLow.DeadlineMs(levels), LevelEmpty.DeadlineMs(levels));
        deadline = Saturating.Min(deadline, Switches.DeadlineMs(doseRuns, supplyLow));
        deadline = Saturating.Min(deadline, Pressure.DeadlineMs(doseRuns));
        deadline = Saturating.Min(deadline, Shaft.DeadlineMs(Held.MachineRunning));
        return Saturating.Min(deadline, Pump.DeadlineMs(pumpOn));
    }

    public void TransferLevels(StateStream stream)
    {
        int levels = _settings[SettingField.LevelDebounceMs];
        LevelLow.Transfer(stream, levels);
        LevelEmpty.Transfer(stream, levels);
    }
}
