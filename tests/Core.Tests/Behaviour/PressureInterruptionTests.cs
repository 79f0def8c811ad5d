using System;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>Where a dose by pressure goes on after it was interrupted, and what is saved of it.</summary>
public sealed class PressureInterruptionTests
{
    private static readonly string[] Ways = ["stop", "cut", "failure", "stop and prime"];

    public static TheoryData<string, DoseStep> Interruptions()
    {
        var all = new TheoryData<string, DoseStep>();
        foreach (string way in Ways)
        {
            foreach (DoseStep step in Enum.GetValues<DoseStep>().Where(step => step != DoseStep.None))
                all.Add(way, step);
        }

        return all;
    }

    [Theory]
    [MemberData(nameof(Interruptions))]
    public void A_dose_cut_short_finishes_venting_or_begins_its_pressure_cycle_again_from_a_recharged_line(string way, DoseStep step)
    {
        CoreBench bench = At(step);
        bench.ClearLog();
        Interrupt(bench, way);
        Assert.True(bench.Core.DosePending);
        Assert.Equal(step == DoseStep.Vent ? DoseStep.Vent : DoseStep.None, bench.Core.DoseStep);
        Assert.False(bench.Outputs.Pump);
        Assert.Empty(bench.Steps);
        bench.RunUntil(Phase.Dose, 60_000);
        Assert.Equal(step == DoseStep.Vent ? [] : ["step recharge 1"], bench.Steps);
        Assert.False(bench.Outputs.Pump);
        bench.Pressure(0).Run(10);
        Assert.Equal(TestSettings.VentMs, bench.RunUntil(() => bench.Outputs.Pump, 60_000));
        int counted = step == DoseStep.Vent ? 2 : 1;
        Assert.Equal((counted, 1), (bench.Core.PressureCycles, bench.Core.DosesCompleted));
        bench.PressureCycles(3 - counted);
        Assert.Equal(2, bench.Core.DosesCompleted);
        Assert.Equal(["dose completed with 3"], bench.Log.Where(line => line.StartsWith("dose completed", StringComparison.Ordinal)));
    }

