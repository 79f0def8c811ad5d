using System;
using System.Collections.Generic;

namespace LubeController.Core.Tests;

/// <summary>How one alarm is brought about and how its condition ends.</summary>
/// <param name="Start">A bench on which the alarm does not stand.</param>
/// <param name="Cause">Raises it.</param>
/// <param name="End">Ends its condition, but not its latch.</param>
/// <param name="Phase">The phase after it was raised.</param>
internal sealed record AlarmCase(Func<CoreBench> Start, Action<CoreBench> Cause, Action<CoreBench> End, Phase Phase)
{
    private static readonly Action<CoreBench> Nothing = _ => { };

    public static readonly IReadOnlyDictionary<AlarmId, AlarmCase> All = new Dictionary<AlarmId, AlarmCase>
    {
        [AlarmId.DividerStalled] = new(
            () => new CoreBench().ToDose(),
            bench => bench.RunUntil(() => bench.Stands(AlarmId.DividerStalled), 60_000),
            Nothing,
            Phase.Failed),
        [AlarmId.DoseTooLong] = new(
            () => new CoreBench(settings => settings[SettingField.DoseLimitMs] = 15_000).ToDose(),
            bench => bench.RunUntil(() => bench.Stands(AlarmId.DoseTooLong), 60_000),
            Nothing,
            Phase.Failed),
        [AlarmId.LinePressureMissing] = new(
            () => new CoreBench(settings =>
            {
                Transmitter(settings);
                settings[SettingField.PressureMissingMs] = 12_000;
            }).ToDose(),
            bench => bench.RunUntil(() => bench.Stands(AlarmId.LinePressureMissing), 60_000),
            Nothing,
            Phase.Failed),
        [AlarmId.LineOverpressure] = new(
            () => new CoreBench(Transmitter).ToRest(),
            bench => Pressure(bench, 250_001),
            bench => Pressure(bench, 250_000),
            Phase.Failed),
        [AlarmId.ReservoirEmpty] = new(
            () => new CoreBench().ToRest(),
            bench => bench.Empty(true),
            bench => bench.Empty(false),
            Phase.Failed),
        [AlarmId.SettingsInvalid] = new(
            () => new CoreBench().ToRest(),
            bench =>
            {
                bench.Core.UseSettings(TestSettings.Make(settings => settings[SettingField.DoseEdges] = 0));
                bench.Run(10);
            },
            bench =>
            {
                bench.Core.UseSettings(bench.Settings);
                bench.Run(10);
            },
            Phase.Failed),
        [AlarmId.CycleSwitchFault] = new(
            () => new CoreBench(settings =>
            {
                settings[SettingField.SwitchCount] = 2;
                settings[SettingField.WitnessPulses] = 0;
            }).ToRest(),
            bench => bench.Chatter(1),
            bench => bench.Run(4_000),
            Phase.Rest),
        [AlarmId.PulseWhileIdle] = new(
            () => new CoreBench(settings => settings[SettingField.RestMs] = 400_000).ToRest().Run(6_000),
            bench => bench.Run(6_000).Pulse(),
            bench => bench.RunUntil(() => !bench.Core.Alarms.IsActive(AlarmId.PulseWhileIdle), 60_000),
            Phase.Rest),
        [AlarmId.LubricationOverdue] = new(
            () => new CoreBench(settings => settings[SettingField.OverdueMs] = TestSettings.RestMs + 1_000).ToRest(),
            bench => bench.RunUntil(() => bench.Stands(AlarmId.LubricationOverdue), 70_000),
            bench => bench.Pulses(3),
            Phase.Dose),
        [AlarmId.ShaftSignalLost] = new(
            () => new CoreBench(settings => settings[SettingField.ShaftFitted] = 1) { ShaftPulsesPerTick = 1 }.ToRest(),
            bench =>
            {
                bench.ShaftPulsesPerTick = 0;
                bench.Run(30_000);
            },
            bench =>
            {
                bench.ShaftPulsesPerTick = 1;
                bench.Run(10);
            },
            Phase.Rest),
        [AlarmId.RuleFault] = new(
            () => RuleBench(),
            bench =>
            {
                bench.Inputs.TemperatureDeciC = 950;
                bench.Run(10);
            },
            bench =>
            {
                bench.Inputs.TemperatureDeciC = 200;
                bench.Run(10);
            },
            Phase.Rest),
        [AlarmId.PulseTooFast] = new(
            () => new CoreBench(settings =>
            {
                settings[SettingField.MinPulseIntervalMs] = 500;
                settings[SettingField.DoseEdges] = 100;
                settings.SetTimeout(0, 120_000);
            }).ToRunningDose(),
            bench => bench.Pulses(2),
            bench => bench.RunUntil(() => !bench.Core.Alarms.IsActive(AlarmId.PulseTooFast), 60_000),
            Phase.Dose),
        [AlarmId.ReservoirLow] = new(
            () => new CoreBench().ToRest(),
            bench => Low(bench, true),
            bench => Low(bench, false),
            Phase.Rest),
        [AlarmId.LineNotVented] = new(
            () => new CoreBench(TestSettings.ByPressure).ToRest().Press(Button.DoseNow),
            bench => bench.Pressure(12_000).RunUntil(() => bench.Stands(AlarmId.LineNotVented), 60_000),
            bench => bench.Pressure(0).Run(10),
            Phase.Failed),
        [AlarmId.PumpOverload] = new(
            () => new CoreBench(settings => settings[SettingField.OverloadFitted] = 1).ToRest(),
            bench => Overload(bench, true),
            bench => Overload(bench, false),
            Phase.Failed),
        [AlarmId.LogicFault] = new(
            () => new CoreBench().ToRest(),
            bench => bench.CutPower(core => core.NoteLogicFault()).Run(100),
            Over(AlarmId.LogicFault),
            Phase.Failed),
        [AlarmId.ScanOverrun] = new(
            () => new CoreBench(LongRest).ToRest(),
            bench =>
            {
                Late(bench, true);
                Late(bench, false);
            },
            Over(AlarmId.ScanOverrun),
            Phase.Rest),
        [AlarmId.LubricantCold] = new(
            () => new CoreBench(settings => settings[SettingField.ColdJudged] = 1).ToRest(),
            bench => Temperature(bench, -51),
            bench => Temperature(bench, -30),
            Phase.Rest),
        [AlarmId.SupplyLow] = new(
            () => new CoreBench(settings => settings[SettingField.SupplyMeasured] = 1).ToRest(),
            bench => Supply(bench, 19_199),
            bench => Supply(bench, 20_000),
            Phase.Rest),
        [AlarmId.StorageCorrupt] = new(
            () => new CoreBench(LongRest).ToRest(),
            bench => bench.CutPower(core => core.NoteStorageCorrupt()).Run(100),
            Over(AlarmId.StorageCorrupt),
            Phase.Rest),
        [AlarmId.RestartUnexpected] = new(
            () => new CoreBench(settings =>
            {
                LongRest(settings);
                settings[SettingField.RestartsMost] = 5;
                settings[SettingField.SaveIntervalMs] = 3_600_000;
            }).ToRest(),
            bench => bench.CutPower().Run(100),
            Over(AlarmId.RestartUnexpected),
            Phase.Rest),
        [AlarmId.SensorsDisagree] = new(
            () => new CoreBench(settings =>
            {
                settings[SettingField.ShaftFitted] = 1;
                settings[SettingField.RunDownMs] = 20_000;
            })
            { ShaftPulsesPerTick = 1 }.ToRest(),
            bench => Running(bench, false).Run(20_010),
            bench => Running(bench, true),
            Phase.Rest),
        [AlarmId.PressureSignalLost] = new(
            () => new CoreBench(settings =>
            {
                Transmitter(settings);
                settings[SettingField.PressureSpanMbar] = 400_000;
            }).ToRest(),
            bench => Pressure(bench, -10_001),
            bench => Pressure(bench, -10_000),
            Phase.Rest),
    };

