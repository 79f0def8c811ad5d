using System;
using System.Collections.Generic;
using CsCheck;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>
/// Two states that compare equal do the same for ever: what the comparison leaves out can change no output. States of random
/// runs are altered byte by byte; where the comparison does not see it, altered and unaltered core are given the same inputs.
/// </summary>
public sealed class ProjectionTests
{
    private const int Future = 120;

    [Fact]
    public void What_the_comparison_leaves_out_changes_no_output()
    {
        int leftOut = 0;
        var seen = new HashSet<int>();
        Property.ForAll(
            Gen.Select(Scenarios.Any, Gen.UInt),
            1_200,
            drawn =>
            {
                (Scenario scenario, uint seed) = drawn;
                ScenarioRun run = new(scenario, Pace.EveryTick);
                var random = new Dice(seed);
                byte[] state = run.Play().States[random.Next(run.States.Count)];
                for (int trial = 0; trial < 12; trial++)
                {
                    byte[] altered = (byte[])state.Clone();
                    int at = random.Next(12, altered.Length);
                    altered[at] = trial % 3 == 0 ? (byte)(altered[at] ^ 1) : (byte)random.Next(trial % 3 == 1 ? 128 : 256);
                    if (altered[at] == state[at] || !LooksTheSame(scenario, state, altered))
                        continue;
                    DoTheSame(scenario, state, altered, random);
                    seen.Add(at);
                    leftOut++;
                }
            });
        Assert.True(leftOut > Property.Scaled(500) && seen.Count > Property.Scaled(60), $"{leftOut} alterations at {seen.Count} places were not seen by the comparison: too few to mean anything");
    }

    [Fact]
    public void A_state_to_compare_holds_no_count_of_the_past_and_cannot_be_restored()
    {
        CoreBench bench = new CoreBench().ToRest();
        byte[] first = Compared(bench.Core);
        Assert.True(first.Length < bench.Core.StateLength);
        bench.Press(Button.Start).Run(100);
        Assert.Equal(1, bench.Core.PressesRefused);
        Assert.False(bench.Core.RestoreState(new byte[bench.Core.StateLength], StateUse.Compare));
        Assert.False(bench.Core.RestoreState(first, StateUse.Step));
    }

    [Fact]
    public void A_state_to_step_goes_on_as_if_no_time_had_passed()
    {
        CoreBench bench = new CoreBench().ToDose();
        var state = new byte[bench.Core.StateLength];
        Assert.Equal(state.Length, bench.Core.SaveState(state, StateUse.Step));
        Assert.False(bench.Core.RestoreState(state));
        var inputs = new Inputs();
        inputs.CopyFrom(bench.Inputs);
        var other = new Controller(inputs, new Outputs(), bench.Settings, null);
        Assert.True(other.RestoreState(state, StateUse.Step));
        bench.Run(10);
        other.Scan(10);
        Assert.Equal(Compared(bench.Core), Compared(other));
    }

    private static bool LooksTheSame(Scenario scenario, byte[] state, byte[] altered)
    {
        Controller one = Restored(scenario, state, new Inputs(), new Outputs())!;
        return Restored(scenario, altered, new Inputs(), new Outputs()) is { } other && Compared(one).AsSpan().SequenceEqual(Compared(other));
    }

    private static void DoTheSame(Scenario scenario, byte[] state, byte[] altered, Dice random)
    {
        Inputs inputs = new();
        Outputs oneOutputs = new();
        Outputs otherOutputs = new();
        Controller one = Restored(scenario, state, inputs, oneOutputs)!;
        Controller other = Restored(scenario, altered, inputs, otherOutputs)!;
        uint nowMs = 0;
        for (int scan = 0; scan < Future; scan++)
        {
            Alter(inputs, random);
            nowMs += (uint)random.Next(1, 400);
            one.Scan(nowMs);
            other.Scan(nowMs);
            Assert.Equal(Shown(one, oneOutputs), Shown(other, otherOutputs));
            Assert.Equal(Compared(one), Compared(other));
        }
    }

    private static void Alter(Inputs inputs, Dice random)
    {
        switch (random.Next(14))
        {
            case 0: inputs.SetCycleSwitch(random.Next(2), random.Next(2) == 0); break;
            case 1: inputs.SetCycleSwitch(0, !inputs.CycleSwitch(0)); break;
            case 2: inputs.MachineRunning = random.Next(2) == 0; break;
            case 3: inputs.Stop = random.Next(3) == 0; break;
            case 4: inputs.LevelEmpty = random.Next(2) == 0; break;
            case 5: inputs.SetDown(Button.Start, !inputs.IsDown(Button.Start)); break;
            case 6: inputs.SetDown(Button.Reset, !inputs.IsDown(Button.Reset)); break;
            case 7: inputs.SetDown(Button.DoseNow, !inputs.IsDown(Button.DoseNow)); break;
            case 8: inputs.SetDown(Button.Prime, !inputs.IsDown(Button.Prime)); break;
            case 9: inputs.PressureMbar = random.Next(3) * 5_000; break;
            case 10: inputs.SupplyMv = random.Next(2) == 0 ? 24_000 : 15_000; break;
            case 11: inputs.SetDown(Button.OutputTest, !inputs.IsDown(Button.OutputTest)); break;
            case 12: inputs.ScanLate = !inputs.ScanLate; break;
            default: inputs.SetDown(Button.Acknowledge, !inputs.IsDown(Button.Acknowledge)); break;
        }

        inputs.ShaftPulses = random.Next(3);
        inputs.PumpRevolutions = random.Next(2);
        inputs.TemperatureDeciC = random.Next(8) == 0 ? random.Next(-100, 400) : inputs.TemperatureDeciC;
    }

    private static string Shown(Controller core, Outputs outputs)
    {
        string states = "";
        foreach (AlarmId id in Enum.GetValues<AlarmId>())
            states += (int)core.Alarms.StateOf(id);
        return $"{core.Phase} {outputs.Pump} {outputs.VentValve} {outputs.HealthyRelay} {outputs.Warning} {outputs.Lamp} {core.Alarms.Standing:x} {core.Alarms.FirstUp} {states} {core.DosePending} {core.PositionKnown}";
    }

    private static Controller? Restored(Scenario scenario, byte[] state, Inputs inputs, Outputs outputs)
    {
        Settings settings = scenario.MakeSettings();
        var core = new Controller(inputs, outputs, settings, settings.RestMode == RestMode.Rule ? new ScenarioRule() : null);
        return core.RestoreState(state, StateUse.Step) ? core : null;
    }

    private static byte[] Compared(Controller core)
    {
        var buffer = new byte[core.StateLength];
        int length = core.SaveState(buffer, StateUse.Compare);
        Assert.InRange(length, 1, buffer.Length);
        return buffer[..length];
    }
}
