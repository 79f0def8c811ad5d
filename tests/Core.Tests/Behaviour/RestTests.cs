using System;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>What ends a rest, when it counts, and when lubrication is overdue.</summary>
public sealed class RestTests
{
    [Fact]
    public void A_rest_by_time_lasts_its_time_from_the_end_of_the_dose()
    {
        CoreBench bench = new CoreBench();
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(3).Switch(true).RunUntil(Phase.Rest, 200);
        Assert.Equal(TestSettings.RestMs, bench.RunUntil(Phase.Dose, 100_000));
    }

    [Theory]
    [InlineData(1, 50_000)]
    [InlineData(2, 25_000)]
    public void A_rest_by_shaft_lasts_its_revolutions(int pulsesPerTick, int expectedMs)
    {
        // 2500 revolutions of two pulses each.
        CoreBench bench = ShaftBench(RestMode.Shaft);
        bench.ShaftPulsesPerTick = pulsesPerTick;
        Assert.Equal(expectedMs, bench.RunUntil(Phase.Dose, 100_000));
    }

    [Fact]
    public void A_rest_by_shaft_waits_while_the_machine_stands()
    {
        CoreBench bench = ShaftBench(RestMode.Shaft);
        bench.ShaftPulsesPerTick = 0;
        bench.Inputs.MachineRunning = false;
        bench.Run(500_000);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Equal("", bench.Standing());
        bench.Inputs.MachineRunning = true;
        bench.ShaftPulsesPerTick = 1;
        Assert.Equal(50_000, bench.RunUntil(Phase.Dose, 100_000));
    }

    [Fact]
    public void A_lost_shaft_signal_lets_the_rest_fall_back_to_time()
    {
        CoreBench bench = ShaftBench(RestMode.Shaft);
        bench.ShaftPulsesPerTick = 0;
        Assert.Equal(30_000, bench.RunUntil(() => bench.Stands(AlarmId.ShaftSignalLost), 100_000));
        Assert.Equal(10_000, bench.RunUntil(Phase.Dose, 100_000));
    }

    [Fact]
    public void A_shaft_signal_that_comes_back_counts_again()
    {
        CoreBench bench = ShaftBench(RestMode.Shaft);
        bench.ShaftPulsesPerTick = 0;
        bench.Run(35_000);
        Assert.True(bench.Stands(AlarmId.ShaftSignalLost));
        bench.ShaftPulsesPerTick = 1;
        bench.Run(10);
        Assert.False(bench.Stands(AlarmId.ShaftSignalLost));
        Assert.Equal(50_000 - 10, bench.RunUntil(Phase.Dose, 100_000));
    }

    [Fact]
    public void Standing_still_neither_counts_as_time_without_shaft_pulses_nor_renews_it()
    {
        CoreBench bench = ShaftBench(RestMode.Shaft);
        bench.ShaftPulsesPerTick = 0;
        bench.Run(29_000);
        bench.Inputs.MachineRunning = false;
        bench.Run(60_000);
        Assert.False(bench.Stands(AlarmId.ShaftSignalLost));
        bench.Inputs.MachineRunning = true;
        bench.Run(990);
        Assert.False(bench.Stands(AlarmId.ShaftSignalLost));
        bench.Run(20);
        Assert.True(bench.Stands(AlarmId.ShaftSignalLost));
        bench.Inputs.MachineRunning = false;
        bench.Run(10);
        Assert.False(bench.Stands(AlarmId.ShaftSignalLost));
    }

    // Found by exploration: a machine that only ever runs in bursts, its shaft switch broken, was never lubricated by the fallback.
    [Fact]
    public void A_machine_that_runs_in_bursts_without_a_shaft_signal_is_lubricated_by_time()
    {
        CoreBench bench = ShaftBench(RestMode.Shaft);
        bench.ShaftPulsesPerTick = 0;
        for (int tenths = 0; tenths < 2_000 && bench.Core.Phase != Phase.Dose; tenths++)
        {
            bench.Inputs.MachineRunning = tenths / 100 % 2 == 0;
            bench.Run(100);
        }

        Assert.Equal(Phase.Dose, bench.Core.Phase);
    }

    [Theory]
    [InlineData(1, 50_000)]
    [InlineData(0, TestSettings.RestMs)]
    public void A_rest_by_either_ends_with_whichever_comes_first(int pulsesPerTick, int expectedMs)
    {
        CoreBench bench = ShaftBench(RestMode.Either);
        bench.ShaftPulsesPerTick = pulsesPerTick;
        Assert.Equal(expectedMs, bench.RunUntil(Phase.Dose, 100_000));
    }

    [Theory]
    [InlineData(1, TestSettings.RestMs - 30_000)]
    [InlineData(0, TestSettings.RestMs - 30_000 - 100_000)]
    public void A_setting_says_whether_rest_counts_only_while_the_machine_runs(int only, int remainingMs)
    {
        CoreBench bench = AtRest(settings => settings[SettingField.RestOnlyWhileRunning] = only);
        bench.Run(30_000);
        bench.Inputs.MachineRunning = false;
        bench.Scan();
        if (only == 0)
        {
            Assert.Equal(30_000, bench.RunUntil(Phase.Dose, 100_000));
            Assert.True(remainingMs < 0);
            return;
        }

        bench.Run(100_000);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.Inputs.MachineRunning = true;
        bench.Scan();
        Assert.Equal(remainingMs, bench.RunUntil(Phase.Dose, 100_000));
    }

