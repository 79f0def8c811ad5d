namespace LubeController.Core;

/// <summary>
/// Index of every setting. From <see cref="Switches"/> on come <see cref="PerSwitch"/> fields for each cycle switch, and
/// from <see cref="AlarmDelays"/> on a delay on and a delay off for each alarm.
/// </summary>
public static class SettingField
{
#pragma warning disable CS1591 // The table in SettingTable says what each one means.
    public const int SwitchCount = 0;
    public const int DoseEndingSwitch = 1;
    public const int EdgesPerCycle = 2;
    public const int DoseMode = 3;
    public const int DoseEdges = 4;
    public const int DoseRunMs = 5;
    public const int DoseLimitMs = 6;
    public const int FirstPulseAllowanceMs = 7;
    public const int RetryPauseMs = 8;
    public const int MinPulseIntervalMs = 9;
    public const int RunOnMs = 10;
    public const int ReadyDelayMs = 11;
    public const int ChatterChanges = 12;
    public const int ChatterWindowMs = 13;
    public const int WitnessPulses = 14;
    public const int RestMode = 15;
    public const int RestMs = 16;
    public const int RestRevolutions = 17;
    public const int RestFallbackMs = 18;
    public const int RestOnlyWhileRunning = 19;
    public const int RuleLongestRestMs = 20;
    public const int RestartDelayMs = 21;
    public const int NewTryDelayMs = 22;
    public const int OverdueMs = 23;
    public const int PrimeLimitMs = 24;
    public const int ShaftFitted = 25;
    public const int ShaftPulsesPerRevolution = 26;
    public const int ShaftMaxPerMinute = 27;
    public const int ShaftMinPulseWidthUs = 28;
    public const int ShaftLostMs = 29;
    public const int ShaftStandstillMs = 30;
    public const int LevelLowFitted = 31;
    public const int LevelLowInverted = 32;
    public const int LevelEmptyFitted = 33;
    public const int LevelEmptyInverted = 34;
    public const int LevelDebounceMs = 35;
    public const int PressureSwitchUse = 36;
    public const int PressureSwitchInverted = 37;
    public const int PressureDebounceMs = 38;
    public const int PressureTransmitterFitted = 39;
    public const int PressureReachedMbar = 40;
    public const int PressureLimitMbar = 41;
    public const int PressureMissingMs = 42;
    public const int ButtonDebounceMs = 43;
    public const int SaveIntervalMs = 44;
    public const int HoldMs = 45;
    public const int VentMs = 46;
    public const int VentLimitMs = 47;
    public const int PressureVentedMbar = 48;
    public const int PressureCycles = 49;
    public const int VentValveNormallyOpen = 50;

    public const int OverloadFitted = 51;
    public const int OverloadInverted = 52;
    public const int OverloadDebounceMs = 53;
    public const int PumpRevolutionsFitted = 54;
    public const int RevolutionMissingMs = 55;
    public const int SupplyMeasured = 56;
    public const int SupplyLimitMv = 57;
    public const int SupplyHysteresisMv = 58;
    public const int ColdJudged = 59;
    public const int ColdLimitDeciC = 60;
    public const int ColdHysteresisDeciC = 61;
    public const int OutputTestMs = 62;
    public const int RestartsMost = 63;
    public const int RestartWindowMs = 64;
    public const int ScanLimitMs = 65;

    public const int ShelveLongestMs = 66;

    public const int RunDownMs = 67;
    public const int PulsesShowPressure = 68;
    public const int PressurePulses = 69;
    public const int PressureSpanMbar = 70;
    public const int DividerCycleMm3 = 71;
    public const int PumpRevolutionMm3 = 72;
    public const int PumpFlowMm3PerMinute = 73;
    public const int VolumeTolerancePercent = 74;
    public const int VolumeWindow = 75;

    public const int Switches = 76;
    public const int PerSwitch = 4;
    public const int SwitchDebounceMs = 0;
    public const int SwitchTimeoutMs = 1;
    public const int SwitchRetries = 2;
    public const int SwitchInverted = 3;

    public const int AlarmDelays = Switches + (PerSwitch * Inputs.MaxCycleSwitches);
    public const int Count = AlarmDelays + (2 * AlarmTable.Count);
#pragma warning restore CS1591

    /// <summary>Field of a cycle switch, 0 to <see cref="Inputs.MaxCycleSwitches"/> - 1.</summary>
    public static int OfSwitch(int index, int field) => Switches + (PerSwitch * index) + field;

    /// <summary>Field of the delay before an alarm is raised.</summary>
    public static int DelayOn(AlarmId id) => AlarmDelays + (2 * (int)id);

    /// <summary>Field of the delay before an alarm's condition counts as ended.</summary>
    public static int DelayOff(AlarmId id) => AlarmDelays + (2 * (int)id) + 1;
}
