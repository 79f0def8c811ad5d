using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using LubeController.Core;
using LubeController.Emulator.Platform;
using LubeController.Plant;
using LubeController.Plant.Contacts;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Faults;
using LubeController.Plant.Line;
using LubeController.Plant.Pistons;
using LubeController.Plant.Pump;
using LubeController.Plant.Reservoir;
using LubeController.Plant.Sensors;
using LubeController.RuleTemplate;
using LubeController.Tests.Draws;
using LubeController.Tests.Support.Fluids;

namespace LubeController.Emulator.Tests;

/// <summary>What happens in a random run: who does what, when.</summary>
internal sealed record RandomAction(long TimeUs, int What, int Which, double Amount);

/// <summary>Named generators of random benches, from small parts to the whole. All data is invented.</summary>
internal static class RandomBench
{
    private static readonly Gen<SectionDescription> Section =
        from volume in Gen.Double[0.05, 0.6]
        from single in Gen.Bool
        from breakaway in Gen.Double[2, 20]
        from travel in Generators.Among(0.0, 0.0, 0.0, 0.0, 1.0, 1.0, 1.0, 1.0, 0.4)
        select new SectionDescription
        {
            Name = "",
            VolumePerStrokeM3 = volume * 1e-6,
            Outlets = single ? SectionOutlets.Single : SectionOutlets.Twin,
            BreakawayPa = breakaway * 1e5,
            InitialTravel = travel,
        };

    private static readonly Gen<PlantDescription> Plant =
        from sections in Section.Array[3, 7]
        from cam in Gen.Bool
        from speed in Gen.Double[20, 200]
        from stiff in Gen.Double[0.05, 1.5]
        from switches in Gen.Int[1, 2]
        from transmitter in Gen.Bool
        from content in Gen.Double[0.02, 1.0]
        from shaftSpeed in Gen.Double[0.2, 20]
        from creeps in Gen.Bool
        select Build(sections, cam, speed, stiff, switches, transmitter, content, shaftSpeed, creeps);

    private static readonly Gen<Settings> Control =
        from mode in Gen.Int[0, 3]
        from dose in Gen.Int[0, 6].Select(pick => pick < 3 ? (DoseMode)pick : DoseMode.Cycles)
        from pressureUse in Gen.Int[0, 2]
        from edges in Gen.Int[1, 3]
        from both in Gen.Bool
        from rest in Gen.Int[2, 60]
        from retries in Gen.Int[0, 2]
        from timeout in Gen.Int[3, 40]
        from newTry in Gen.Bool
        from onlyRunning in Gen.Bool
        from missing in Gen.Bool
        from sensors in Gen.Int[0, 63]
        select Compared(Set(mode, dose, pressureUse, edges, both, rest, retries, timeout, newTry, onlyRunning, missing), sensors);

    private static readonly Gen<RandomAction> Action =
        from time in Gen.Long[0, 400_000_000]
        from what in Gen.Int[0, 13]
        from which in Gen.Int[0, 1000]
        from amount in Gen.Double[0, 1]
        select new RandomAction(time, what, which, amount);

    /// <summary>A whole random run, quiet time skipped or not left open.</summary>
    public static readonly Gen<(BenchSetup Setup, RandomAction[] Actions)> Run =
        from plant in Plant
        from settings in Control
        from period in Generators.Among(1, 3, 10, 10, 50)
        from seed in Gen.ULong
        from clock in Gen.Bool.Select(wraps => wraps ? uint.MaxValue - 100_000u : 0u)
        from actions in Action.Array[0, 14]
        from tested in Gen.Bool
        from test in Gen.Long[0, 300_000_000]
        select (Make(plant, settings, period, seed, clock), actions.Concat(tested ? Testing(test) : test % 4 == 0 ? Flickering(test) : []).OrderBy(action => action.TimeUs).ToArray());

    private static readonly Gen<RandomAction> BoardAction =
        from time in Gen.Long[0, 400_000_000]
        from fault in Gen.Int[0, BoardFaults.All.Count - 1]
        from heals in Gen.Int[0, 9]
        from amount in Gen.Double[0, 1]
        select new RandomAction(time, heals < 4 ? Driver.BoardHeals : Driver.BoardFails, fault, amount);

