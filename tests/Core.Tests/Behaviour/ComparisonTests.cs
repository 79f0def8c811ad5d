using Xunit;

namespace LubeController.Core.Tests;

/// <summary>Sensors that can only be right together, and what is said when they are not.</summary>
public sealed class ComparisonTests
{
    private const int TicksPerPulse = 30;

    [Theory]
    [InlineData(100, "")]
    [InlineData(51, "")]
    [InlineData(149, "")]
    [InlineData(49, "sensors disagree by volume 49")]
    [InlineData(151, "sensors disagree by volume 151")]
    public void Revolutions_are_compared_with_whole_cycles(int percent, string expected)
    {
        // A tick is one revolution: thirty of them between two pulses are a cycle of 3000 mm3 at 100 mm3 each.
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.DoseEdges] = 20;
            settings[SettingField.PumpRevolutionsFitted] = 1;
            settings[SettingField.PumpRevolutionMm3] = percent;
            settings[SettingField.DividerCycleMm3] = TicksPerPulse * 100;
            settings[SettingField.VolumeWindow] = 2;
        })
        { RevolutionsPerTick = 1 }.ToRunningDose();
        bench.Pulses(2);
        Assert.Empty(bench.AlarmLines);
        bench.Pulses(1);
        Assert.Equal(expected.Length > 0, bench.Stands(AlarmId.SensorsDisagree));
        Assert.Equal(expected.Length > 0, bench.Outputs.Warning);
        Assert.True(bench.Outputs.HealthyRelay);
        Assert.True(bench.Outputs.Pump);
        if (expected.Length > 0)
            Assert.Contains(expected, bench.Log);
    }

    [Theory]
    [InlineData(600_000, false)]
    [InlineData(1_200_000, true)]
    [InlineData(290_000, true)]
    public void Without_revolutions_the_flow_and_pump_on_time_are_compared(int flow, bool disagree)
    {
        // 300 ms at 600000 mm3 a minute are 3000 mm3.
        CoreBench bench = ByFlow(flow).ToRunningDose();
        bench.Pulses(4);
        Assert.Equal(disagree, bench.Stands(AlarmId.SensorsDisagree));
    }

    [Fact]
    public void The_first_pulse_of_a_run_compares_nothing()
    {
        CoreBench bench = ByFlow(600_000).ToRunningDose();
        bench.Run(12_000).Pulses(4);
        Assert.False(bench.Stands(AlarmId.SensorsDisagree));
    }

    [Fact]
    public void A_cycle_cut_in_two_by_a_retry_pause_compares_nothing()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            Flow(settings, 600_000);
            settings.SetRetries(0, 1);
        }).ToRunningDose();
        bench.Pulses(2);
        bench.RunUntil(Phase.RetryPause, 30_000);
        bench.RunUntil(Phase.Dose, 10_000);
        bench.Pulses(2);
        Assert.False(bench.Stands(AlarmId.SensorsDisagree));
    }

    [Fact]
    public void A_window_within_tolerance_ends_the_condition_and_reset_clears_the_latch()
    {
        CoreBench bench = ByFlow(600_000).ToRunningDose();
        bench.Pulses(1).Run(700).Pulses(1);
        Assert.True(bench.Core.Alarms.IsActive(AlarmId.SensorsDisagree));
        bench.Pulses(1);
        Assert.False(bench.Core.Alarms.IsActive(AlarmId.SensorsDisagree));
        Assert.True(bench.Stands(AlarmId.SensorsDisagree));
        bench.Press(Button.Reset);
        Assert.False(bench.Stands(AlarmId.SensorsDisagree));
    }

    [Fact]
    public void Reset_ends_what_only_a_running_pump_can_show()
    {
        CoreBench bench = ByFlow(1_200_000).ToRunningDose();
        bench.Pulses(2);
        Assert.True(bench.Core.Alarms.IsActive(AlarmId.SensorsDisagree));
        bench.Press(Button.Reset);
        Assert.False(bench.Stands(AlarmId.SensorsDisagree));
        bench.Pulses(3);
        Assert.True(bench.Stands(AlarmId.SensorsDisagree));
    }

    [Fact]
    public void Pulses_without_pressure_are_a_failure_where_the_transmitter_guards_the_limit()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            Pressure(settings);
            settings[SettingField.PressureTransmitterFitted] = 1;
        }).ToRunningDose();
        bench.Pulses(2);
        Assert.Empty(bench.AlarmLines);
        bench.Pulses(1);
        Assert.Contains("sensors disagree by pressure 0", bench.Log);
        Assert.False(bench.Outputs.HealthyRelay);
        Assert.False(bench.Outputs.Warning);
        Assert.True(bench.Outputs.Pump);
        Assert.Equal(AlarmCategory.Failure, bench.Core.Alarms.CategoryOf(AlarmId.SensorsDisagree));
    }

    [Fact]
    public void Pulses_without_pressure_are_out_of_specification_where_a_switch_shows_it()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            Pressure(settings);
            settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Reached;
        }).ToRunningDose();
        bench.Pulses(3);
        Assert.True(bench.Stands(AlarmId.SensorsDisagree));
        Assert.True(bench.Outputs.HealthyRelay);
        Assert.True(bench.Outputs.Warning);
    }

    [Fact]
    public void Pressure_between_the_pulses_starts_the_count_anew()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            Pressure(settings);
            settings[SettingField.PressureTransmitterFitted] = 1;
        }).ToRunningDose();
        for (int round = 0; round < 3; round++)
            bench.Pulses(2).Pressure(20_000).Run(20).Pressure(0).Run(20);
        Assert.False(bench.Stands(AlarmId.SensorsDisagree));
    }

    [Fact]
    public void A_shaft_that_turns_on_belies_a_machine_said_to_stand_and_the_rest_counts()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.ShaftFitted] = 1;
            settings[SettingField.RunDownMs] = 20_000;
            settings[SettingField.RestOnlyWhileRunning] = 1;
        })
        { ShaftPulsesPerTick = 1 }.ToRest();
        bench.Inputs.MachineRunning = false;
        bench.Run(20_000);
        Assert.Empty(bench.AlarmLines);
        bench.Run(20);
        Assert.Contains("sensors disagree by shaft 0", bench.Log);
        Assert.True(bench.Stands(AlarmId.SensorsDisagree));
        bench.RunUntil(Phase.Dose, TestSettings.RestMs);
    }

    [Fact]
    public void A_shaft_that_runs_down_in_time_says_nothing()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.ShaftFitted] = 1;
            settings[SettingField.RunDownMs] = 20_000;
        })
        { ShaftPulsesPerTick = 1 }.ToRest();
        bench.Inputs.MachineRunning = false;
        bench.Run(15_000);
        bench.ShaftPulsesPerTick = 0;
        bench.Run(40_000);
        Assert.Empty(bench.AlarmLines);
        bench.ShaftPulsesPerTick = 1;
        bench.Run(15_000);
        Assert.Empty(bench.AlarmLines);
    }

    [Theory]
    [InlineData(-10_000, false)]
    [InlineData(-10_001, true)]
    [InlineData(425_001, true)]
    public void A_reading_no_working_transmitter_gives_is_a_lost_signal(int pressureMbar, bool lost)
    {
        // NAMUR NE 43 (from memory): below 3.6 mA and above 21 mA. At 400 bar for 20 mA: -10 bar and 425 bar.
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.PressureTransmitterFitted] = 1;
            settings[SettingField.PressureSpanMbar] = 400_000;
        }).ToRest();
        bench.Pressure(pressureMbar).Run(10);
        Assert.Equal(lost, bench.Stands(AlarmId.PressureSignalLost));
        Assert.Equal(!lost, bench.Outputs.HealthyRelay);
    }

    [Fact]
    public void Settings_that_cannot_be_compared_are_refused()
    {
        Refused(SettingField.PumpFlowMm3PerMinute, settings => settings[SettingField.DividerCycleMm3] = 1);
        Refused(SettingField.PumpRevolutionMm3, settings => settings[SettingField.DividerCycleMm3] = settings[SettingField.PumpRevolutionsFitted] = 1);
        Refused(SettingField.PulsesShowPressure, settings => settings[SettingField.PulsesShowPressure] = 1);
        Refused(SettingField.PressureSpanMbar, settings =>
        {
            settings[SettingField.PressureTransmitterFitted] = 1;
            settings[SettingField.PressureSpanMbar] = 249_999;
        });
        Refused(SettingField.RunDownMs, settings =>
        {
            settings[SettingField.ShaftFitted] = 1;
            settings[SettingField.RunDownMs] = 10_000;
        });
    }

    private static void Refused(int field, System.Action<Settings> change)
    {
        var check = new SettingsCheck();
        Assert.False(check.Accepts(TestSettings.Make(change), false));
        Assert.Equal(1, check.Count);
        Assert.Equal(field, check[0].Field);
    }

    private static CoreBench ByFlow(int flow) => new(settings => Flow(settings, flow));

    private static void Flow(Settings settings, int flow)
    {
        settings[SettingField.DoseEdges] = 20;
        settings[SettingField.PumpFlowMm3PerMinute] = flow;
        settings[SettingField.DividerCycleMm3] = 3_000;
        settings[SettingField.VolumeWindow] = 1;
    }

    private static void Pressure(Settings settings)
    {
        settings[SettingField.DoseEdges] = 20;
        settings[SettingField.PulsesShowPressure] = 1;
    }
}
