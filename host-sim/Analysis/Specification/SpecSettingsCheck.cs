using System;
using System.Collections.Generic;

namespace LubeController.Analysis.Specification;

/// <summary>Refuses settings that the rules cannot be read for, naming place, value and what would be accepted.</summary>
internal static class SpecSettingsCheck
{
    private static readonly AlarmId[] WithoutDelayOn = [AlarmId.DividerStalled, AlarmId.DoseTooLong];

    internal static void Check(SpecSettings s)
    {
        CheckRest(s);
        CheckDose(s);
        CheckPressure(s);
        CheckDebounce(s);
        CheckSwitches(s);
        CheckAlarms(s);
        if (s.RestMode != RestMode.Time && !s.HasShaft)
            throw Refused(nameof(s.RestMode), s.RestMode, "rest by revolutions needs a shaft input: set HasShaft");
        if (s.DoseMode == DoseMode.Pressure && s.OverpressurePa is null && s.PressureSwitchUse != PressureSwitchUse.Reached)
            throw Refused(nameof(s.DoseMode), s.DoseMode, "a dose by pressure needs a transmitter, or a switch that shows that pressure is reached");
    }

    private static void CheckRest(SpecSettings s)
    {
        AtLeast(1, s.RestMs, nameof(s.RestMs));
        AtLeast(1, s.RestShaftPulses, nameof(s.RestShaftPulses));
        AtLeast(1, s.FallbackMs, nameof(s.FallbackMs));
        AtLeast(0, s.RestartDelayMs, nameof(s.RestartDelayMs));
        AtLeast(0, s.NewTryDelayMs, nameof(s.NewTryDelayMs));
        AtLeast(1, s.ShaftTimeoutMs, nameof(s.ShaftTimeoutMs));
        AtLeast(1, s.ShaftStandstillMs, nameof(s.ShaftStandstillMs));
        AtLeast(0, s.RunDownMs, nameof(s.RunDownMs));
        AtLeast(1, s.PrimeLimitMs, nameof(s.PrimeLimitMs));
        AtLeast(1, s.OutputTestMs, nameof(s.OutputTestMs));
        AtLeast(1, s.OverdueMs, nameof(s.OverdueMs));
        AtLeast(1, s.SaveIntervalMs, nameof(s.SaveIntervalMs));
        AtLeast(0, s.RestartsMost, nameof(s.RestartsMost));
        AtLeast(1, s.RestartWindowMs, nameof(s.RestartWindowMs));
    }

    private static void CheckDose(SpecSettings s)
    {
        AtLeast(1, s.DosePulses, nameof(s.DosePulses));
        AtLeast(1, s.DoseRunMs, nameof(s.DoseRunMs));
        AtLeast(1, s.DoseLimitMs, nameof(s.DoseLimitMs));
        AtLeast(0, s.FirstPulseAllowanceMs, nameof(s.FirstPulseAllowanceMs));
        AtLeast(1, s.RetryPauseMs, nameof(s.RetryPauseMs));
        AtLeast(0, s.ShortestPulseIntervalMs, nameof(s.ShortestPulseIntervalMs));
        AtLeast(0, s.WitnessPulses, nameof(s.WitnessPulses));
        AtLeast(0, s.ChatterChanges, nameof(s.ChatterChanges));
        AtLeast(1, s.ChatterWindowMs, nameof(s.ChatterWindowMs));
        AtLeast(0, s.RunOnMs, nameof(s.RunOnMs));
    }

    private static void CheckPressure(SpecSettings s)
    {
        AtLeast(0, s.PressureMissingMs, nameof(s.PressureMissingMs));
        AtLeast(1, s.HoldMs, nameof(s.HoldMs));
        AtLeast(1, s.VentMs, nameof(s.VentMs));
        AtLeast(s.VentMs + 1, s.VentLimitMs, nameof(s.VentLimitMs));
        AtLeast(1, s.PressureCycles, nameof(s.PressureCycles));
    }

    private static void CheckDebounce(SpecSettings s)
    {
        AtLeast(0, s.PressureDebounceMs, nameof(s.PressureDebounceMs));
        AtLeast(0, s.ReadyDelayMs, nameof(s.ReadyDelayMs));
        AtLeast(0, s.SwitchDebounceMs, nameof(s.SwitchDebounceMs));
        AtLeast(0, s.LevelDebounceMs, nameof(s.LevelDebounceMs));
        AtLeast(0, s.OverloadDebounceMs, nameof(s.OverloadDebounceMs));
        AtLeast(0, s.StopDebounceMs, nameof(s.StopDebounceMs));
        AtLeast(0, s.MachineRunningDebounceMs, nameof(s.MachineRunningDebounceMs));
        AtLeast(0, s.ButtonDebounceMs, nameof(s.ButtonDebounceMs));
    }

    private static void CheckSwitches(SpecSettings s)
    {
        bool monitored = s.DoseMode == DoseMode.Cycles;
        if (s.Switches.Count > 4 || (monitored && s.Switches.Count == 0))
            throw Refused(nameof(s.Switches), s.Switches.Count, $"{(monitored ? 1 : 0)} to 4 switches");
        if (monitored && (s.DoseEndingSwitch < 0 || s.DoseEndingSwitch >= s.Switches.Count))
            throw Refused(nameof(s.DoseEndingSwitch), s.DoseEndingSwitch, $"0 to {s.Switches.Count - 1}");
        foreach (SwitchSettings one in s.Switches)
        {
            AtLeast(1, one.TimeoutMs, nameof(one.TimeoutMs));
            AtLeast(0, one.Retries, nameof(one.Retries));
        }
    }

    private static void CheckAlarms(SpecSettings s)
    {
        foreach (KeyValuePair<AlarmId, AlarmDelays> delays in s.Delays)
        {
            AtLeast(0, delays.Value.OnMs, $"delay on of {AlarmTable.RuleOf(delays.Key).Name}");
            AtLeast(0, delays.Value.OffMs, $"delay off of {AlarmTable.RuleOf(delays.Key).Name}");
        }

        foreach (AlarmId alarm in WithoutDelayOn)
        {
            if (s.Delays.TryGetValue(alarm, out AlarmDelays delays) && delays.OnMs != 0)
                throw Refused($"delay on of {AlarmTable.RuleOf(alarm).Name}", delays.OnMs, "0, as its timeout is its delay");
        }

        foreach (Consequence consequence in s.Consequences)
        {
            if (consequence.Alarm == AlarmId.LubricationOverdue)
                throw Refused(nameof(s.Consequences), consequence, "any alarm but lubrication-overdue, which is never suppressed");
            if (consequence.Alarm == consequence.Cause)
                throw Refused(nameof(s.Consequences), consequence, "another alarm as the cause");
        }
    }

    private static void AtLeast(int least, int value, string name)
    {
        if (value < least)
            throw Refused(name, value, $"{least} or more");
    }

    private static ArgumentException Refused(string name, object value, string accepted) =>
        new($"{name} is {value}; accepted: {accepted}.");
}