    private static Action<CoreBench> Over(AlarmId id) => bench => bench.RunUntil(() => !bench.Core.Alarms.IsActive(id), 70_000);

    private static void LongRest(Settings settings) => settings[SettingField.RestMs] = 400_000;

    private static void Overload(CoreBench bench, bool on)
    {
        bench.Inputs.PumpOverload = on;
        bench.Run(100);
    }

    private static void Late(CoreBench bench, bool late)
    {
        bench.Inputs.ScanLate = late;
        bench.Run(10);
    }

    private static void Temperature(CoreBench bench, int deciC)
    {
        bench.Inputs.TemperatureDeciC = deciC;
        bench.Run(10);
    }

    private static void Supply(CoreBench bench, int millivolts)
    {
        bench.Inputs.SupplyMv = millivolts;
        bench.Run(10);
    }

    private static CoreBench Running(CoreBench bench, bool running)
    {
        bench.Inputs.MachineRunning = running;
        return bench.Run(10);
    }

    private static void Transmitter(Settings settings) => settings[SettingField.PressureTransmitterFitted] = 1;

    private static void Pressure(CoreBench bench, int pressureMbar)
    {
        bench.Inputs.PressureMbar = pressureMbar;
        bench.Run(10);
    }

    private static void Low(CoreBench bench, bool on)
    {
        bench.Inputs.LevelLow = on;
        bench.Run(TestSettings.LevelMs + 10);
    }

    private static CoreBench RuleBench() => new CoreBench(
        settings =>
        {
            settings[SettingField.RestMode] = (int)RestMode.Rule;
            settings[SettingField.RestFallbackMs] = 40_000;
            settings[SettingField.RuleLongestRestMs] = 100_000;
        },
        new ScenarioRule()).ToRest();
}
