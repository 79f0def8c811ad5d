namespace LubeController.Core;

/// <summary>One reason for which settings are refused.</summary>
public sealed class SettingsRefusal
{
    private readonly int _field;
    private readonly int _value;
    private readonly int _minimum;
    private readonly int _maximum;
    private readonly string _reason;

    internal SettingsRefusal(int field, int value, int minimum, int maximum, string reason)
    {
        _field = field;
        _value = value;
        _minimum = minimum;
        _maximum = maximum;
        _reason = reason;
    }

    /// <summary>The setting at fault, an index into <see cref="SettingTable"/>.</summary>
    public int Field => _field;

    /// <summary>The value found.</summary>
    public int Value => _value;

    /// <summary>Smallest value that would be accepted beside the other settings.</summary>
    public int Minimum => _minimum;

    /// <summary>Largest value that would be accepted beside the other settings.</summary>
    public int Maximum => _maximum;

    /// <summary>Why, in words; never null.</summary>
    public string Reason => _reason;
}

/// <summary>
/// Checks settings as a whole: each value against its range, then values against each other. Runs when settings
/// are handed over, never in a scan.
/// </summary>
public sealed class SettingsCheck
{
    /// <summary>Most refusals listed; settings with more are refused all the same.</summary>
    public const int Capacity = 32;

    private readonly SettingsRefusal[] _refusals = new SettingsRefusal[Capacity];
    private int _count;

    /// <summary>Number of refusals listed; 0 means that the settings are accepted.</summary>
    public int Count => _count;

    /// <summary>A refusal, index 0 to <see cref="Count"/> - 1.</summary>
    public SettingsRefusal this[int index] => _refusals[index];

    /// <summary>Checks settings.</summary>
    /// <param name="settings">The settings.</param>
    /// <param name="hasRule">Whether a user's rest rule is built in.</param>
    /// <returns>Whether they are accepted.</returns>
    public bool Accepts(Settings settings, bool hasRule)
    {
        _count = 0;
        for (int field = 0; field < SettingField.Count; field++)
        {
            SettingSpec spec = SettingTable.Spec(field);
            Within(settings, field, spec.Minimum, spec.Maximum, "out of range");
        }

        // Sums of values that are out of range would mislead, and might overflow.
        if (_count == 0)
        {
            CheckDose(settings);
            CheckRest(settings, hasRule);
            CheckRestart(settings);
            CheckShaft(settings);
            CheckPressure(settings);
            CheckComparisons(settings);
            if (settings.DoseMode == DoseMode.Pressure)
                CheckPressureDose(settings);
        }

        return _count == 0;
    }

    private void CheckDose(Settings settings)
    {
        if (settings.DoseMode == DoseMode.Cycles)
        {
            Within(settings, SettingField.SwitchCount, 1, Inputs.MaxCycleSwitches, "a dose by cycles needs a cycle switch");
            if (settings[SettingField.SwitchCount] > 0)
                Within(settings, SettingField.DoseEndingSwitch, 1, settings[SettingField.SwitchCount], "the dose-ending switch is not fitted");
        }
        else if (settings.DoseMode == DoseMode.RunTime)
        {
            Within(settings, SettingField.DoseRunMs, 1000, settings[SettingField.DoseLimitMs] - 1, "a dose by run time must end before dose-limit");
        }

        int witness = settings[SettingField.WitnessPulses];
        if (witness == 1 || witness == 2)
            Refuse(SettingField.WitnessPulses, witness, 3, 100, "fewer than three pulses prove nothing; 0 judges none");
        for (int index = 0; index < settings[SettingField.SwitchCount]; index++)
            CheckSwitch(settings, index);
    }

