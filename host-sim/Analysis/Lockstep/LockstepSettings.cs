using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Core;
using Spec = LubeController.Analysis.Specification;

namespace LubeController.Analysis.Lockstep;

/// <summary>The core's settings as the specification's, and what of them it cannot express.</summary>
public static class LockstepSettings
{
    private const int PaPerMbar = 100;
    private const int MilliPerDeci = 100;

    /// <summary>What the specification leaves out, as settings, and the value that leaves it out of the core too.</summary>
    public static IReadOnlyList<(int Field, int Value)> LeftOut { get; } =
    [
        (SettingField.PulsesShowPressure, 0),
        (SettingField.DividerCycleMm3, 0),
    ];

    /// <summary>All values of a core's settings.</summary>
    public static SettingsValues ValuesOf(Settings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return new SettingsValues(Enumerable.Range(0, SettingField.Count).Select(field => settings[field]));
    }

    /// <summary>The same without what the specification leaves out.</summary>
    public static SettingsValues Neutral(SettingsValues values)
    {
        ArgumentNullException.ThrowIfNull(values);
        return LeftOut.Aggregate(values, (so, left) => so.With(left.Field, left.Value));
    }

    /// <summary>The specification's settings.</summary>
    /// <param name="values">Settings that the core accepts.</param>
    /// <exception cref="ArgumentException">They ask for what the specification leaves out, or the core refuses them; the message names the setting.</exception>
    public static Spec.SpecSettings ToSpec(SettingsValues values)
    {
        ArgumentNullException.ThrowIfNull(values);
        Refuse(values);
        return WithSensors(WithPressure(WithDose(WithRest(new Spec.SpecSettings(), values), values), values), values);
    }

    /// <summary>What the specification sees of a scan's inputs: polarity applied, nothing of what is not fitted.</summary>
    public static Spec.SpecInputs Inputs(SettingsValues values, LockstepInputs wired)
    {
        ArgumentNullException.ThrowIfNull(values);
        int switches = 0;
        for (int index = 0; index < values[SettingField.SwitchCount]; index++)
            switches |= (((wired.CycleSwitches >> index) & 1) ^ (values[SettingField.OfSwitch(index, SettingField.SwitchInverted)] & 1)) << index;
        return new Spec.SpecInputs
        {
            CycleSwitches = switches,
            ShaftPulses = wired.ShaftPulses,
            ShaftPulseAgeMs = wired.ShaftPulseAgeMs,
            PumpRevolutions = wired.PumpRevolutions,
            PumpRevolutionAgeMs = wired.PumpRevolutionAgeMs,
            MachineRunning = wired.MachineRunning,
            LevelLow = Fitted(values, SettingField.LevelLowFitted, SettingField.LevelLowInverted, wired.LevelLow),
            LevelEmpty = Fitted(values, SettingField.LevelEmptyFitted, SettingField.LevelEmptyInverted, wired.LevelEmpty),
            PumpOverload = Fitted(values, SettingField.OverloadFitted, SettingField.OverloadInverted, wired.PumpOverload),
            PressureSwitch = Fitted(values, SettingField.PressureSwitchUse, SettingField.PressureSwitchInverted, wired.PressureSwitch),
            ScanLate = wired.ScanLate,
            PressurePa = wired.PressureMbar * PaPerMbar,
            TemperatureMilliCelsius = wired.TemperatureDeciC * MilliPerDeci,
            SupplyMilliVolt = wired.SupplyMv,
            Stop = wired.Stop,
            Pressed = wired.Pressed,
        };
    }

    /// <summary>The core's number of an alarm of the specification; both faults of cycle switches are one alarm of the core.</summary>
    public static int CoreNumberOf(Spec.AlarmId alarm) =>
        alarm == Spec.AlarmId.OtherSwitchFault ? (int)AlarmId.CycleSwitchFault : (int)Enum.Parse<AlarmId>(alarm.ToString());

