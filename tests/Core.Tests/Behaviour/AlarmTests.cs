using System;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>The life of each alarm: raised, acknowledged, ended, reset, raised again, and what it does to the outputs.</summary>
public sealed class AlarmTests
{
    public static TheoryData<AlarmId> Ids() => new(Enum.GetValues<AlarmId>());

    public static TheoryData<AlarmId> Latching() => new(Enum.GetValues<AlarmId>().Where(id => AlarmTable.Spec(id).Latches));

    [Theory]
    [MemberData(nameof(Ids))]
    public void An_alarm_is_raised_once_and_acts_as_its_row_says(AlarmId id)
    {
        AlarmCase one = AlarmCase.All[id];
        CoreBench bench = one.Start();
        Assert.Equal("", bench.Standing());
        Assert.True(bench.Outputs.HealthyRelay);
        Assert.False(bench.Outputs.Warning);
        Assert.False(bench.Outputs.Lamp);
        one.Cause(bench);
        Assert.Equal(AlarmTable.Spec(id).Name, bench.Standing());
        Assert.Equal(["+" + AlarmTable.Spec(id).Name], bench.AlarmLines);
        Assert.Equal(one.Phase, bench.Phase);
        Assert.Equal(AlarmTable.Spec(id).Action is AlarmAction.None or AlarmAction.Holding, bench.Phase != Phase.Failed);
        Assert.Equal(one.Phase == Phase.Dose, bench.Outputs.Pump);
        bool failure = AlarmTable.Spec(id).Category == AlarmCategory.Failure;
        Assert.Equal(!failure, bench.Outputs.HealthyRelay);
        Assert.Equal(!failure, bench.Outputs.Warning);
        Assert.True(bench.Core.Alarms.IsUnseen(id));
        Assert.True(bench.Core.Alarms.IsActive(id));
        Assert.Equal(AlarmTable.Spec(id).Latches, bench.Core.Alarms.IsLatched(id));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Acknowledge_makes_the_lamp_steady_and_changes_nothing_else(AlarmId id)
    {
        AlarmCase one = AlarmCase.All[id];
        CoreBench bench = one.Start();
        one.Cause(bench);
        bool healthy = bench.Outputs.HealthyRelay;
        bench.Press(Button.Acknowledge);
        Assert.False(bench.Core.Alarms.AnyUnseen);
        Assert.True(bench.Stands(id));
        Assert.Equal(healthy, bench.Outputs.HealthyRelay);
        for (int tick = 0; tick < 60; tick++)
            Assert.True(bench.Run(10).Outputs.Lamp);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void When_the_condition_ends_only_a_latching_alarm_stands_on(AlarmId id)
    {
        AlarmCase one = AlarmCase.All[id];
        CoreBench bench = one.Start();
        one.Cause(bench);
        bench.ClearLog();
        one.End(bench);
        Assert.Equal(AlarmTable.Spec(id).Latches, bench.Stands(id));
        bool held = AlarmTableTests.EndedByReset(id);
        Assert.Equal(held, bench.Core.Alarms.IsActive(id));
        Assert.Equal(held ? [] : ["-" + AlarmTable.Spec(id).Name], bench.AlarmLines);
        Assert.True(bench.Core.Alarms.IsUnseen(id));
        if (!AlarmTable.Spec(id).Latches)
            Assert.True(bench.Outputs.HealthyRelay && !bench.Outputs.Warning);
    }

    [Theory]
    [MemberData(nameof(Latching))]
    public void Reset_clears_the_latch_once_the_condition_has_ended(AlarmId id)
    {
        AlarmCase one = AlarmCase.All[id];
        CoreBench bench = one.Start();
        one.Cause(bench);
        one.End(bench);
        bench.ClearLog();
        bench.Press(Button.Reset);
        Assert.Equal("", bench.Standing());
        Assert.Contains("~" + AlarmTable.Spec(id).Name, bench.Log);
        Assert.True(bench.Outputs.HealthyRelay);
        Assert.False(bench.Outputs.Warning);
        Assert.Equal(one.Phase == Phase.Failed ? Phase.Rest : one.Phase, bench.Phase);
        Assert.True(bench.Core.Alarms.IsUnseen(id));
        bench.Press(Button.Acknowledge);
        Assert.False(bench.Run(300).Outputs.Lamp);
    }

    [Theory]
    [InlineData(AlarmId.LineOverpressure)]
    [InlineData(AlarmId.ReservoirEmpty)]
    [InlineData(AlarmId.SettingsInvalid)]
    [InlineData(AlarmId.CycleSwitchFault)]
    [InlineData(AlarmId.PulseWhileIdle)]
    [InlineData(AlarmId.PulseTooFast)]
    [InlineData(AlarmId.LubricationOverdue)]
    [InlineData(AlarmId.ShaftSignalLost)]
    [InlineData(AlarmId.ReservoirLow)]
    public void Reset_does_nothing_to_an_alarm_whose_condition_lasts(AlarmId id)
    {
        AlarmCase one = AlarmCase.All[id];
        CoreBench bench = one.Start();
        one.Cause(bench);
        bench.ClearLog();
        bench.Press(Button.Reset);
        Assert.True(bench.Stands(id));
        Assert.Equal(["Reset obeyed"], bench.Log);
        Assert.Equal(one.Phase, bench.Phase);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void An_alarm_that_comes_back_is_raised_and_waits_to_be_acknowledged_again(AlarmId id)
    {
        AlarmCase one = AlarmCase.All[id];
        CoreBench bench = one.Start();
        one.Cause(bench);
        bench.Press(Button.Acknowledge);
        one.End(bench);
        bench.Press(Button.Reset);
        Assert.Equal("", bench.Standing());
        bench.ClearLog();
        if (one.Phase == Phase.Failed && AlarmTable.Spec(id).Action == AlarmAction.DoseEnding)
            bench.RunUntil(Phase.Dose, 20_000);
        one.Cause(bench);
        Assert.Contains("+" + AlarmTable.Spec(id).Name, bench.Log);
        Assert.True(bench.Core.Alarms.IsUnseen(id));
    }

    [Theory]
    [InlineData(AlarmId.LineOverpressure)]
    [InlineData(AlarmId.ReservoirEmpty)]
    [InlineData(AlarmId.SettingsInvalid)]
    [InlineData(AlarmId.CycleSwitchFault)]
    public void A_latched_alarm_that_recurs_before_reset_waits_to_be_acknowledged_again(AlarmId id)
    {
        AlarmCase one = AlarmCase.All[id];
        CoreBench bench = one.Start();
        one.Cause(bench);
        one.End(bench);
        bench.Press(Button.Acknowledge);
        Assert.False(bench.Core.Alarms.IsUnseen(id));
        one.Cause(bench);
        Assert.True(bench.Core.Alarms.IsUnseen(id));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void An_alarm_that_stands_survives_a_cut(AlarmId id)
    {
        AlarmCase one = AlarmCase.All[id];
        CoreBench bench = one.Start();
        one.Cause(bench);
        if (id == AlarmId.SettingsInvalid)
            bench.Settings[SettingField.DoseEdges] = 0;
        bench.CutPower();
        bool provedAnew = id is AlarmId.ShaftSignalLost or AlarmId.RuleFault;
        if (!provedAnew)
            Assert.True(bench.Stands(id));
        if (AlarmTable.Spec(id).Latches)
            Assert.True(bench.Core.Alarms.IsLatched(id));
    }

    [Theory]
    [InlineData(AlarmId.LineOverpressure, 0)]
    [InlineData(AlarmId.ReservoirEmpty, TestSettings.LevelMs)]
    [InlineData(AlarmId.LubricationOverdue, 0)]
    [InlineData(AlarmId.ReservoirLow, TestSettings.LevelMs)]
    public void A_delay_on_holds_an_alarm_back_and_its_condition_must_last(AlarmId id, int debounceMs)
    {
        CoreBench bench = DelayBench(id, on: 3_000, off: 0);
        Condition(bench, id, true);
        bench.Scan().Run(2_400);
        Assert.False(bench.Stands(id));
        Condition(bench, id, false);
        bench.Run(debounceMs + 100);
        Condition(bench, id, true);
        bench.Scan().Run(debounceMs + 2_990);
        Assert.False(bench.Stands(id));
        bench.Run(20);
        Assert.True(bench.Stands(id));
    }

    [Theory]
    [InlineData(AlarmId.LineOverpressure, 0)]
    [InlineData(AlarmId.ReservoirEmpty, TestSettings.LevelMs)]
    [InlineData(AlarmId.ReservoirLow, TestSettings.LevelMs)]
    public void A_delay_off_keeps_an_alarm_active_after_its_condition(AlarmId id, int debounceMs)
    {
        CoreBench bench = DelayBench(id, on: 0, off: 4_000);
        Condition(bench, id, true);
        bench.Scan().Run(debounceMs + 10);
        Assert.True(bench.Core.Alarms.IsActive(id));
        Condition(bench, id, false);
        bench.Scan().Run(debounceMs + 2_000).Press(Button.Reset).Run(1_890);
        Assert.True(bench.Core.Alarms.IsActive(id));
        Assert.DoesNotContain(bench.AlarmLines, line => line[0] is '-' or '~');
        bench.Run(10);
        Assert.False(bench.Core.Alarms.IsActive(id));
    }

    [Fact]
    public void A_latch_is_not_cleared_while_its_condition_is_back_though_the_delay_on_has_not_run_out()
    {
        CoreBench bench = DelayBench(AlarmId.ReservoirEmpty, on: 3_000, off: 0);
        bench.Empty(true).Run(4_000).Empty(false);
        Assert.True(bench.Core.Alarms.IsLatched(AlarmId.ReservoirEmpty));
        bench.Empty(true).Press(Button.Reset);
        Assert.Equal(Phase.Failed, bench.Phase);
        Assert.True(bench.Core.Alarms.IsLatched(AlarmId.ReservoirEmpty));
    }

    [Fact]
    public void A_condition_that_ends_just_as_a_dose_is_completed_is_not_raised_by_that()
    {
        CoreBench bench = new CoreBench(settings =>
        {
            settings[SettingField.PressureTransmitterFitted] = 1;
            settings[SettingField.DoseEdges] = 1;
            settings[SettingField.OfSwitch(0, SettingField.SwitchDebounceMs)] = 0;
            settings[SettingField.DelayOn(AlarmId.LineOverpressure)] = 1_000;
        }).ToDose();
        int over = bench.Settings[SettingField.PressureLimitMbar] + 1;
        bench.Pressure(over).Run(1_000);
        Assert.Equal("", bench.Standing());
        bench.Pressure(0).Switch(true).Run(10);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Empty(bench.AlarmLines);
    }

    [Fact]
    public void The_lamp_flashes_with_a_quarter_of_a_second_on_and_off()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Inputs.LevelLow = true;
        bench.RunUntil(() => bench.Stands(AlarmId.ReservoirLow), 1_000);
        for (int tick = 0; tick < 150; tick++)
        {
            Assert.Equal(tick % 50 < 25, bench.Outputs.Lamp);
            bench.Run(10);
        }
    }

    [Fact]
    public void The_lamp_flashes_on_for_an_alarm_that_has_ended_until_it_is_acknowledged()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Inputs.LevelLow = true;
        bench.Run(1_000);
        bench.Inputs.LevelLow = false;
        bench.Run(1_000);
        Assert.Equal("", bench.Standing());
        int lit = 0;
        for (int tick = 0; tick < 100; tick++)
            lit += bench.Run(10).Outputs.Lamp ? 1 : 0;
        Assert.Equal(50, lit);
        bench.Press(Button.Acknowledge);
        Assert.False(bench.Run(10).Outputs.Lamp);
    }

    [Fact]
    public void Pulses_that_come_while_an_idle_alarm_is_active_prolong_it_without_raising_it_again()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.RestMs] = 400_000).ToRest().Run(6_000);
        bench.Pulse().Run(40_000).Pulse().Run(59_000);
        Assert.True(bench.Core.Alarms.IsActive(AlarmId.PulseWhileIdle));
        bench.Run(1_000);
        Assert.Equal(["+pulse-while-idle", "-pulse-while-idle"], bench.AlarmLines);
    }

    private static CoreBench DelayBench(AlarmId id, int on, int off) => new CoreBench(settings =>
    {
        settings[SettingField.PressureTransmitterFitted] = 1;
        settings[SettingField.ShaftFitted] = 1;
        settings[SettingField.OverdueMs] = TestSettings.RestMs + 1;
        settings[SettingField.DelayOn(id)] = on;
        settings[SettingField.DelayOff(id)] = off;
    })
    { ShaftPulsesPerTick = 1 }.ToRest();

    private static void Condition(CoreBench bench, AlarmId id, bool present)
    {
        switch (id)
        {
            case AlarmId.LineOverpressure: bench.Inputs.PressureMbar = present ? 300_000 : 0; break;
            case AlarmId.ReservoirEmpty: bench.Inputs.LevelEmpty = present; break;
            case AlarmId.ReservoirLow: bench.Inputs.LevelLow = present; break;
            default: Overdue(bench, present); break;
        }
    }

    /// <summary>Overdue begins one millisecond after the rest and ends with a dose.</summary>
    private static void Overdue(CoreBench bench, bool present)
    {
        if (!present)
        {
            bench.Pulses(3);
            return;
        }

        bench.RunUntil(Phase.Dose, 70_000);
        bench.Run(10);
    }
}
