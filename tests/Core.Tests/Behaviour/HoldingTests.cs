using Xunit;

namespace LubeController.Core.Tests;

/// <summary>A low supply holds the pump and is believed nothing; and the output test, part by part.</summary>
public sealed class HoldingTests
{
    [Fact]
    public void A_held_dose_waits_with_its_timers_and_goes_on()
    {
        CoreBench bench = Measured().ToDose();
        bench.Pulses(1).Run(19_000);
        Supply(bench, 18_000).Run(100_000);
        Assert.Equal(Phase.Dose, bench.Phase);
        Assert.False(bench.Outputs.Pump);
        Assert.True(bench.Outputs.Warning);
        Assert.True(bench.Outputs.HealthyRelay);
        Supply(bench, 24_000);
        Assert.True(bench.Outputs.Pump);
        bench.Run(500).Pulses(2);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.False(bench.Stands(AlarmId.DividerStalled));
        Assert.False(bench.Stands(AlarmId.SupplyLow));
    }

    [Fact]
    public void A_held_dose_that_stalls_is_alarmed_within_its_bound_of_pump_on_time()
    {
        CoreBench bench = Measured().ToDose();
        bench.Pulses(1).Run(19_000);
        Supply(bench, 18_000).Run(100_000);
        Supply(bench, 24_000);
        int took = bench.RunUntil(() => bench.Stands(AlarmId.DividerStalled), 30_000);
        Assert.InRange(took, 5_000, TestSettings.AllowanceMs + 1_500);
    }

    [Fact]
    public void Edges_under_a_low_supply_are_none_and_the_level_after_it_is_a_baseline()
    {
        CoreBench bench = Measured().ToDose();
        Supply(bench, 18_000).Pulses(3);
        bench.Switch(true).Run(100);
        Supply(bench, 24_000).Run(1_000);
        Assert.Empty(bench.PulseLines);
        bench.Switch(false).Run(200).Pulse();
        Assert.Single(bench.PulseLines);
    }

    [Fact]
    public void Hysteresis_keeps_a_supply_that_hovers_low()
    {
        CoreBench bench = Measured().ToRest();
        Supply(bench, 19_200);
        Assert.False(bench.Stands(AlarmId.SupplyLow));
        Supply(bench, 19_199);
        Assert.True(bench.Stands(AlarmId.SupplyLow));
        Supply(bench, 19_999);
        Assert.True(bench.Stands(AlarmId.SupplyLow));
        Supply(bench, 20_000);
        Assert.False(bench.Stands(AlarmId.SupplyLow));
    }

    [Fact]
    public void The_output_test_moves_relay_warning_and_lamp_in_four_parts_and_never_the_pump()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.OutputTestMs] = 20_000).ToRest();
        bench.Inputs.Stop = true;
        bench.Run(20);
        bench.Inputs.Stop = false;
        bench.Run(20).Set(Button.OutputTest, true);
        bench.RunUntil(Phase.OutputTest, 100);
        string parts = "";
        for (int part = 0; part < 4; part++)
        {
            bench.Run(2_500);
            Outputs outputs = bench.Outputs;
            parts += (outputs.HealthyRelay ? "R" : "-") + (outputs.Warning ? "W" : "-") + (outputs.Lamp ? "L" : "-") + (outputs.Pump ? "P" : "-") + " ";
            bench.Run(2_500);
        }

        Assert.Equal("---- RW-- R-L- RWL- ", parts);
        Assert.Equal(Phase.Stopped, bench.Phase);
        Assert.True(bench.Outputs.Warning);
    }

    [Fact]
    public void A_new_dose_ending_switch_leaves_no_failed_phase_without_a_failure()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.SwitchCount] = 2;
            settings[SettingField.WitnessPulses] = 0;
        }).ToDose().Chatter(0);
        Assert.Equal(Phase.Failed, bench.Phase);
        Settings other = TestSettings.Make(settings =>
        {
            settings[SettingField.SwitchCount] = 2;
            settings[SettingField.WitnessPulses] = 0;
            settings[SettingField.DoseEndingSwitch] = 2;
        });
        Assert.True(bench.Core.UseSettings(other));
        bench.Run(20);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.False(bench.Outputs.Pump);
        Assert.True(bench.Stands(AlarmId.CycleSwitchFault));
    }

    [Fact]
    public void An_interlock_in_prime_from_stopped_leads_back_to_stopped()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Inputs.Stop = true;
        bench.Run(20);
        bench.Inputs.Stop = false;
        bench.Run(20).Hold(Button.Prime);
        Assert.Equal(Phase.Prime, bench.Phase);
        bench.Empty(true);
        Assert.Equal(Phase.Stopped, bench.Phase);
        Assert.False(bench.Outputs.Pump);
        bench.Set(Button.Prime, false).Empty(false).Press(Button.Reset);
        Assert.Equal(Phase.Stopped, bench.Phase);
    }

    private static CoreBench Measured() => new(settings =>
    {
        settings[SettingField.SupplyMeasured] = 1;
        settings[SettingField.RestMs] = 400_000;
    });

    private static CoreBench Supply(CoreBench bench, int millivolts)
    {
        bench.Inputs.SupplyMv = millivolts;
        return bench.Run(10);
    }
}