    private static IReadOnlyList<Spec.Consequence> Consequences { get; } =
    [
        new(Spec.AlarmId.DividerStalled, Spec.AlarmId.ReservoirEmpty),
        new(Spec.AlarmId.DividerStalled, Spec.AlarmId.PumpOverload),
        new(Spec.AlarmId.DividerStalled, Spec.AlarmId.LinePressureMissing),
        new(Spec.AlarmId.DividerStalled, Spec.AlarmId.LineOverpressure),
        new(Spec.AlarmId.LinePressureMissing, Spec.AlarmId.ReservoirEmpty),
        new(Spec.AlarmId.LinePressureMissing, Spec.AlarmId.PumpOverload),
        new(Spec.AlarmId.LinePressureMissing, Spec.AlarmId.PressureSignalLost),
        new(Spec.AlarmId.DoseTooLong, Spec.AlarmId.DividerStalled),
        new(Spec.AlarmId.ReservoirLow, Spec.AlarmId.ReservoirEmpty),
        new(Spec.AlarmId.ShaftSignalLost, Spec.AlarmId.SupplyLow),
        new(Spec.AlarmId.ScanOverrun, Spec.AlarmId.LogicFault),
        new(Spec.AlarmId.RestartUnexpected, Spec.AlarmId.LogicFault),
        new(Spec.AlarmId.SensorsDisagree, Spec.AlarmId.PressureSignalLost),
    ];

    private static Spec.SpecSettings WithRest(Spec.SpecSettings spec, SettingsValues values) => spec with
    {
        RestMode = (RestMode)values[SettingField.RestMode] switch
        {
            RestMode.Shaft => Spec.RestMode.Shaft,
            RestMode.Either => Spec.RestMode.Either,
            _ => Spec.RestMode.Time,
        },
        RestMs = values[SettingField.RestMs],
        RestShaftPulses = values[SettingField.RestRevolutions] * values[SettingField.ShaftPulsesPerRevolution],
        FallbackMs = Math.Max(1, values[SettingField.RestFallbackMs]),
        RestOnlyWhileRunning = values[SettingField.RestOnlyWhileRunning] != 0,
        RestartDelayMs = values[SettingField.RestartDelayMs],
        NewTries = values[SettingField.NewTryDelayMs] > 0,
        NewTryDelayMs = values[SettingField.NewTryDelayMs],
        HasShaft = values[SettingField.ShaftFitted] != 0,
        ShaftTimeoutMs = values[SettingField.ShaftLostMs],
        ShaftStandstillMs = values[SettingField.ShaftStandstillMs],
        RunDownMs = values[SettingField.RunDownMs],
        PrimeLimitMs = values[SettingField.PrimeLimitMs],
        OutputTestMs = values[SettingField.OutputTestMs],
        OverdueMs = values[SettingField.OverdueMs],
        SaveIntervalMs = values[SettingField.SaveIntervalMs],
        RestartsMost = values[SettingField.RestartsMost],
        RestartWindowMs = values[SettingField.RestartWindowMs],
    };

    private static Spec.SpecSettings WithDose(Spec.SpecSettings spec, SettingsValues values) => spec with
    {
        DoseMode = (DoseMode)values[SettingField.DoseMode] switch
        {
            DoseMode.Cycles => Spec.DoseMode.Cycles,
            DoseMode.RunTime => Spec.DoseMode.RunTime,
            _ => Spec.DoseMode.Pressure,
        },
        DosePulses = values[SettingField.DoseEdges],
        DoseRunMs = values[SettingField.DoseRunMs],
        DoseLimitMs = values[SettingField.DoseLimitMs],
        Switches = [.. Enumerable.Range(0, values[SettingField.SwitchCount]).Select(index => SwitchOf(values, index))],
        DoseEndingSwitch = values[SettingField.DoseEndingSwitch] - 1,
        FirstPulseAllowanceMs = values[SettingField.FirstPulseAllowanceMs],
        WitnessPulses = values[SettingField.WitnessPulses],
        ChatterChanges = values[SettingField.ChatterChanges],
        ChatterWindowMs = values[SettingField.ChatterWindowMs],
        RetryPauseMs = values[SettingField.RetryPauseMs],
        ShortestPulseIntervalMs = values[SettingField.MinPulseIntervalMs],
        RunOnMs = values[SettingField.RunOnMs],
    };