    private void CheckSwitch(Settings settings, int index)
    {
        int timeout = settings.OfSwitch(index, SettingField.SwitchTimeoutMs);
        int tries = settings.OfSwitch(index, SettingField.SwitchRetries) + 1;
        int allowance = settings[SettingField.FirstPulseAllowanceMs];
        int longest = SafeDivide.Quotient(SettingTable.LongestMs - allowance, tries);
        Within(settings, SettingField.OfSwitch(index, SettingField.SwitchTimeoutMs), 100, longest, "all tries together must stay below 24 days");
        Within(settings, SettingField.OfSwitch(index, SettingField.SwitchDebounceMs), 0, timeout - 1, "debounce must be shorter than the switch's timeout");
        Within(settings, SettingField.MinPulseIntervalMs, 0, timeout - 1, "must be shorter than every switch's timeout");
    }

    private void CheckRest(Settings settings, bool hasRule)
    {
        RestMode mode = settings.RestMode;
        if (mode == RestMode.Rule && !hasRule)
            Refuse(SettingField.RestMode, (int)mode, 0, (int)RestMode.Either, "no rest rule is built in");
        if ((mode == RestMode.Shaft || mode == RestMode.Either) && !settings.Is(SettingField.ShaftFitted))
            Refuse(SettingField.ShaftFitted, 0, 1, 1, "a rest by shaft needs a shaft switch");
        if (mode == RestMode.Shaft || mode == RestMode.Rule)
            Within(settings, SettingField.RestFallbackMs, 1000, SettingTable.LongestMs, "shaft and rule need a fallback time");
        int longest = mode == RestMode.Rule || mode == RestMode.Shaft ? settings[SettingField.RestFallbackMs] : settings[SettingField.RestMs];
        if (mode == RestMode.Rule && settings[SettingField.RuleLongestRestMs] > longest)
            longest = settings[SettingField.RuleLongestRestMs];
        Within(settings, SettingField.OverdueMs, longest < SettingTable.LongestMs ? longest + 1 : longest, SettingTable.LongestMs, "must be longer than the longest rest by time");
    }

    /// <summary>After each power cut a pending dose waits for the whole restart delay, and the next cut loses what was done since the last save.</summary>
    private void CheckRestart(Settings settings) => Within(
        settings, SettingField.RestartDelayMs, 1000, settings[SettingField.SaveIntervalMs] - 1, "must be shorter than save-interval, or power cuts one save-interval apart never let a dose begin");

    private void CheckShaft(Settings settings)
    {
        if (!settings.Is(SettingField.ShaftFitted))
            return;
        int perRevolution = settings[SettingField.ShaftPulsesPerRevolution];
        Within(settings, SettingField.RestRevolutions, 1, SafeDivide.Quotient(int.MaxValue, perRevolution), "pulses of a rest must stay below 2^31");

        int standstillMs = settings[SettingField.ShaftStandstillMs];
        if (settings[SettingField.RunDownMs] > 0 && standstillMs < SettingTable.Spec(SettingField.RunDownMs).Maximum)
            Within(settings, SettingField.RunDownMs, standstillMs + 1, SettingTable.Spec(SettingField.RunDownMs).Maximum, "must be longer than shaft-standstill-time; 0 judges none");

        // Pulse and pause must both be at least the shortest pulse: 60e6 us per minute over two of them per pulse.
        int pairUs = 2 * settings[SettingField.ShaftMinPulseWidthUs];
        if (pairUs > 0)
            Within(settings, SettingField.ShaftMaxPerMinute, 1, SafeDivide.Quotient(SafeDivide.Quotient(60 * 1000 * 1000, pairUs), perRevolution), "faster than shaft-shortest-pulse lets the counter follow");
    }

    private void CheckPressure(Settings settings)
    {
        bool transmitter = settings.Is(SettingField.PressureTransmitterFitted);
        if (transmitter)
            Within(settings, SettingField.PressureReachedMbar, 0, settings[SettingField.PressureLimitMbar] - 1, "must be below pressure-limit");
        bool shown = transmitter || settings.PressureSwitchUse == PressureSwitchUse.Reached;
        if (settings[SettingField.PressureMissingMs] > 0 && !shown && settings.DoseMode != DoseMode.Pressure)
            Refuse(SettingField.PressureMissingMs, settings[SettingField.PressureMissingMs], 0, 0, "nothing shows whether pressure is reached: fit a transmitter, or a switch that shows pressure-reached");
    }

