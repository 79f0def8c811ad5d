using System;
using System.Collections.Generic;
using LubeController.Core;
using LubeController.Emulator;

namespace LubeController.Analysis.Exploration;

/// <summary>An input that raises an alarm by lasting.</summary>
/// <param name="Alarm">The alarm.</param>
/// <param name="Lasts">Whether the inputs of a scan go on with it.</param>
/// <param name="BoundMs">Time within which the alarm is raised, milliseconds.</param>
internal sealed record LastingCause(AlarmId Alarm, Func<Inputs, bool> Lasts, int BoundMs)
{
    /// <summary>Those that an exploration can bring about.</summary>
    public static IEnumerable<LastingCause> All(CoreSetup setup) =>
    [
        .. Contacts(setup),
        .. Pressures(setup),
        .. Others(setup),
    ];

    private static IEnumerable<LastingCause> Contacts(CoreSetup setup)
    {
        Settings settings = setup.Settings;
        int debounceMs = settings[SettingField.LevelDebounceMs];
        if (setup.Alphabet.Has(ControllerInputs.LevelEmpty) && settings.Is(SettingField.LevelEmptyFitted))
            yield return new(AlarmId.ReservoirEmpty, inputs => inputs.LevelEmpty != settings.Is(SettingField.LevelEmptyInverted), Bound(setup, AlarmId.ReservoirEmpty, debounceMs));
        if (setup.Alphabet.Has(ControllerInputs.LevelLow) && settings.Is(SettingField.LevelLowFitted))
            yield return new(AlarmId.ReservoirLow, inputs => inputs.LevelLow != settings.Is(SettingField.LevelLowInverted), Bound(setup, AlarmId.ReservoirLow, debounceMs));
        if (setup.Alphabet.Has(ControllerInputs.PumpOverload) && settings.Is(SettingField.OverloadFitted))
            yield return new(AlarmId.PumpOverload, inputs => inputs.PumpOverload != settings.Is(SettingField.OverloadInverted), Bound(setup, AlarmId.PumpOverload, settings[SettingField.OverloadDebounceMs]));
    }

    private static IEnumerable<LastingCause> Pressures(CoreSetup setup)
    {
        Settings settings = setup.Settings;
        if (!setup.Alphabet.Has(ControllerInputs.Pressure) || !settings.Is(SettingField.PressureTransmitterFitted))
            yield break;
        yield return new(AlarmId.LineOverpressure, inputs => inputs.PressureMbar > settings[SettingField.PressureLimitMbar], Bound(setup, AlarmId.LineOverpressure, 0));
        int span = settings[SettingField.PressureSpanMbar];
        if (span > 0)
            yield return new(AlarmId.PressureSignalLost, inputs => inputs.PressureMbar < -(span / 40) || inputs.PressureMbar > span + (span / 16), Bound(setup, AlarmId.PressureSignalLost, 0));
    }

    private static IEnumerable<LastingCause> Others(CoreSetup setup)
    {
        Settings settings = setup.Settings;
        if (setup.Alphabet.Has(ControllerInputs.ScanLate))
            yield return new(AlarmId.ScanOverrun, inputs => inputs.ScanLate, Bound(setup, AlarmId.ScanOverrun, 0));
        if (setup.Alphabet.Has(ControllerInputs.Supply) && settings.Is(SettingField.SupplyMeasured))
            yield return new(AlarmId.SupplyLow, inputs => inputs.SupplyMv < settings[SettingField.SupplyLimitMv], Bound(setup, AlarmId.SupplyLow, 0));
        if (setup.Alphabet.Has(ControllerInputs.Temperature) && settings.Is(SettingField.ColdJudged))
            yield return new(AlarmId.LubricantCold, inputs => inputs.TemperatureDeciC < settings[SettingField.ColdLimitDeciC], Bound(setup, AlarmId.LubricantCold, 0));
        if (setup.Alphabet.Has(ControllerInputs.ShaftPulses) && settings.Is(SettingField.ShaftFitted))
            yield return new(AlarmId.ShaftSignalLost, inputs => inputs.MachineRunning && inputs.ShaftPulses == 0, Bound(setup, AlarmId.ShaftSignalLost, settings[SettingField.ShaftLostMs]));
    }

    private static int Bound(CoreSetup setup, AlarmId alarm, int beforeMs) => beforeMs + setup.Settings[SettingField.DelayOn(alarm)] + (2 * setup.StepMs);
}