    /// <summary>A whole random run in which the board fails too; what restarts it without end is healed some time.</summary>
    public static readonly Gen<(BenchSetup Setup, RandomAction[] Actions)> BoardRun =
        from run in Run
        from actions in BoardAction.Array[1, 8]
        from jitter in Gen.Int[0, 9].Select(pick => pick == 0 ? 300L : 0L)
        from depth in Gen.Int[16, 512]
        from watchdog in Gen.Int[50, 3_000]
        select (run.Setup with { ScanJitterUs = jitter, PinQueueDepth = depth, WatchdogMs = watchdog },
            run.Actions.Concat(actions.SelectMany(WithCure)).OrderBy(action => action.TimeUs).ToArray());

    private static RandomAction[] WithCure(RandomAction action) => action.What == Driver.BoardFails && (BoardFaults.All[action.Which] == BoardFaults.LoopHangs || BoardFaults.All[action.Which] == BoardFaults.LoopThrows)
        ? [action, action with { TimeUs = action.TimeUs + (long)(action.Amount * 5_000_000), What = Driver.BoardHeals }]
        : action.What == Driver.BoardFails && BoardFaults.All[action.Which] == BoardFaults.PinQueueShort
        ? [action, new(action.TimeUs + 1_000_000, Driver.BoardFails, BoardFaults.All.ToList().IndexOf(BoardFaults.ScanDelayed), 0.9)]
        : [action];

    /// <summary>Power that comes and goes.</summary>
    private static RandomAction[] Flickering(long timeUs) => [.. Enumerable.Range(0, 4).Select(time => new RandomAction(timeUs + (time * 700_000), 7, 0, time % 2 == 0 ? 1 : 0))];

    /// <summary>Stop on and off, then the output test button.</summary>
    private static RandomAction[] Testing(long timeUs) =>
        [new(timeUs, 6, 0, 0), new(timeUs + 500_000, 6, 0, 1), new(timeUs + 1_000_000, 13, (int)Button.OutputTest, 1), new(timeUs + 1_500_000, 13, (int)Button.OutputTest, 0)];

    private static BenchSetup Make(PlantDescription plant, Settings settings, int period, ulong seed, uint clock)
    {
        settings[SettingField.SwitchCount] = plant.CycleSwitches.Count;
        settings[SettingField.PressureTransmitterFitted] = plant.Transmitter is not null ? 1 : 0;
        settings[SettingField.PressureReachedMbar] = 5_000;
        settings[SettingField.PressureLimitMbar] = 90_000;
        if (plant.Pump is not CamPumpDescription)
            settings[SettingField.PumpRevolutionsFitted] = 0;
        if (plant.Transmitter is null && settings.PressureSwitchUse != PressureSwitchUse.Reached)
            settings[SettingField.PulsesShowPressure] = 0;
        if (settings.DoseMode == DoseMode.Pressure)
            FitDosesByPressure(settings);
        if (plant.Transmitter is null && settings.PressureSwitchUse != PressureSwitchUse.Reached)
            settings[SettingField.PressureMissingMs] = 0;
        var check = new SettingsCheck();
        if (!check.Accepts(settings, hasRule: true))
            throw new InvalidOperationException($"the generator made settings that are refused: {SettingTable.Spec(check[0].Field).Name} {check[0].Value}: {check[0].Reason}");
        return new BenchSetup { Plant = plant, Settings = settings, ScanPeriodMs = period, DurationUs = 400_000_000, Seed = seed, ClockStartMs = clock, MakeRule = MakeRule };
    }

    /// <summary>Sensors that are compared with others or watched, each fitted or not.</summary>
    private static Settings Compared(Settings settings, int sensors)
    {
        settings[SettingField.PumpRevolutionsFitted] = sensors & 1;
        settings[SettingField.PumpRevolutionMm3] = 226;
        settings[SettingField.PumpFlowMm3PerMinute] = 11_000;
        settings[SettingField.DividerCycleMm3] = 3_000 * ((sensors >> 1) & 1);
        settings[SettingField.VolumeWindow] = 2;
        settings[SettingField.PulsesShowPressure] = (sensors >> 2) & 1;
        settings[SettingField.PressureSpanMbar] = 400_000;
        settings[SettingField.SupplyMeasured] = (sensors >> 3) & 1;
        settings[SettingField.ColdJudged] = (sensors >> 4) & 1;
        settings[SettingField.ColdLimitDeciC] = 150;
        settings[SettingField.OverloadFitted] = (sensors >> 5) & 1;
        settings[SettingField.RevolutionMissingMs] = 4_000;
        settings[SettingField.RunDownMs] = 8_000;
        settings[SettingField.SaveIntervalMs] = 30_000;
        return settings;
    }