    [Fact]
    public void Pump_on_time_adds_up_over_interruptions_and_pressure_has_its_whole_time_after_each()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.DoseLimitMs] = 12_000;
        });
        bench.RunUntil(() => bench.Outputs.Pump, 12_000);
        bench.Run(7_000).CutPower().RunUntil(() => bench.Outputs.Pump, 20_000);
        Assert.Equal(5_000, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal("dose-too-long", bench.Standing());
    }

    [Fact]
    public void After_a_retry_pause_the_first_pulse_is_awaited_with_its_allowance_as_the_line_is_pressurised_anew()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.SwitchCount] = 1;
            settings[SettingField.RetryPauseMs] = TestSettings.VentMs + 1_000;
            settings.SetRetries(0, 1);
            settings[SettingField.PressureMissingMs] = 60_000;
        });
        bench.RunUntil(() => bench.Outputs.Pump, 30_000);
        bench.Pulse().RunUntil(Phase.RetryPause, 60_000);
        bench.RunUntil(() => bench.Outputs.Pump, 30_000);
        Assert.Equal(TestSettings.TimeoutMs + TestSettings.AllowanceMs, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal("divider-stalled", bench.Standing());
    }

    [Fact]
    public void A_line_that_was_primed_is_recharged_before_a_dose()
    {
        CoreBench bench = new CoreBench(TestSettings.ByPressure).ToRest();
        bench.Hold(Button.Prime).Pressure(30_000).Run(5_000).Pressure(0).Set(Button.Prime, false).RunUntil(Phase.Rest, 100);
        int passed = 100 + bench.Press(Button.DoseNow).RunUntil(() => bench.Outputs.Pump, 20_000);
        Assert.InRange(passed, TestSettings.VentMs - 30, TestSettings.VentMs + 30);
        Assert.Equal(["step recharge 0", "step pressurise 0"], bench.Steps);
    }

    [Fact]
    public void What_venting_has_used_of_its_limit_is_kept_over_a_cut()
    {
        CoreBench bench = At(DoseStep.Vent);
        bench.Run(10_000).CutPower().RunUntil(Phase.Dose, 20_000);
        Assert.Equal(TestSettings.VentLimitMs - 10_000, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal("line-not-vented", bench.Standing());
    }

    [Fact]
    public void A_pump_that_ran_since_gives_venting_its_whole_limit_again()
    {
        CoreBench bench = At(DoseStep.Vent);
        bench.Run(10_000);
        Interrupt(bench, "stop and prime");
        bench.RunUntil(Phase.Dose, 20_000);
        Assert.Equal(TestSettings.VentLimitMs, bench.RunUntil(Phase.Failed, 60_000));
    }

    [Fact]
    public void After_a_line_that_was_not_vented_is_repaired_its_pressure_cycle_is_made_anew()
    {
        CoreBench bench = At(DoseStep.Vent);
        bench.RunUntil(Phase.Failed, 20_000);
        bench.Pressure(0).Press(Button.Reset);
        bench.ClearLog();
        bench.RunUntil(() => bench.Outputs.Pump, 20_000);
        Assert.Equal(["rest > dose", "step pressurise 1"], bench.Log);
        bench.PressureCycles(2);
        Assert.Equal(2, bench.Core.DosesCompleted);
    }

    [Fact]
    public void After_power_up_the_line_is_judged_once_its_switch_has_been_heard()
    {
        // The restart delay is over long before the switch's debounce; the limit was used up before the cut.
        CoreBench bench = new CoreBench(settings =>
        {
            TestSettings.ByPressure(settings);
            BySwitchAlone(settings);
            settings[SettingField.PressureDebounceMs] = 4_000;
            settings[SettingField.RestartDelayMs] = 1_000;
            settings[SettingField.VentMs] = 500;
        });
        bench.RunUntil(() => bench.Outputs.Pump, 20_000);
        bench.Inputs.PressureSwitch = true;
        bench.RunUntil(() => bench.Core.DoseStep == DoseStep.Vent, 20_000);
        bench.Run(TestSettings.VentLimitMs - 10).CutPower().RunUntil(Phase.Dose, 2_000);
        bench.Run(2_900);
        Assert.Equal("", bench.Standing());
        bench.Run(200);
        Assert.Equal("line-not-vented", bench.Standing());
    }

    [Theory]
    [InlineData(DoseStep.Recharge)]
    [InlineData(DoseStep.Pressurise)]
    [InlineData(DoseStep.Hold)]
    [InlineData(DoseStep.Vent)]
    public void A_new_core_given_the_state_of_a_step_goes_on_exactly_from_there(DoseStep step)
    {
        CoreBench bench = At(step).Run(1_230);
        byte[] state = bench.Save();
        var inputs = new Inputs();
        var outputs = new Outputs();
        var core = new Controller(inputs, outputs, bench.Settings, null);
        Assert.True(core.RestoreState(state));
        var again = new byte[core.StateLength];
        Assert.Equal(state.Length, core.SaveState(again));
        Assert.Equal(state, again);
        Assert.Equal((step, 1), (core.DoseStep, core.PressureCycles));
        bench.Scan();
        inputs.CopyFrom(bench.Inputs);
        core.Scan(77);
        uint now = 77;
        for (int tick = 0; tick < 4_000; tick++)
        {
            bench.Pressure(tick % 1_100 < 400 ? 12_000 : 0).Run(10);
            inputs.CopyFrom(bench.Inputs);
            core.Scan(now += 10);
            Assert.Equal((bench.Core.Phase, bench.Core.DoseStep, bench.Core.PressureCycles), (core.Phase, core.DoseStep, core.PressureCycles));
            Assert.Equal((bench.Outputs.Pump, bench.Outputs.VentValve), (outputs.Pump, outputs.VentValve));
            Assert.Equal(bench.Core.NextDeadlineMs, core.NextDeadlineMs);
        }

        Assert.True(core.DosesCompleted > 1);
    }

    [Theory]
    [InlineData(5_000u)]
    [InlineData(uint.MaxValue - 9_990)]
    [InlineData(uint.MaxValue - 11_000)]
    [InlineData(uint.MaxValue - 12_500)]
    [InlineData(uint.MaxValue - 16_000)]
    public void A_clock_that_wraps_in_any_step_does_not_matter(uint startMs)
    {
        var bench = new CoreBench(TestSettings.ByPressure, startMs: startMs);
        bench.Scan();
        bench.Pressure(12_000);
        Assert.Equal(TestSettings.RestartMs, bench.RunUntil(Phase.Dose, 60_000));
        bench.Pressure(0).Run(10);
        Assert.Equal(TestSettings.VentMs, bench.RunUntil(() => bench.Outputs.Pump, 60_000));
        bench.Pressure(12_000).Run(10);
        Assert.Equal(TestSettings.HoldMs, bench.RunUntil(() => !bench.Outputs.Pump, 60_000));
        bench.Pressure(0).Run(10);
        Assert.Equal(TestSettings.VentMs, bench.RunUntil(Phase.Rest, 60_000));
        Assert.Equal(1, bench.Core.DosesCompleted);
    }

    [Fact]
    public void The_deadline_is_the_end_of_the_time_that_each_step_waits_for()
    {
        CoreBench bench = At(DoseStep.Recharge);
        int before = bench.Core.NextDeadlineMs;
        Assert.InRange(before, TestSettings.VentLimitMs - 200, TestSettings.VentLimitMs);
        bench.Pressure(0).Run(10);
        Assert.Equal(TestSettings.VentMs, bench.Core.NextDeadlineMs);
        bench.RunUntil(() => bench.Outputs.Pump, 10_000);
        Assert.Equal(TestSettings.MissingMs, bench.Core.NextDeadlineMs);
        bench.Pressure(12_000).Run(10);
        Assert.Equal(TestSettings.HoldMs, bench.Core.NextDeadlineMs);
        bench.RunUntil(() => !bench.Outputs.Pump, 10_000);
        Assert.Equal(TestSettings.VentLimitMs, bench.Core.NextDeadlineMs);
    }

    [Fact]
    public void The_dose_limit_is_due_in_a_step_with_the_pump_on_alone()
    {
        CoreBench bench = At(DoseStep.Hold, LongHold);
        for (int loss = 0; loss < 5; loss++)
            bench.Run(8_000).Pressure(0).Run(10).Pressure(12_000).Run(10);
        int due = bench.Core.NextDeadlineMs;
        Assert.InRange(due, 1, 9_900);
        Assert.Equal(due, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal("dose-too-long", bench.Standing());
        Assert.Equal(100_000, At(DoseStep.Vent, LongHold).Core.NextDeadlineMs);
    }

    [Fact]
    public void A_dose_by_pressure_takes_few_whole_scans()
    {
        // A full scan forgets what was seen in the last; one that is skipped sees the same. Counted by the deadline here.
        CoreBench bench = At(DoseStep.Vent).Pressure(0).Run(10);
        int due = bench.Core.NextDeadlineMs;
        Assert.Equal(TestSettings.VentMs, due);
        bench.Core.Scan(bench.NowMs + (uint)due - 1);
        Assert.Equal(DoseStep.Vent, bench.Core.DoseStep);
        Assert.Equal(1, bench.Core.NextDeadlineMs);
        bench.Core.Scan(bench.NowMs + (uint)due);
        Assert.Equal(DoseStep.Pressurise, bench.Core.DoseStep);
    }

    [Fact]
    public void A_transmitter_names_its_band_with_the_vented_threshold_in_it()
    {
        CoreBench bench = new CoreBench(TestSettings.ByPressure);
        var expected = new (int Reading, int Low, int High)[]
        {
            (0, int.MinValue, 4_000),
            (4_000, int.MinValue, 4_000),
            (4_001, 4_001, 9_999),
            (9_999, 4_001, 9_999),
            (10_000, 10_000, 250_000),
            (250_000, 10_000, 250_000),
            (250_001, 250_001, int.MaxValue),
        };
        foreach ((int reading, int low, int high) in expected)
        {
            bench.Pressure(reading).Run(10);
            Assert.Equal((low, high), (bench.Core.QuietPressureLowMbar, bench.Core.QuietPressureHighMbar));
        }
    }

    private static void LongHold(Settings settings)
    {
        settings[SettingField.HoldMs] = 10_000;
        settings[SettingField.VentLimitMs] = 100_000;
        settings[SettingField.DoseLimitMs] = 60_000;
    }

    private static void BySwitchAlone(Settings settings)
    {
        settings[SettingField.PressureTransmitterFitted] = 0;
        settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Reached;
    }

    /// <summary>In the second of three pressure cycles.</summary>
    private static CoreBench At(DoseStep step, Action<Settings>? more = null)
    {
        CoreBench bench = new CoreBench(settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.PressureCycles] = 3;
            more?.Invoke(settings);
        }).ToRest();
        bench.Press(Button.DoseNow).PressureCycle().Pressure(12_000);
        if (step == DoseStep.Recharge)
        {
            Interrupt(bench, "stop");
            bench.RunUntil(Phase.Dose, 20_000);
        }
        else if (step == DoseStep.Pressurise)
        {
            bench.Pressure(0).Run(1_000);
        }
        else
        {
            bench.RunUntil(() => bench.Core.DoseStep == step, 20_000);
        }

        Assert.Equal((step, 1), (bench.Core.DoseStep, bench.Core.PressureCycles));
        return bench;
    }

    private static void Interrupt(CoreBench bench, string way)
    {
        switch (way)
        {
            case "cut":
                bench.CutPower();
                break;
            case "failure":
                bench.Empty(true).Empty(false).Press(Button.Reset);
                break;
            default:
                bench.Inputs.Stop = true;
                bench.Run(1_000);
                bench.Inputs.Stop = false;
                if (way == "stop and prime")
                    bench.Hold(Button.Prime).Run(1_000).Set(Button.Prime, false).Run(50);
                bench.Press(Button.Start);
                break;
        }

        bench.Pressure(12_000);
    }
}