    private static Spec.SpecSettings WithPressure(Spec.SpecSettings spec, SettingsValues values) => spec with
    {
        OverpressurePa = values[SettingField.PressureTransmitterFitted] != 0 ? values[SettingField.PressureLimitMbar] * PaPerMbar : null,
        PressureReachedPa = values[SettingField.PressureReachedMbar] * PaPerMbar,
        PressureVentedPa = values[SettingField.PressureVentedMbar] * PaPerMbar,
        PressureSpanPa = values[SettingField.PressureSpanMbar] * PaPerMbar,
        PressureSwitchUse = (PressureSwitchUse)values[SettingField.PressureSwitchUse] switch
        {
            PressureSwitchUse.Reached => Spec.PressureSwitchUse.Reached,
            PressureSwitchUse.Limit => Spec.PressureSwitchUse.Limit,
            _ => Spec.PressureSwitchUse.Nothing,
        },
        PressureDebounceMs = values[SettingField.PressureDebounceMs],
        PressureMissingMs = values[SettingField.PressureMissingMs],
        HoldMs = values[SettingField.HoldMs],
        VentMs = values[SettingField.VentMs],
        VentLimitMs = Math.Max(values[SettingField.VentMs] + 1, values[SettingField.VentLimitMs]),
        PressureCycles = values[SettingField.PressureCycles],
        VentValveNormallyOpen = values[SettingField.VentValveNormallyOpen] != 0,
    };

    private static Spec.SpecSettings WithSensors(Spec.SpecSettings spec, SettingsValues values) => spec with
    {
        RevolutionMissingMs = values[SettingField.PumpRevolutionsFitted] != 0 ? values[SettingField.RevolutionMissingMs] : null,
        ColdMilliCelsius = values[SettingField.ColdJudged] != 0 ? values[SettingField.ColdLimitDeciC] * MilliPerDeci : null,
        ColdHysteresisMilliKelvin = values[SettingField.ColdHysteresisDeciC] * MilliPerDeci,
        SupplyLowMilliVolt = values[SettingField.SupplyMeasured] != 0 ? values[SettingField.SupplyLimitMv] : null,
        SupplyHysteresisMilliVolt = values[SettingField.SupplyHysteresisMv],
        ReadyDelayMs = values[SettingField.ReadyDelayMs],
        LevelDebounceMs = values[SettingField.LevelDebounceMs],
        // A contact that is not fitted is known to be off from the first scan on.
        OverloadDebounceMs = values[SettingField.OverloadFitted] != 0 ? values[SettingField.OverloadDebounceMs] : 0,
        StopDebounceMs = 0,
        MachineRunningDebounceMs = 0,
        ButtonDebounceMs = values[SettingField.ButtonDebounceMs],
        Delays = Spec.AlarmTable.All.ToDictionary(rule => rule.Id, rule => DelaysOf(values, rule.Id)),
        Consequences = Consequences,
    };

    private static bool Fitted(SettingsValues values, int fitted, int inverted, bool wired) =>
        values[fitted] != 0 && wired != (values[inverted] != 0);

    private static Spec.SwitchSettings SwitchOf(SettingsValues values, int index) => new(
        values[SettingField.OfSwitch(index, SettingField.SwitchTimeoutMs)],
        values[SettingField.OfSwitch(index, SettingField.SwitchRetries)],
        values[SettingField.EdgesPerCycle] == 2,
        values[SettingField.OfSwitch(index, SettingField.SwitchDebounceMs)]);

    private static Spec.AlarmDelays DelaysOf(SettingsValues values, Spec.AlarmId alarm)
    {
        var id = (AlarmId)CoreNumberOf(alarm);
        return new Spec.AlarmDelays(values[SettingField.DelayOn(id)], values[SettingField.DelayOff(id)]);
    }

    private static void Refuse(SettingsValues values)
    {
        foreach ((int field, int value) in LeftOut)
        {
            if (values[field] != value)
                throw new ArgumentException($"{SettingTable.Spec(field).Name} is {values[field]}; accepted: {value}, as the specification leaves it out.", nameof(values));
        }

        var settings = new Settings();
        for (int field = 0; field < values.Count; field++)
            settings[field] = values[field];
        var check = new SettingsCheck();
        if (!check.Accepts(settings, false))
            throw new ArgumentException($"{SettingTable.Spec(check[0].Field).Name} is {check[0].Value}; accepted: {check[0].Minimum} to {check[0].Maximum}: {check[0].Reason}.", nameof(values));
    }
}
