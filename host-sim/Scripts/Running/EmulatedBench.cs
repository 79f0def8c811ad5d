using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Emulator;
using LubeController.Emulator.Storage;
using LubeController.Files.SettingsFiles;
using LubeController.Plant.Description;
using LubeController.Plant.Faults;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Signals;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.Running;

/// <summary>The virtual bench: the deployed main loop against the simulated plant, on the virtual clock.</summary>
public sealed class EmulatedBench : IScriptBench
{
    /// <summary>Whether quiet time is skipped; the trace is the same either way.</summary>
    public bool SkipQuietTime { get; init; } = true;

    /// <summary>Time of day at which each run starts, seconds since 1970-01-01 00:00 UTC; 0 for a board without a clock.</summary>
    public uint WallTimeAtStartS { get; init; }

    /// <summary>Called after each scan with the bench as it stands; the run is the same whether somebody looks on or not.</summary>
    public Action<Bench>? LookOn { get; init; }

    /// <inheritdoc/>
    public BenchVocabulary Describe(PlantDescription plant, ControlSettings settings)
    {
        ArgumentNullException.ThrowIfNull(plant);
        return new BenchVocabulary(SignalCatalogue.Of(Bench.DefineSignals(plant)), BenchFaults.Of(plant));
    }

    /// <inheritdoc/>
    public RunResult Run(BenchScript script)
    {
        ArgumentNullException.ThrowIfNull(script);
        script = script.Drawn();
        var setup = new BenchSetup
        {
            Plant = script.Plant,
            Settings = script.Settings.Values,
            MakeRule = script.Settings.Rule is { } rule ? rule.Make : null,
            ScanPeriodMs = script.ScanPeriodMs,
            DurationUs = script.DurationUs,
            Seed = script.Seed,
            ScanBound = script.ScanBound,
            SkipQuietTime = SkipQuietTime,
            WallTimeAtStartS = WallTimeAtStartS,
        };
        var driver = new ScheduleDriver { LookOn = LookOn };
        var bench = new Bench(setup, driver);
        driver.Schedule = new StepSchedule(script.Steps, bench.Trace);
        Trace trace = bench.Run();
        bench.Plant.NoteFaultEffects();
        bench.Platform.NoteFaultEffects();
        return new RunResult
        {
            Trace = trace,
            Logbook = LogbookContents.Read(bench.Storage),
            FiredSteps = driver.Schedule.Fired,
            ScansExecuted = bench.ScansExecuted,
            TicksCovered = bench.TicksCovered,
            PlantEvents = bench.Plant.EventCount,
            ScanBoundReached = bench.BoundReached,
            IdleFaults = [.. driver.Applied.Where(applied => !applied.Log.Entries[applied.Entry].TookEffect).Select(applied => applied.Step)],
        };
    }

    /// <summary>Carries a script's steps out on the bench.</summary>
    private sealed class ScheduleDriver : IBenchDriver
    {
        public StepSchedule Schedule { get; set; } = null!;

        public Action<Bench>? LookOn { get; init; }

        /// <summary>Each step that set a fault, and where it is logged.</summary>
        public List<(Step Step, FaultLog Log, int Entry)> Applied { get; } = [];

        public long NextActionUs => Schedule.NextDueUs;

        public void Act(Bench bench)
        {
            while (Schedule.TryTake(bench.NowUs, out Step step, out StepAction action))
                Obey(bench, step, action);
        }

        public void AfterScan(Bench bench)
        {
            LookOn?.Invoke(bench);
            if (Schedule.IsWatching)
                Schedule.Observe(bench.NowUs);
        }

        private void Obey(Bench bench, Step step, StepAction action)
        {
            switch (action)
            {
                case SetFault set:
                    FaultHost host = BenchFaults.HostOf(bench, set.Kind);
                    Applied.Add((step, host.FaultLog, host.ApplyFault(set.Kind.Fault!, set.Part, set.MagnitudeSi, set.SecondSi)));
                    break;
                case GrowFault grown:
                    BenchFaults.HostOf(bench, grown.Kind).AdjustFault(grown.Kind.Fault!, grown.Part, grown.MagnitudeSi);
                    break;
                case HealFault heal:
                    foreach (string part in heal.AnyPart ? heal.Kind.Parts : [heal.Part])
                        BenchFaults.HostOf(bench, heal.Kind).HealFault(heal.Kind.Fault!, part);
                    break;
                case MoveButton move:
                    bench.Controls.SetButton(move.Button, move.Down);
                    break;
                case SetInput set:
                    bench.Controls.Set(set.Input, set.Value);
                    break;
                case SetShaftSpeed shaft:
                    bench.Plant.SetShaftSpeed(shaft.PerSecond, shaft.RampUs * 1e-6);
                    break;
                case SetTemperature temperature:
                    bench.Plant.SetTemperature(temperature.Kelvin);
                    break;
                case RefillReservoir refill:
                    bench.Plant.Refill(refill.ContentM3);
                    break;
                case HideAlarm hide:
                    bench.AlarmRequests.Add(hide.Deed, hide.Alarm, (int)(hide.ForUs / 1000));
                    break;
                case SetPower power:
                    bench.Controls.Power = power.On;
                    break;
                case MarkTime:
                    break;
                default:
                    throw new NotSupportedException($"The virtual bench cannot carry out '{action.Text}'.");
            }
        }
    }
}
