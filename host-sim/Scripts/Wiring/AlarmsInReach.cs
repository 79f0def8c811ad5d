using LubeController.Core;
using LubeController.Scripts.SettingsFiles;

namespace LubeController.Scripts.Wiring;

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
            _ => true,
        };
    }

    private static bool HasPressure(Settings values) =>
        values.Is(SettingField.PressureTransmitterFitted) || values.PressureSwitchUse != PressureSwitchUse.Nothing;
}