    [Theory]
    [InlineData("prime")]
    [InlineData("stopped")]
    [InlineData("failed")]
    public void Rest_runs_on_in_prime_stopped_and_failed(string phase)
    {
        CoreBench bench = AtRest();
        bench.Run(20_000);
        switch (phase)
        {
            case "prime":
                bench.Set(Button.Prime, true).Run(20_000).Set(Button.Prime, false).RunUntil(Phase.Rest, 100);
                break;
            case "stopped":
                bench.Inputs.Stop = true;
                bench.Run(20_000);
                bench.Inputs.Stop = false;
                bench.Set(Button.Start, true).RunUntil(Phase.Rest, 100);
                break;
            default:
                bench.Empty(true).Run(18_000).Empty(false).Set(Button.Reset, true).RunUntil(Phase.Rest, 100);
                break;
        }

        Assert.InRange(bench.RunUntil(Phase.Dose, 100_000), 19_000, 21_000);
    }

    [Fact]
    public void A_reset_does_not_start_the_pump_although_the_rest_is_over()
    {
        CoreBench bench = AtRest();
        bench.Empty(true).Run(100_000).Empty(false).Set(Button.Reset, true).RunUntil(Phase.Rest, 100);
        Assert.Equal(TestSettings.RestartMs, bench.RunUntil(Phase.Dose, 60_000));
    }

    [Fact]
    public void A_reset_while_priming_from_failed_does_not_start_the_pump_on_release()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.PrimeLimitMs] = 3_600_000).ToStalled();
        bench.Hold(Button.Prime).Press(Button.Reset).Set(Button.Prime, false).RunUntil(Phase.Rest, 100);
        Assert.Equal(TestSettings.RestartMs, bench.RunUntil(Phase.Dose, 60_000));
    }

    [Fact]
    public void After_a_reset_dose_now_is_obeyed_at_once()
    {
        CoreBench bench = AtRest();
        bench.Empty(true).Empty(false).Press(Button.Reset).Press(Button.DoseNow);
        Assert.Equal(Phase.Dose, bench.Phase);
    }

    [Fact]
    public void Start_begins_a_dose_whose_rest_is_over()
    {
        CoreBench bench = AtRest();
        bench.Inputs.Stop = true;
        bench.Run(100_000);
        bench.Inputs.Stop = false;
        bench.Press(Button.Start);
        Assert.Equal(["rest > stopped", "stopped > rest", "rest > dose"], bench.Phases);
    }

    [Fact]
    public void What_remains_of_a_rest_survives_a_cut()
    {
        CoreBench bench = AtRest();
        bench.Run(45_000).CutPower();
        Assert.Equal(15_000, bench.RunUntil(Phase.Dose, 60_000));
    }

    [Theory]
    [InlineData(true, true, true, false)]
    [InlineData(true, false, true, true)]
    [InlineData(false, true, true, true)]
    [InlineData(false, false, true, true)]
    [InlineData(false, false, false, true)]
    public void Overdue_is_held_only_while_shaft_and_running_input_both_say_standstill(bool stands, bool shaftStands, bool fitted, bool overdue)
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.ShaftFitted] = fitted ? 1 : 0;
            settings[SettingField.OverdueMs] = 100_000;
        }).ToRest();
        bench.Inputs.Stop = true;
        bench.Run(1_000);
        bench.Inputs.MachineRunning = !stands;
        bench.ShaftPulsesPerTick = shaftStands ? 0 : 1;
        bench.Run(400_000);
        Assert.Equal(overdue, bench.Stands(AlarmId.LubricationOverdue));
    }

    [Fact]
    public void Overdue_counts_on_from_where_it_was_held()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.ShaftFitted] = 1;
            settings[SettingField.OverdueMs] = 100_000;
        }).ToRest();
        bench.Inputs.Stop = true;
        bench.Inputs.MachineRunning = false;
        bench.Run(300_000);
        bench.Inputs.MachineRunning = true;

        // The shaft has stood for long, so that the machine's input alone decided.
        int took = bench.RunUntil(() => bench.Stands(AlarmId.LubricationOverdue), 200_000);
        Assert.InRange(took, 99_500, 99_800);
    }

    [Theory]
    [InlineData(Phase.Stopped)]
    [InlineData(Phase.Failed)]
    public void Overdue_counts_powered_time_in_every_phase(Phase phase)
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.OverdueMs] = 100_000).ToRest();
        if (phase == Phase.Stopped)
            bench.Inputs.Stop = true;
        else
            bench.Empty(true);
        int took = bench.RunUntil(() => bench.Stands(AlarmId.LubricationOverdue), 200_000);
        Assert.InRange(took, 99_000, 100_000);
        Assert.Equal(phase, bench.Phase);
    }

    [Fact]
    public void Overdue_survives_a_cut()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.OverdueMs] = 100_000).ToRest();
        bench.Inputs.Stop = true;
        bench.Run(80_000).CutPower();
        Assert.InRange(bench.RunUntil(() => bench.Stands(AlarmId.LubricationOverdue), 200_000), 19_000, 20_000);
    }

    private static CoreBench AtRest(Action<Settings>? change = null)
    {
        CoreBench bench = new CoreBench(change);
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(3).Switch(true).RunUntil(Phase.Rest, 200);
        bench.ClearLog();
        return bench;
    }

    private static CoreBench ShaftBench(RestMode mode)
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.RestMode] = (int)mode;
            settings[SettingField.ShaftFitted] = 1;
            settings[SettingField.ShaftPulsesPerRevolution] = 2;
            settings[SettingField.RestRevolutions] = 2_500;
            settings[SettingField.ShaftMaxPerMinute] = 3_000;
            settings[SettingField.RestFallbackMs] = 40_000;
        })
        { ShaftPulsesPerTick = 1 };
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(3).Switch(true).RunUntil(Phase.Rest, 200);
        bench.ClearLog();
        return bench;
    }
}
