using Xunit;

namespace LubeController.Core.Tests;

/// <summary>What is long known, or over, hides nothing that is new.</summary>
public sealed class NotHiddenTests
{
    [Fact]
    public void A_cause_of_which_only_the_latch_is_left_suppresses_nothing_new()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.PressureTransmitterFitted] = 1;
            settings[SettingField.PressureSpanMbar] = 400_000;
            settings[SettingField.PressureMissingMs] = TestSettings.MissingMs;
        }).ToRest();
        bench.Pressure(-100_000).Run(1_000).Pressure(0).Run(1_000).Press(Button.Acknowledge);
        Assert.Equal(AlarmState.LatchedAcknowledged, bench.Core.Alarms.StateOf(AlarmId.PressureSignalLost));
        bench.Press(Button.DoseNow).RunUntil(() => bench.Stands(AlarmId.LinePressureMissing), 20_000);
        Assert.Equal(AlarmState.Unacknowledged, bench.Core.Alarms.StateOf(AlarmId.LinePressureMissing));
    }

    [Fact]
    public void A_suppressed_alarm_that_comes_anew_after_its_cause_ended_is_shown()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Empty(true);
        bench.Inputs.LevelLow = true;
        bench.Run(1_000);
        Assert.Equal(AlarmState.SuppressedByDesign, bench.Core.Alarms.StateOf(AlarmId.ReservoirLow));
        bench.Empty(false);
        Assert.Equal(AlarmState.SuppressedByDesign, bench.Core.Alarms.StateOf(AlarmId.ReservoirLow));
        bench.Inputs.LevelLow = false;
        bench.Run(1_000);
        bench.Inputs.LevelLow = true;
        bench.Run(1_000);
        Assert.Equal(AlarmState.Unacknowledged, bench.Core.Alarms.StateOf(AlarmId.ReservoirLow));
    }

    [Fact]
    public void Scans_that_stay_late_stay_alarmed_after_a_reset()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Inputs.ScanLate = true;
        bench.Run(bench.Settings[SettingField.DelayOff(AlarmId.ScanOverrun)] + 100).Press(Button.Reset);
        Assert.True(bench.Core.Alarms.IsActive(AlarmId.ScanOverrun));
        Assert.False(bench.Outputs.HealthyRelay);
        bench.Inputs.ScanLate = false;
        bench.Run(bench.Settings[SettingField.DelayOff(AlarmId.ScanOverrun)] + 100).Press(Button.Reset);
        Assert.Equal("", bench.Standing());
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_was_acknowledged_or_is_out_of_service_is_not_first_before_what_comes_later(bool outOfService)
    {
        CoreBench bench = new CoreBench().ToRest();
        if (outOfService)
            bench.Core.SetOutOfService(AlarmId.ReservoirLow, true);
        bench.Inputs.LevelLow = true;
        bench.Run(1_000).Press(Button.Acknowledge);
        Assert.Equal(outOfService ? -1 : (int)AlarmId.ReservoirLow, bench.Core.Alarms.FirstUp);
        bench.Empty(true);
        Assert.Equal((int)AlarmId.ReservoirEmpty, bench.Core.Alarms.FirstUp);
    }

    [Fact]
    public void Running_time_without_shaft_pulses_adds_up_over_power_cuts()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.ShaftFitted] = 1) { ShaftPulsesPerTick = 1 }.ToRest();
        bench.ShaftPulsesPerTick = 0;
        int lostMs = bench.Settings[SettingField.ShaftLostMs];
        bench.Run(lostMs - 5_000).CutPower();
        Assert.Equal(5_000, bench.RunUntil(() => bench.Stands(AlarmId.ShaftSignalLost), lostMs));
    }

    [Fact]
    public void Pump_on_time_without_a_revolution_adds_up_over_short_doses()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.DoseMode] = (int)DoseMode.RunTime;
            settings[SettingField.DoseRunMs] = 4_000;
            settings[SettingField.SwitchCount] = 0;
            settings[SettingField.PumpRevolutionsFitted] = 1;
            settings[SettingField.RevolutionMissingMs] = 10_000;
        });
        bench.RunUntil(() => bench.Stands(AlarmId.PumpOverload), 4 * TestSettings.RestMs);
        Assert.Equal(2, bench.Core.DosesCompleted);
        Assert.Equal(Phase.Failed, bench.Phase);
    }
}
