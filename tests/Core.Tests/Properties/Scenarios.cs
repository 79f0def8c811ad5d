using System.Collections.Generic;
using System.Linq;
using CsCheck;

namespace LubeController.Core.Tests;

/// <summary>
/// Generators of random runs, from small to large. Times are short and seldom a multiple of the tick, so that many ends
/// of times meet in a run. Each run draws its whole configuration, some sensors and alarms off altogether.
/// </summary>
internal static class Scenarios
{
    private static readonly Gen<bool> Flag = Gen.Bool;

    private static readonly Gen<Step> Step =
        from deed in Gen.Frequency(
            (6, Gen.Const(Deed.Wait)),
            (6, Gen.Const(Deed.ToggleSwitch)),
            (3, Gen.Int[(int)Deed.Start, (int)Deed.Prime].Select(deed => (Deed)deed)),
            (3, Gen.Const(Deed.Reset)),
            (2, Gen.Const(Deed.OutputTest)),
            (6, Gen.Int[(int)Deed.Stop, (int)Deed.CutPower].Select(deed => (Deed)deed)))
        from argument in Gen.Int[0, 11]
        from ticks in Gen.Frequency((6, Gen.Int[1, 12]), (4, Gen.Int[13, 150]), (1, Gen.Int[151, 900]))
        select new Step(deed, argument, ticks);

    /// <summary>A run of some seconds to minutes.</summary>
    public static readonly Gen<Scenario> Any =
        from settings in Values()
        from strokes in Gen.Int[7, 60].Array[Inputs.MaxCycleSwitches]
        from steps in Step.Array[5, 50]
        select new Scenario(Repaired(settings), strokes, steps);

    private static Gen<int> Bounds(int field) => field switch
    {
        SettingField.SwitchCount => Gen.Frequency((4, Gen.Const(1)), (3, Gen.Int[2, 3]), (1, Gen.Const(0))),
        SettingField.DoseEndingSwitch => Gen.Int[1, 2],
        SettingField.EdgesPerCycle => Gen.Int[1, 2],
        SettingField.DoseMode => Gen.Frequency((8, Gen.Const(0)), (2, Gen.Const(1)), (4, Gen.Const(2))),
        SettingField.DoseEdges => Gen.Int[1, 4],
        SettingField.DoseRunMs => Gen.Int[1_000, 4_000],
        SettingField.DoseLimitMs => Gen.Int[4_001, 20_000],
        SettingField.FirstPulseAllowanceMs => Gen.Int[0, 1_500],
        SettingField.RetryPauseMs => Gen.Int[100, 1_500],
        SettingField.MinPulseIntervalMs => Some(Gen.Int[100, 300]),
        SettingField.RunOnMs => Some(Gen.Int[100, 1_500]),
        SettingField.ReadyDelayMs => Some(Gen.Int[1, 400]),
        SettingField.ChatterChanges => Some(Gen.Int[3, 8]),
        SettingField.ChatterWindowMs => Gen.Int[100, 1_500],
        SettingField.WitnessPulses => Some(Gen.Int[3, 4]),
        SettingField.RestMode => Gen.Int[0, 3],
        SettingField.RestMs => Gen.Int[1_000, 6_000],
        SettingField.RestRevolutions => Gen.Int[1, 60],
        SettingField.RestFallbackMs => Gen.Int[1_000, 6_000],
        SettingField.RestOnlyWhileRunning => Gen.Int[0, 1],
        SettingField.RuleLongestRestMs => Gen.Int[2_000, 8_000],
        SettingField.RestartDelayMs => Gen.Int[1_000, 2_000],
        SettingField.NewTryDelayMs => Some(Gen.Int[500, 3_000]),
        SettingField.OverdueMs => Gen.Int[8_001, 20_000],
        SettingField.PrimeLimitMs => Gen.Int[1_000, 3_000],
        SettingField.ShaftFitted => Gen.Int[0, 1],
        SettingField.ShaftPulsesPerRevolution => Gen.Int[1, 3],
        SettingField.ShaftLostMs => Gen.Int[100, 2_000],
        SettingField.ShaftStandstillMs => Gen.Int[100, 2_000],
        SettingField.LevelDebounceMs => Some(Gen.Int[1, 600]),
        SettingField.LevelLowFitted or SettingField.LevelEmptyFitted => Gen.Int[0, 1],
        SettingField.LevelLowInverted or SettingField.LevelEmptyInverted => Rare(1),
        SettingField.PressureSwitchUse => Gen.Int[0, 2],
        SettingField.PressureSwitchInverted => Rare(1),
        SettingField.PressureDebounceMs => Some(Gen.Int[1, 100]),
        SettingField.PressureTransmitterFitted => Gen.Int[0, 1],
        SettingField.PressureReachedMbar => Gen.Const(5_000),
        SettingField.PressureLimitMbar => Gen.Const(9_000),
        SettingField.PressureMissingMs => Some(Gen.Int[500, 3_000]),
        SettingField.ButtonDebounceMs => Some(Gen.Int[1, 30]),
        SettingField.HoldMs => Gen.Int[100, 700],
        SettingField.VentMs => Gen.Int[100, 1_500],
        SettingField.VentLimitMs => Gen.Int[1_601, 4_000],
        SettingField.PressureVentedMbar => Gen.Int[0, 4_999],
        SettingField.PressureCycles => Gen.Int[1, 3],
        SettingField.VentValveNormallyOpen => Gen.Int[0, 1],
        SettingField.OverloadFitted or SettingField.PumpRevolutionsFitted or SettingField.SupplyMeasured or SettingField.ColdJudged => Gen.Int[0, 1],
        SettingField.OverloadInverted => Rare(1),
        SettingField.OverloadDebounceMs => Some(Gen.Int[1, 100]),
        SettingField.RevolutionMissingMs => Gen.Int[300, 2_000],
        SettingField.SupplyLimitMv => Gen.Int[17_000, 22_000],
        SettingField.SupplyHysteresisMv => Some(Gen.Int[1, 2_000]),
        SettingField.ColdLimitDeciC => Gen.Int[-100, 300],
        SettingField.ColdHysteresisDeciC => Some(Gen.Int[1, 200]),
        SettingField.OutputTestMs => Gen.Int[1_000, 4_000],
        SettingField.RestartsMost => Some(Gen.Int[1, 3]),
        SettingField.RestartWindowMs => Gen.Int[1_000, 9_000],
        SettingField.ShelveLongestMs => Gen.Int[1_000, 5_000],
        SettingField.ScanLimitMs => Gen.Const(200),
        SettingField.RunDownMs => Some(Gen.Int[2_001, 4_000]),
        SettingField.PulsesShowPressure or SettingField.DividerCycleMm3 => Gen.Int[0, 1],
        SettingField.PressurePulses => Gen.Int[1, 3],
        SettingField.PressureSpanMbar => Some(Gen.Const(9_000)),
        SettingField.PumpRevolutionMm3 or SettingField.PumpFlowMm3PerMinute => Gen.Int[1, 200],
        SettingField.VolumeTolerancePercent => Gen.Int[5, 95],
        SettingField.VolumeWindow => Gen.Int[1, 3],
        _ => field < SettingField.AlarmDelays ? OfSwitch((field - SettingField.Switches) % SettingField.PerSwitch) : Delay(field),
    };

