using LubeController.Core;
using LubeController.Files.SettingsFiles;

namespace LubeController.Analysis.Wiring;

/// <summary>Which alarms some settings leave possible: one whose sensor is not fitted cannot rise.</summary>
internal static class AlarmsInReach
{
    public static bool CanRise(AlarmId id, ControlSettings settings)
    {
        Settings values = settings.Values;
        return id switch
        {
            AlarmId.DividerStalled or AlarmId.CycleSwitchFault or AlarmId.PulseWhileIdle or AlarmId.PulseTooFast => values[SettingField.SwitchCount] > 0,
            AlarmId.LinePressureMissing or AlarmId.LineOverpressure => HasPressure(values),
            AlarmId.LineNotVented => values.DoseMode == DoseMode.Pressure,
            AlarmId.ReservoirEmpty => values.Is(SettingField.LevelEmptyFitted),
            AlarmId.ReservoirLow => values.Is(SettingField.LevelLowFitted),
            AlarmId.ShaftSignalLost => values.Is(SettingField.ShaftFitted),
            AlarmId.RuleFault => settings.Rule != null,
            AlarmId.PumpOverload => values.Is(SettingField.OverloadFitted) || values.Is(SettingField.PumpRevolutionsFitted),
            AlarmId.LubricantCold => values.Is(SettingField.ColdJudged),
            AlarmId.SupplyLow => values.Is(SettingField.SupplyMeasured),
            AlarmId.RestartUnexpected => values[SettingField.RestartsMost] > 0,
            AlarmId.SensorsDisagree => values[SettingField.DividerCycleMm3] > 0 || values.Is(SettingField.PulsesShowPressure)
                || (values.Is(SettingField.ShaftFitted) && values[SettingField.RunDownMs] > 0),
            AlarmId.PressureSignalLost => values.Is(SettingField.PressureTransmitterFitted) && values[SettingField.PressureSpanMbar] > 0,
            _ => true,
        };
    }

    /// <summary>Whether sensors that disagree about the pressure leave its limit unguarded.</summary>
    public static bool LosesProtection(ControlSettings settings) =>
        settings.Values.Is(SettingField.PulsesShowPressure) && settings.Values.Is(SettingField.PressureTransmitterFitted);

    private static bool HasPressure(Settings values) =>
        values.Is(SettingField.PressureTransmitterFitted) || values.PressureSwitchUse != PressureSwitchUse.Nothing;
}
