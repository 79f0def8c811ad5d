using System;

namespace LubeController.Core.Tests;

/// <summary>Settings short enough for tests that scan every ten milliseconds; invented for the tests.</summary>
internal static class TestSettings
{
    public const int TimeoutMs = 20_000;
    public const int AllowanceMs = 5_000;
    public const int RestMs = 60_000;
    public const int RestartMs = 10_000;
    public const int PauseMs = 3_000;
    public const int RunOnMs = 5_000;
    public const int ReadyMs = 300;
    public const int DebounceMs = 50;
    public const int LimitMs = 200_000;
    public const int PrimeMs = 30_000;
    public const int OverdueMs = 600_000;
    public const int LevelMs = 500;

    public const int HoldMs = 2_000;
    public const int VentMs = 6_000;
    public const int VentLimitMs = 15_000;
    public const int MissingMs = 8_000;
    public const int ReachedMbar = 10_000;
    public const int VentedMbar = 4_000;

    public static Settings Make(Action<Settings>? change = null)
    {
        var settings = new Settings();
        settings[SettingField.FirstPulseAllowanceMs] = AllowanceMs;
        settings[SettingField.RetryPauseMs] = PauseMs;
        settings[SettingField.RunOnMs] = RunOnMs;
        settings[SettingField.ReadyDelayMs] = ReadyMs;
        settings[SettingField.RestMs] = RestMs;
        settings[SettingField.RestartDelayMs] = RestartMs;
        settings[SettingField.DoseLimitMs] = LimitMs;
        settings[SettingField.PrimeLimitMs] = PrimeMs;
        settings[SettingField.OverdueMs] = OverdueMs;
        settings[SettingField.LevelDebounceMs] = LevelMs;
        settings[SettingField.RestartsMost] = 0;
        settings[SettingField.LevelLowFitted] = 1;
        settings[SettingField.LevelEmptyFitted] = 1;
        for (int index = 0; index < Inputs.MaxCycleSwitches; index++)
        {
            settings[SettingField.OfSwitch(index, SettingField.SwitchDebounceMs)] = DebounceMs;
            settings[SettingField.OfSwitch(index, SettingField.SwitchTimeoutMs)] = TimeoutMs;
        }

        change?.Invoke(settings);
        return settings;
    }

    /// <summary>Doses by pressure with a transmitter, no cycle switch.</summary>
    public static void ByPressure(Settings settings)
    {
        settings[SettingField.DoseMode] = (int)DoseMode.Pressure;
        settings[SettingField.SwitchCount] = 0;
        settings[SettingField.PressureTransmitterFitted] = 1;
        settings[SettingField.PressureReachedMbar] = ReachedMbar;
        settings[SettingField.PressureVentedMbar] = VentedMbar;
        settings[SettingField.PressureMissingMs] = MissingMs;
        settings[SettingField.HoldMs] = HoldMs;
        settings[SettingField.VentMs] = VentMs;
        settings[SettingField.VentLimitMs] = VentLimitMs;
    }

    public static void SetTimeout(this Settings settings, int index, int timeoutMs) =>
        settings[SettingField.OfSwitch(index, SettingField.SwitchTimeoutMs)] = timeoutMs;

    public static void SetRetries(this Settings settings, int index, int retries) =>
        settings[SettingField.OfSwitch(index, SettingField.SwitchRetries)] = retries;
}
