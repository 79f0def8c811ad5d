using System;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>What a dose by pressure makes of a switch, of a transmitter, and of both where they disagree.</summary>
public sealed class PressureWitnessTests
{
    [Fact]
    public void A_pressure_switch_tells_reached_and_vented_after_its_debounce()
    {
        CoreBench bench = Dosing(BySwitch);
        bench.Inputs.PressureSwitch = true;
        bench.Scan().Run(40);
        Assert.Equal(DoseStep.Pressurise, bench.Core.DoseStep);
        bench.Run(10);
        Assert.Equal(DoseStep.Hold, bench.Core.DoseStep);
        Assert.Equal(TestSettings.HoldMs, bench.RunUntil(() => !bench.Outputs.Pump, 60_000));
        bench.Inputs.PressureSwitch = false;
        bench.Scan();
        Assert.Equal(50 + TestSettings.VentMs, bench.RunUntil(Phase.Rest, 60_000));
        Assert.Equal(1, bench.Core.DosesCompleted);
    }

    [Fact]
    public void A_pressure_switch_that_bounces_is_neither_reached_nor_vented()
    {
        CoreBench bench = Dosing(BySwitch);
        for (int bounce = 0; bounce < 10; bounce++)
        {
            bench.Inputs.PressureSwitch = bounce % 2 == 0;
            bench.Run(20);
        }

        Assert.Equal(DoseStep.Pressurise, bench.Core.DoseStep);
    }

    [Fact]
    public void A_pressure_switch_that_opens_on_pressure_and_whose_wire_is_broken_keeps_the_pump_off()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            BySwitch(settings);
            settings[SettingField.PressureSwitchInverted] = 1;
        });
        bench.RunUntil(Phase.Dose, 20_000);
        Assert.Equal(TestSettings.VentLimitMs, bench.RunUntil(Phase.Failed, 60_000));
        Assert.Equal(["rest > dose", "step recharge 0", "+line-not-vented", "dose > failed"], bench.Log);
    }

    [Fact]
    public void A_limit_switch_beside_a_transmitter_tells_nothing_of_reached_or_vented()
    {
        CoreBench bench = Dosing(settings => settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Limit);
        bench.PressureCycle();
        Assert.Equal(1, bench.Core.DosesCompleted);
        bench.Inputs.PressureSwitch = true;
        bench.Run(100);
        Assert.Equal("line-overpressure", bench.Standing());
    }

    [Theory]
    [InlineData(true, 0)]
    [InlineData(false, 12_000)]
    public void With_switch_and_transmitter_one_alone_does_not_show_that_pressure_is_reached(bool on, int pressureMbar)
    {
        CoreBench bench = Dosing(Both);
        bench.Inputs.PressureSwitch = on;
        bench.Pressure(pressureMbar).RunUntil(Phase.Failed, TestSettings.MissingMs);
        Assert.Equal(["+line-pressure-missing", "dose > failed"], bench.Log);
    }

    [Theory]
    [InlineData(true, 0)]
    [InlineData(false, 12_000)]
    public void With_switch_and_transmitter_one_alone_does_not_show_that_the_line_is_vented(bool on, int pressureMbar)
    {
        CoreBench bench = Dosing(Both);
        bench.Inputs.PressureSwitch = true;
        bench.Pressure(12_000).RunUntil(() => bench.Core.DoseStep == DoseStep.Vent, 20_000);
        bench.Inputs.PressureSwitch = on;
        bench.Pressure(pressureMbar).RunUntil(Phase.Failed, TestSettings.VentLimitMs);
        Assert.Equal(["step hold 0", "step vent 0", "+line-not-vented", "dose > failed"], bench.Log);
    }

    [Fact]
    public void With_switch_and_transmitter_both_make_a_dose()
    {
        CoreBench bench = Dosing(Both);
        bench.Inputs.PressureSwitch = true;
        bench.Pressure(12_000).RunUntil(() => bench.Core.DoseStep == DoseStep.Vent, 20_000);
        bench.Inputs.PressureSwitch = false;
        bench.Pressure(0).RunUntil(Phase.Rest, TestSettings.VentMs + 100);
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void In_the_other_dose_modes_either_shows_that_pressure_is_reached()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            Both(settings);
            settings[SettingField.DoseMode] = (int)DoseMode.RunTime;
        }).ToRunningDose();
        bench.Inputs.PressureSwitch = true;
        bench.Run(20_000);
        Assert.Equal("", bench.Standing());
    }

    private static void BySwitch(Settings settings)
    {
        TestSettings.ByPressure(settings);
        settings[SettingField.PressureTransmitterFitted] = 0;
        settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Reached;
    }

    private static void Both(Settings settings)
    {
        BySwitch(settings);
        settings[SettingField.PressureTransmitterFitted] = 1;
    }

    private static CoreBench Dosing(Action<Settings> more)
    {
        CoreBench bench = new CoreBench(settings =>
        {
            TestSettings.ByPressure(settings);
            more(settings);
        }).ToRunningDose();
        Assert.Equal(DoseStep.Pressurise, bench.Core.DoseStep);
        return bench;
    }
}
