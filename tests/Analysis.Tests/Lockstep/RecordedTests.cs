using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Runtime.CompilerServices;
using LubeController.Analysis.Lockstep;
using LubeController.Analysis.Specification;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.Reporting;
using LubeController.Scripts.Running;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Analysis.Tests.Lockstep;

/// <summary>
/// What the core saw on the bench, scan by scan, in scripts that are shipped: core and specification agree on it too, both with
/// the script's settings but for what the specification leaves out.
/// </summary>
[Trait("Run", "Long")]
public sealed class RecordedTests(ITestOutputHelper output)
{
    /// <summary>Scripts of every plant whose settings the specification can express.</summary>
    [Theory]
    [InlineData("running/dose-now.yaml")]
    [InlineData("running/first-up.yaml")]
    [InlineData("running/output-test.yaml")]
    [InlineData("running/power-cut-in-a-dose.yaml")]
    [InlineData("running/prime.yaml")]
    [InlineData("running/recover-after-reset.yaml")]
    [InlineData("running/shaft-stands-still.yaml")]
    [InlineData("running/shelve-and-out-of-service.yaml")]
    [InlineData("running/stop-and-start.yaml")]
    [InlineData("running/brick-press-day.yaml")]
    [InlineData("running/kiln-day.yaml")]
    [InlineData("running/quarry-day.yaml")]
    [InlineData("running/stone-saw-day.yaml")]
    [InlineData("running/sawmill-day.yaml")]
    [InlineData("running/salt-works-day.yaml")]
    [InlineData("faults/outlet-blocked-retry.yaml")]
    [InlineData("faults/outlet-blocked-new-tries.yaml")]
    [InlineData("faults/outlet-blocked-overpressure.yaml")]
    [InlineData("faults/cycle-switch-stuck-off.yaml")]
    [InlineData("faults/control-supply-low.yaml")]
    [InlineData("faults/transmitter-loop-broken.yaml")]
    [InlineData("faults/vent-valve-stuck-closed.yaml")]
    [InlineData("faults/reservoir-runs-empty.yaml")]
    public void Core_and_specification_agree_on_what_was_recorded(string script)
    {
        Recording recorded = Record(Path.Combine(Repository.Root, "hil-scripts", script));
        int alarms = recorded.Alarms;

        Disagreement? found = Analysis.Lockstep.Lockstep.Run(recorded.Settings!, recorded.Steps);

        output.WriteLine($"{script}: {recorded.Steps.Count} scans, alarms {alarms:x}");
        Assert.True(recorded.Steps.Count > 40, $"{script}: {recorded.Steps.Count} scans");
        Assert.True(found is null, found?.What + " " + found?.Specification + "\n" + string.Join("\n", recorded.Steps.Skip(Math.Max(0, (found?.Step ?? 0) - 8)).Take(9)));
    }

    private static Recording Record(string script)
    {
        var recording = new Recording();
        var bench = new EmulatedBench { LookOn = recording.Take };
        (ScriptVerdict verdict, RunResult result) = new ScriptRunner(bench).Run(Repository.Read(script));
        Assert.True(verdict.Outcome == Outcome.Held, string.Join('\n', VerdictText.Of(verdict, result, true, null)));
        return recording;
    }

    private sealed class Recording
    {
        private Controller? _core;
        private uint _lastMs;

        public List<LockstepStep> Steps { get; } = [];

        public SettingsValues? Settings { get; private set; }

        public int Alarms { get; private set; }

        public void Take(Bench bench)
        {
            Controller core = bench.Core!;
            bool poweredUp = core != _core && _core is not null;
            int elapsedMs = core == _core ? (int)unchecked(bench.NowMs - _lastMs) : 0;
            _core = core;
            _lastMs = bench.NowMs;
            Settings ??= LockstepSettings.Neutral(LockstepSettings.ValuesOf(SettingsOf(core)));
            Alarms |= core.Alarms.Standing;
            Steps.Add(new LockstepStep(Seen(InputsOf(core)), elapsedMs, 1, poweredUp ? LockstepDeed.PowerCut : LockstepDeed.None));
        }

        [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_inputs")]
        private static extern ref Inputs InputsOf(Controller core);

        [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_settings")]
        private static extern ref Settings SettingsOf(Controller core);

        private static LockstepInputs Seen(Inputs inputs) => new()
        {
            CycleSwitches = Enumerable.Range(0, Inputs.MaxCycleSwitches).Sum(index => inputs.CycleSwitch(index) ? 1 << index : 0),
            ShaftPulses = inputs.ShaftPulses,
            ShaftPulseAgeMs = inputs.ShaftPulseAgeMs,
            PumpRevolutions = inputs.PumpRevolutions,
            PumpRevolutionAgeMs = inputs.PumpRevolutionAgeMs,
            MachineRunning = inputs.MachineRunning,
            LevelLow = inputs.LevelLow,
            LevelEmpty = inputs.LevelEmpty,
            PressureSwitch = inputs.PressureSwitch,
            PumpOverload = inputs.PumpOverload,
            Stop = inputs.Stop,
            Pressed = (inputs.IsDown(Button.Start) ? Buttons.Start : 0) | (inputs.IsDown(Button.Acknowledge) ? Buttons.Acknowledge : 0) | (inputs.IsDown(Button.Reset) ? Buttons.Reset : 0)
                | (inputs.IsDown(Button.DoseNow) ? Buttons.DoseNow : 0) | (inputs.IsDown(Button.Prime) ? Buttons.Prime : 0) | (inputs.IsDown(Button.OutputTest) ? Buttons.OutputTest : 0),
            ScanLate = inputs.ScanLate,
            SupplyMv = inputs.SupplyMv,
            PressureMbar = inputs.PressureMbar,
            TemperatureDeciC = inputs.TemperatureDeciC,
        };
    }
}
