using CsCheck;
using LubeController.Core;

namespace LubeController.Tests.Draws;

/// <summary>
/// Within which bounds a setting is drawn: the one table of them. Times are short and seldom a multiple of the tick, so that many
/// ends of times meet in a run. A brief run of a few hundred scans takes the second figure where there are two, and the preset
/// where a setting is drawn in long runs alone.
/// </summary>
/// <param name="brief">Whether for brief runs.</param>
internal sealed class SettingBounds(bool brief)
{
    public Gen<int> Of(int field) => field switch
    {
        SettingField.SwitchCount => brief
            ? Gen.Frequency((5, Gen.Const(1)), (4, Gen.Const(2)), (2, Gen.Const(3)), (1, Gen.Const(0)))
            : Gen.Frequency((4, Gen.Const(1)), (3, Gen.Int[2, 3]), (1, Gen.Const(0))),
        SettingField.DoseEndingSwitch => Gen.Int[1, Either(2, 3)],
        SettingField.EdgesPerCycle => Gen.Int[1, 2],
        SettingField.DoseMode => Gen.Frequency((8, Gen.Const(0)), (2, Gen.Const(1)), (4, Gen.Const(2))),
        SettingField.DoseEdges => Gen.Int[1, 4],
        SettingField.DoseRunMs => Gen.Int[1_000, Either(4_000, 3_000)],
        SettingField.DoseLimitMs => brief ? Gen.Frequency((2, Gen.Int[3_001, 3_300]), (1, Gen.Int[3_301, 9_000])) : Gen.Int[4_001, 20_000],
        SettingField.FirstPulseAllowanceMs => Gen.Int[0, Either(1_500, 900)],
        SettingField.RetryPauseMs => Gen.Int[100, Either(1_500, 600)],
        SettingField.MinPulseIntervalMs => Generators.Sometimes(Gen.Int[Either(100, 20), Either(300, 250)]),
        SettingField.RunOnMs => Generators.Sometimes(Gen.Int[Either(100, 50), Either(1_500, 900)]),
        SettingField.ReadyDelayMs => Generators.Sometimes(Gen.Int[1, Either(400, 300)]),
        SettingField.ChatterChanges => Generators.Sometimes(Gen.Int[Either(3, 4), Either(8, 7)]),
        SettingField.ChatterWindowMs => brief ? Multiple(10, 40, of: 10) : Gen.Int[100, 1_500],
        SettingField.WitnessPulses => Generators.Sometimes(Gen.Int[3, 4]),
        SettingField.RestMode => Gen.Int[0, Either((int)RestMode.Rule, (int)RestMode.Either)],
        SettingField.RestMs or SettingField.RestFallbackMs => Gen.Int[1_000, Either(6_000, 3_000)],
        SettingField.RestRevolutions => Gen.Int[1, Either(60, 40)],
        SettingField.RestOnlyWhileRunning => Gen.Int[0, 1],
        SettingField.RuleLongestRestMs => InLongRuns(field, Gen.Int[2_000, 8_000]),
        SettingField.RestartDelayMs => Gen.Int[1_000, Either(2_000, 1_500)],
        SettingField.NewTryDelayMs => Generators.Sometimes(Gen.Int[Either(500, 300), Either(3_000, 1_500)]),
        SettingField.OverdueMs => Gen.Int[Either(8_001, 3_001), Either(20_000, 9_000)],
        SettingField.PrimeLimitMs => Gen.Int[1_000, Either(3_000, 1_500)],
        SettingField.ShaftFitted => Gen.Int[0, 1],
        SettingField.ShaftPulsesPerRevolution => Gen.Int[1, 3],
        SettingField.ShaftLostMs or SettingField.ShaftStandstillMs => Gen.Int[100, Either(2_000, 1_000)],
        SettingField.RunDownMs => Generators.Sometimes(brief ? Multiple(1, 80, of: 10) : Gen.Int[2_001, 4_000]),
        SettingField.LevelLowFitted or SettingField.LevelEmptyFitted => Gen.Int[0, 1],
        SettingField.LevelLowInverted or SettingField.LevelEmptyInverted or SettingField.OverloadInverted or SettingField.PressureSwitchInverted => Generators.Seldom(1),
        SettingField.LevelDebounceMs => Generators.Sometimes(Gen.Int[1, Either(600, 300)]),
        SettingField.PressureSwitchUse => Gen.Int[0, 2],
        SettingField.PressureDebounceMs or SettingField.OverloadDebounceMs => Generators.Sometimes(Gen.Int[1, Either(100, 60)]),
        SettingField.PressureTransmitterFitted => Gen.Int[0, 1],
        SettingField.PressureReachedMbar => Gen.Const(5_000),
        SettingField.PressureLimitMbar => Gen.Const(9_000),
        SettingField.PressureMissingMs => Generators.Sometimes(Gen.Int[Either(500, 300), Either(3_000, 1_500)]),
        SettingField.PressureVentedMbar => brief ? Gen.Const(1_000) : Gen.Int[0, 4_999],
        SettingField.PressureCycles => Gen.Int[1, Either(3, 2)],
        SettingField.PressureSpanMbar => Generators.Sometimes(Gen.Const(Either(9_000, 12_000))),
        SettingField.ButtonDebounceMs => Generators.Sometimes(Gen.Int[1, 30]),
        SettingField.HoldMs => Gen.Int[100, Either(700, 400)],
        SettingField.VentMs => Gen.Int[100, Either(1_500, 600)],
        SettingField.VentLimitMs => Gen.Int[Either(1_601, 700), Either(4_000, 1_500)],
        SettingField.VentValveNormallyOpen => Gen.Int[0, 1],
        SettingField.OverloadFitted or SettingField.SupplyMeasured or SettingField.ColdJudged => Gen.Int[0, 1],
        SettingField.PumpRevolutionsFitted => brief ? Generators.Seldom(1) : Gen.Int[0, 1],
        SettingField.RevolutionMissingMs => Gen.Int[300, Either(2_000, 1_500)],
        SettingField.SupplyLimitMv => brief ? Gen.Const(19_000) : Gen.Int[17_000, 22_000],
        SettingField.SupplyHysteresisMv => Generators.Sometimes(brief ? Gen.Const(1_000) : Gen.Int[1, 2_000]),
        SettingField.ColdLimitDeciC => brief ? Gen.Const(0) : Gen.Int[-100, 300],
        SettingField.ColdHysteresisDeciC => Generators.Sometimes(brief ? Gen.Const(20) : Gen.Int[1, 200]),
        SettingField.OutputTestMs => Gen.Int[1_000, Either(4_000, 1_500)],
        SettingField.RestartsMost => Generators.Sometimes(Gen.Int[1, 3]),
        SettingField.RestartWindowMs => brief ? Multiple(10, 45, of: 100) : Gen.Int[1_000, 9_000],
        SettingField.SaveIntervalMs => brief ? Multiple(16, 20, of: 100) : Preset(field),
        SettingField.ShelveLongestMs => brief ? Gen.Const(2_000) : Gen.Int[1_000, 5_000],
        SettingField.ScanLimitMs => InLongRuns(field, Gen.Const(200)),
        SettingField.PulsesShowPressure or SettingField.DividerCycleMm3 => InLongRuns(field, Gen.Int[0, 1]),
        SettingField.PressurePulses or SettingField.VolumeWindow => InLongRuns(field, Gen.Int[1, 3]),
        SettingField.PumpRevolutionMm3 or SettingField.PumpFlowMm3PerMinute => InLongRuns(field, Gen.Int[1, 200]),
        SettingField.VolumeTolerancePercent => InLongRuns(field, Gen.Int[5, 95]),
        < SettingField.Switches => Preset(field),
        < SettingField.AlarmDelays => OfSwitch((field - SettingField.Switches) % SettingField.PerSwitch),
        _ => Delay(field),
    };

    private Gen<int> OfSwitch(int field) => field switch
    {
        SettingField.SwitchDebounceMs => Generators.Sometimes(Gen.Int[1, Either(50, 30)]),
        SettingField.SwitchTimeoutMs => Gen.Int[Either(301, 251), Either(4_000, 1_500)],
        SettingField.SwitchRetries => Gen.Int[0, 2],
        _ => Generators.Seldom(1),
    };

    private Gen<int> Delay(int field) => SettingTable.Spec(field).Maximum == 0 ? Gen.Const(0)
        : brief ? Gen.Frequency((3, Gen.Const(0)), (1, Gen.Int[1, 400]))
        : Generators.Sometimes(Gen.Int[1, 1_500]);

    private int Either(int inLongRuns, int inBriefRuns) => brief ? inBriefRuns : inLongRuns;

    private Gen<int> InLongRuns(int field, Gen<int> values) => brief ? Preset(field) : values;

    private static Gen<int> Multiple(int least, int most, int of) => Gen.Int[least, most].Select(times => times * of);

    private static Gen<int> Preset(int field) => Gen.Const(SettingTable.Spec(field).Preset);
}