    private static Gen<int> OfSwitch(int field) => field switch
    {
        SettingField.SwitchDebounceMs => Some(Gen.Int[1, 50]),
        SettingField.SwitchTimeoutMs => Gen.Int[301, 4_000],
        SettingField.SwitchRetries => Gen.Int[0, 2],
        _ => Rare(1),
    };

    private static Gen<int> Delay(int field) =>
        SettingTable.Spec(field).Maximum == 0 ? Gen.Const(0) : Some(Gen.Int[1, 1_500]);

    private static Gen<int> Some(Gen<int> value) => Flag.SelectMany(on => on ? value : Gen.Const(0));

    private static Gen<int> Rare(int value) => Gen.Frequency((5, Gen.Const(0)), (1, Gen.Const(value)));

    private static Gen<int[]> Values()
    {
        IEnumerable<Gen<int>> fields = Enumerable.Range(0, SettingField.Count)
            .Select(field => field == SettingField.SaveIntervalMs || IsShaftSpeed(field) ? Gen.Const(SettingTable.Spec(field).Preset) : Bounds(field));
        Gen<int[]> values = Gen.Const(System.Array.Empty<int>());
        foreach (Gen<int> field in fields)
            values = values.SelectMany(so => field.Select(value => (int[])[.. so, value]));
        return values;
    }

    private static bool IsShaftSpeed(int field) => field is SettingField.ShaftMaxPerMinute or SettingField.ShaftMinPulseWidthUs;

    /// <summary>Runs of single-line systems with a transmitter alone, whose readings a test can judge by itself.</summary>
    public static readonly Gen<Scenario> ByTransmitter = Any.Select(drawn =>
    {
        int[] settings = (int[])drawn.Settings.Clone();
        settings[SettingField.DoseMode] = (int)DoseMode.Pressure;
        settings[SettingField.PressureTransmitterFitted] = 1;
        settings[SettingField.PressureSwitchUse] = 0;
        return drawn with { Settings = Repaired(settings) };
    });

    /// <summary>Sets right what the settings would be refused for, so that no draw is wasted.</summary>
    private static int[] Repaired(int[] values)
    {
        if (values[SettingField.DoseMode] == (int)DoseMode.Cycles)
        {
            values[SettingField.SwitchCount] = System.Math.Max(1, values[SettingField.SwitchCount]);
            values[SettingField.DoseEndingSwitch] = System.Math.Min(values[SettingField.DoseEndingSwitch], values[SettingField.SwitchCount]);
        }

        if (values[SettingField.DoseMode] == (int)DoseMode.Pressure)
            RepairPressure(values);
        if (values[SettingField.RestMode] is (int)RestMode.Shaft or (int)RestMode.Either)
            values[SettingField.ShaftFitted] = 1;
        if (values[SettingField.PressureTransmitterFitted] == 0 && values[SettingField.PressureSwitchUse] != (int)PressureSwitchUse.Reached)
            values[SettingField.PressureMissingMs] = values[SettingField.PulsesShowPressure] = 0;
        return values;
    }

    private static void RepairPressure(int[] values)
    {
        if (values[SettingField.PressureTransmitterFitted] == 0)
            values[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Reached;
        values[SettingField.PressureMissingMs] = System.Math.Max(500, values[SettingField.PressureMissingMs]);
        int longest = values[SettingField.PressureCycles] * (values[SettingField.PressureMissingMs] + values[SettingField.HoldMs]);
        values[SettingField.DoseLimitMs] = System.Math.Max(longest + 1, values[SettingField.DoseLimitMs]);
    }
}