    private void CheckComparisons(Settings settings)
    {
        bool transmitter = settings.Is(SettingField.PressureTransmitterFitted);
        if (settings.Is(SettingField.PulsesShowPressure) && !transmitter && settings.PressureSwitchUse != PressureSwitchUse.Reached)
            Refuse(SettingField.PulsesShowPressure, 1, 0, 0, "nothing shows whether pressure is reached: fit a transmitter, or a switch that shows pressure-reached");
        if (transmitter && settings[SettingField.PressureSpanMbar] > 0)
            Within(settings, SettingField.PressureSpanMbar, settings[SettingField.PressureLimitMbar], SettingTable.Spec(SettingField.PressureSpanMbar).Maximum, "a transmitter must be able to show pressure-limit; 0 judges none");
        if (settings[SettingField.DividerCycleMm3] == 0)
            return;
        if (settings.Is(SettingField.PumpRevolutionsFitted))
            Within(settings, SettingField.PumpRevolutionMm3, 1, SettingTable.Spec(SettingField.PumpRevolutionMm3).Maximum, "divider-volume-per-cycle needs the volume pumped to compare with");
        else
            Within(settings, SettingField.PumpFlowMm3PerMinute, 1, SettingTable.Spec(SettingField.PumpFlowMm3PerMinute).Maximum, "divider-volume-per-cycle needs the volume pumped to compare with: the pump's flow, or a pump-revolution-sensor");
    }

    private void CheckPressureDose(Settings settings)
    {
        bool byTransmitter = settings.Is(SettingField.PressureTransmitterFitted);
        bool bySwitch = settings.PressureSwitchUse == PressureSwitchUse.Reached;
        if (!byTransmitter && !bySwitch)
            Refuse(SettingField.PressureSwitchUse, (int)settings.PressureSwitchUse, (int)PressureSwitchUse.Reached, (int)PressureSwitchUse.Reached, "a dose by pressure needs a switch that shows pressure-reached, or a transmitter");
        if (byTransmitter)
            Within(settings, SettingField.PressureVentedMbar, 0, settings[SettingField.PressureReachedMbar] - 1, "must be below pressure-reached");

        // What the switch shows is accepted only after its debounce, which must not use up the time limit.
        int debounce = bySwitch ? settings[SettingField.PressureDebounceMs] : 0;
        Within(settings, SettingField.PressureMissingMs, debounce + 1, SettingTable.Spec(SettingField.PressureMissingMs).Maximum, "a dose by pressure is bounded by it, and it must be longer than pressure-debounce");
        Within(settings, SettingField.VentLimitMs, settings[SettingField.VentMs] + debounce + 1, SettingTable.Spec(SettingField.VentLimitMs).Maximum, "must be longer than vent-time and pressure-debounce together");
        long longest = settings[SettingField.PressureCycles] * ((long)settings[SettingField.PressureMissingMs] + settings[SettingField.HoldMs]);
        Within(settings, SettingField.DoseLimitMs, longest < int.MaxValue ? (int)longest + 1 : int.MaxValue, SettingTable.Spec(SettingField.DoseLimitMs).Maximum, "must leave every pressure cycle its pressure-missing-time and hold-time");
    }

    private void Within(Settings settings, int field, int minimum, int maximum, string reason)
    {
        int value = settings[field];
        if (value < minimum || value > maximum)
            Refuse(field, value, minimum, maximum, reason);
    }

    private void Refuse(int field, int value, int minimum, int maximum, string reason)
    {
        if (_count < Capacity)
            _refusals[_count++] = new SettingsRefusal(field, value, minimum, maximum, reason);
    }
}