    /// <summary>These plants are no single-line systems: pressure may be reached and held, and seldom falls in its time.</summary>
    private static void FitDosesByPressure(Settings settings)
    {
        if (!settings.Is(SettingField.PressureTransmitterFitted))
            settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Reached;
        settings[SettingField.PressureMissingMs] = 6_000;
        settings[SettingField.PressureVentedMbar] = 3_000;
        settings[SettingField.HoldMs] = 1_500;
        settings[SettingField.VentMs] = 3_000;
        settings[SettingField.VentLimitMs] = 10_000;
    }

    /// <summary>The worked rule, its rest made short; among the temperatures drawn some are warm.</summary>
    private static WarmRestRule MakeRule()
    {
        var rule = new WarmRestRule();
        rule.Set(0, 300);
        rule.Set(1, 30_000);
        return rule;
    }

    private static PlantDescription Build(SectionDescription[] sections, bool cam, double speed, double stiff, int switches, bool transmitter, double content, double shaftSpeed, bool creeps)
    {
        for (int index = 0; index < sections.Length; index++)
            sections[index] = sections[index] with { Name = $"r{index + 1}" };
        var divider = new DividerDescription { Sections = sections, LandClearanceFlowM3PerS = creeps ? 1e-9 : null };
        var cycleSwitches = new List<CycleSwitchDescription>
        {
            new() { Name = "a", Section = "r3", End = Side.R },
            new() { Name = "b", Section = "r1", End = Side.L, TripTravel = 0.3, Contact = SwitchContact.NormallyOpen },
        };
        return new PlantDescription
        {
            Name = "random",
            Lubricant = Lubricants.NewtonianOil(0.1),
            Reservoir = new ReservoirDescription { CapacityM3 = 1e-3, ContentM3 = content * 1e-3, LowLevelM3 = 1e-4, EmptyLevelM3 = 3e-5, LevelHysteresisM3 = 1e-5 },
            Pump = cam
                ? new CamPumpDescription { PistonBoreM = 0.008, StrokeM = 0.005, SpeedRevPerS = speed / 60.0, VolumetricEfficiency = 0.9, OverloadTripS = 3, OverloadCoolS = 20 }
                : new ConstantFlowPumpDescription { FlowM3PerS = speed * 0.1 * 1e-6 / 60.0, OverloadTripS = 3, OverloadCoolS = 20 },
            Line = new LineDescription { VolumeM3 = 4e-5, BulkModulusPa = stiff * 1e9 },
            Relief = new ReliefDescription { OpeningPressurePa = 1.2e7 },
            Divider = divider,
            Outlets = PortGroups.DefaultOutlets(divider),
            CycleSwitches = cycleSwitches[..switches],
            Transmitter = transmitter ? new PressureTransmitterDescription() : null,
            PressureSwitch = new PressureSwitchDescription { TripPa = 1.5e6, ResetPa = 1e6 },
            Shaft = new ShaftDescription { PulsesPerRevolution = 4, InitialSpeedRevPerS = shaftSpeed, MinimumPulseWidthUs = 1000 },
        };
    }

    private static Settings Set(int mode, DoseMode dose, int pressureUse, int edges, bool both, int rest, int retries, int timeout, bool newTry, bool onlyRunning, bool missing)
    {
        var settings = new Settings();
        settings[SettingField.RestMode] = mode;
        settings[SettingField.DoseMode] = (int)dose;
        settings[SettingField.DoseRunMs] = 7_000;
        settings[SettingField.DoseLimitMs] = 60_000;
        settings[SettingField.PressureSwitchUse] = pressureUse;
        settings[SettingField.RuleLongestRestMs] = 100_000;
        settings[SettingField.DoseEdges] = edges;
        settings[SettingField.EdgesPerCycle] = both ? 2 : 1;
        settings[SettingField.RestMs] = rest * 1000;
        settings[SettingField.RestFallbackMs] = rest * 2000;
        settings[SettingField.RestRevolutions] = rest * 4;
        settings[SettingField.ShaftFitted] = 1;
        settings[SettingField.ShaftPulsesPerRevolution] = 4;
        settings[SettingField.ShaftMaxPerMinute] = 1500;
        settings[SettingField.ShaftLostMs] = 9_000;
        settings[SettingField.ShaftStandstillMs] = 4_000;
        settings[SettingField.OverdueMs] = 150_000;
        settings[SettingField.NewTryDelayMs] = newTry ? 20_000 : 0;
        settings[SettingField.RestOnlyWhileRunning] = onlyRunning ? 1 : 0;
        settings[SettingField.MinPulseIntervalMs] = 900;
        settings[SettingField.LevelLowFitted] = 1;
        settings[SettingField.LevelEmptyFitted] = 1;
        settings[SettingField.PressureMissingMs] = missing ? 6_000 : 0;
        for (int index = 0; index < 2; index++)
        {
            settings[SettingField.OfSwitch(index, SettingField.SwitchTimeoutMs)] = timeout * 1000;
            settings[SettingField.OfSwitch(index, SettingField.SwitchRetries)] = retries;
        }

        return settings;
    }

    /// <summary>Carries random actions out.</summary>
    internal sealed class Driver(RandomAction[] actions) : IBenchDriver
    {
        /// <summary>The board gets a fault.</summary>
        public const int BoardFails = 100;

        /// <summary>A fault of the board is healed.</summary>
        public const int BoardHeals = 101;

        private int _next;

        public long NextActionUs => _next < actions.Length ? actions[_next].TimeUs : long.MaxValue;

        public void Act(Bench bench)
        {
            while (NextActionUs <= bench.NowUs)
                Do(bench, actions[_next++]);
        }

        public void AfterScan(Bench bench)
        {
        }

        private static void Do(Bench bench, RandomAction action)
        {
            bool on = action.Amount < 0.5;
            switch (action.What)
            {
                case 0 or 1 or 2:
                    Fail(bench.Plant, action);
                    break;
                case 3:
                    Heal(bench.Plant, action.Which);
                    break;
                case 4:
                    bench.Controls.Set(ControllerInputs.MachineRunning, on ? 1 : 0);
                    break;
                case 5:
                    bench.Plant.SetShaftSpeed(on ? 0 : action.Amount * 20, action.Which % 3);
                    break;
                case 6:
                    bench.Controls.Set(ControllerInputs.Stop, on ? 1 : 0);
                    break;
                case 7:
                    bench.Controls.Power = on;
                    break;
                case 8:
                    bench.Plant.SetTemperature(280 + (action.Amount * 60));
                    break;
                case BoardFails:
                    Fail(bench, BoardFaults.All[action.Which], action.Amount);
                    break;
                case BoardHeals:
                    bench.Platform.HealFault(BoardFaults.All[action.Which], PartOf(BoardFaults.All[action.Which], action.Amount));
                    break;
                case 9:
                    bench.AlarmRequests.Add((AlarmDeed)(action.Which % 4), (AlarmId)(action.Which / 4 % AlarmTable.Count), 1_000 + (int)(action.Amount * 60_000));
                    break;
                default:
                    bench.Controls.SetButton((Button)(action.Which % 6), on);
                    break;
            }
        }

        // With magnitudes as they are by default, so that each alarm has a cause that is met often.
        private static void Fail(LubricationSystem plant, RandomAction action)
        {
            Fault fault = FaultCatalogue.All[action.Which % FaultCatalogue.All.Count];
            IReadOnlyList<string> parts = FaultCatalogue.PartNames(fault, plant.Description);
            if (parts.Count == 0)
                return;
            string part = parts[(int)(action.Amount * 0.999 * parts.Count)];
            if (!plant.IsFaulted(fault, part))
                plant.ApplyFault(fault, part);
        }

        private static void Heal(LubricationSystem plant, int which)
        {
            int count = plant.Faults.Count;
            if (which % 2 == 0 || count == 0)
                plant.HealAllFaults();
            else
                plant.HealFault(plant.Faults[which % count].Fault, plant.Faults[which % count].Part);
        }

        /// <summary>Delays from the least that counts to beyond the watchdog; spans, drifts, depths and jitters from their ranges.</summary>
        private static void Fail(Bench bench, BoardFault kind, double amount)
        {
            double? magnitude = kind.Parameter is not { } range ? null
                : kind == BoardFaults.ScanDelayed ? 0.001 + (2.5 * amount * amount)
                : kind == BoardFaults.ScanJitters ? 0.002 * amount
                : kind == BoardFaults.StorageWorn ? Math.Floor(20 * amount)
                : range.Minimum + Math.Floor((range.Maximum - range.Minimum) * (kind == BoardFaults.PinQueueShort ? amount * amount * amount : amount));
            double? second = kind.Second is not { } other ? null : other.Unit == BoardFaults.CountUnit ? Math.Floor(amount * 2.999) : amount < 0.5 ? 0 : 20 * (amount - 0.5);
            bench.Platform.ApplyFault(kind, PartOf(kind, amount), magnitude, second);
        }

        private static string PartOf(BoardFault kind, double amount)
        {
            IReadOnlyList<string> parts = BoardFaults.PartNames(kind);
            return parts.Count == 0 ? "" : parts[(int)(amount * 0.999 * parts.Count)];
        }
    }
}
