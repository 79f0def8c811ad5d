using System;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>What is shown of an alarm, by the states of ISA-18.2 / IEC 62682 (from memory), and what that never changes.</summary>
public sealed class LifecycleTests
{
    public static TheoryData<AlarmId> Ids() => new(Enum.GetValues<AlarmId>());

    [Fact]
    public void A_latching_alarm_goes_through_its_states()
    {
        CoreBench bench = new CoreBench().ToRest();
        Assert.Equal(AlarmState.Normal, Empty(bench));
        bench.Empty(true);
        Assert.Equal(AlarmState.Unacknowledged, Empty(bench));
        bench.Press(Button.Acknowledge);
        Assert.Equal(AlarmState.Acknowledged, Empty(bench));
        bench.Empty(false);
        Assert.Equal(AlarmState.LatchedAcknowledged, Empty(bench));
        bench.Empty(true);
        Assert.Equal(AlarmState.Unacknowledged, Empty(bench));
        bench.Empty(false);
        Assert.Equal(AlarmState.LatchedUnacknowledged, Empty(bench));
        bench.Press(Button.Reset);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, Empty(bench));
        bench.Press(Button.Acknowledge);
        Assert.Equal(AlarmState.Normal, Empty(bench));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Hiding_an_alarm_changes_annunciation_only(AlarmId id)
    {
        foreach (bool shelve in new[] { true, false })
        {
            AlarmCase one = AlarmCase.All[id];
            CoreBench shown = one.Start();
            CoreBench hidden = one.Start();
            Hide(hidden, id, shelve);
            one.Cause(shown);
            one.Cause(hidden);
            Assert.Equal(shelve ? AlarmState.Shelved : AlarmState.OutOfService, hidden.Core.Alarms.StateOf(id));
            Same(shown, hidden);
            Assert.False(hidden.Core.Alarms.IsUnseen(id));
            Assert.False(hidden.Outputs.Warning);
            Assert.False(hidden.Run(300).Outputs.Lamp);
            shown.Run(300);
            one.End(shown);
            one.End(hidden);
            Same(shown, hidden);
            shown.Press(Button.Reset);
            hidden.Press(Button.Reset);
            Same(shown, hidden);
        }
    }

    [Theory]
    [InlineData(false, AlarmState.Normal)]
    [InlineData(true, AlarmState.Unacknowledged)]
    public void Shelving_ends_by_itself_and_the_alarm_is_what_its_condition_says(bool low, AlarmState expected)
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.RestMs] = 400_000).ToRest();
        Assert.True(bench.Core.Shelve(AlarmId.ReservoirLow, 10_000));
        bench.Inputs.LevelLow = low;
        bench.Run(9_990);
        Assert.Equal(AlarmState.Shelved, bench.Core.Alarms.StateOf(AlarmId.ReservoirLow));
        Assert.Equal(10, bench.Core.NextDeadlineMs);
        bench.Run(10);
        Assert.Equal(expected, bench.Core.Alarms.StateOf(AlarmId.ReservoirLow));
        Assert.Equal(low, bench.Outputs.Warning);
        Assert.Contains("shelved reservoir-low 10000", bench.Log);
        Assert.Contains("unshelved reservoir-low", bench.Log);
    }

    [Fact]
    public void A_latch_is_the_present_condition_when_an_alarm_is_shown_again()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Core.SetOutOfService(AlarmId.ReservoirEmpty, true);
        bench.Empty(true).Empty(false);
        Assert.True(bench.Core.Alarms.IsLatched(AlarmId.ReservoirEmpty));
        bench.Core.SetOutOfService(AlarmId.ReservoirEmpty, false);
        bench.Run(10);
        Assert.Equal(AlarmState.LatchedUnacknowledged, Empty(bench));
    }

    [Fact]
    public void Shelving_is_limited_and_never_of_what_is_out_of_service()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.ShelveLongestMs] = 60_000).ToRest();
        Assert.False(bench.Core.Shelve(AlarmId.ReservoirLow, 0));
        Assert.False(bench.Core.Shelve(AlarmId.ReservoirLow, 60_001));
        Assert.True(bench.Core.Shelve(AlarmId.ReservoirLow, 60_000));
        bench.Core.Unshelve(AlarmId.ReservoirLow);
        Assert.Equal(AlarmState.Normal, bench.Core.Alarms.StateOf(AlarmId.ReservoirLow));
        bench.Core.SetOutOfService(AlarmId.ReservoirLow, true);
        Assert.False(bench.Core.Shelve(AlarmId.ReservoirLow, 1_000));
        bench.Run(10);
        Assert.Contains("out of service reservoir-low", bench.Log);
    }

    [Fact]
    public void Taking_a_shelved_alarm_out_of_service_ends_the_shelving()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Core.Shelve(AlarmId.ReservoirLow, 1_000);
        bench.Core.SetOutOfService(AlarmId.ReservoirLow, true);
        bench.Run(2_000);
        Assert.Equal(AlarmState.OutOfService, bench.Core.Alarms.StateOf(AlarmId.ReservoirLow));
        bench.Core.SetOutOfService(AlarmId.ReservoirLow, false);
        bench.Run(10);
        Assert.Equal(AlarmState.Normal, bench.Core.Alarms.StateOf(AlarmId.ReservoirLow));
        Assert.Contains("in service reservoir-low", bench.Log);
    }

    [Fact]
    public void A_consequence_is_suppressed_and_that_is_told()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Inputs.LevelLow = true;
        bench.Run(1_000);
        Assert.Equal(AlarmState.Unacknowledged, Low(bench));
        Assert.True(bench.Outputs.Warning);
        bench.Empty(true);
        Assert.Equal(AlarmState.SuppressedByDesign, Low(bench));
        Assert.False(bench.Outputs.Warning);
        Assert.Contains("suppressed reservoir-low", bench.Log);
        bench.Empty(false).Press(Button.Reset);
        Assert.Equal(AlarmState.Unacknowledged, Low(bench));
        Assert.True(bench.Outputs.Warning);
        Assert.Contains("shown again reservoir-low", bench.Log);
    }

    [Fact]
    public void A_shelved_cause_hides_no_consequence()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Core.Shelve(AlarmId.ReservoirEmpty, 60_000);
        bench.Inputs.LevelLow = true;
        bench.Empty(true);
        Assert.Equal(AlarmState.Unacknowledged, Low(bench));
        Assert.True(bench.Outputs.Warning);
    }

    [Fact]
    public void A_dose_that_stalls_for_want_of_lubricant_shows_one_alarm()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.LevelEmptyFitted] = 0).ToStalled();
        Assert.Equal(AlarmState.Unacknowledged, bench.Core.Alarms.StateOf(AlarmId.DividerStalled));
        bench = new CoreBench(settings =>
        {
            settings[SettingField.PressureTransmitterFitted] = 1;
            settings[SettingField.PressureMissingMs] = 20_000;
        }).ToDose();
        bench.RunUntil(() => bench.Stands(AlarmId.LinePressureMissing), 30_000);
        Assert.False(bench.Stands(AlarmId.DividerStalled));
    }

    [Fact]
    public void Nothing_suppresses_that_lubrication_is_overdue()
    {
        Assert.Equal(0, AlarmTable.Spec(AlarmId.LubricationOverdue).Causes);
        CoreBench bench = new CoreBench(settings => settings[SettingField.OverdueMs] = TestSettings.RestMs + 1_000).ToRest();
        bench.Empty(true).Run(70_000);
        Assert.Equal(AlarmState.Unacknowledged, bench.Core.Alarms.StateOf(AlarmId.LubricationOverdue));
    }

    [Fact]
    public void First_up_is_the_first_until_nothing_stands_or_waits()
    {
        CoreBench bench = new CoreBench().ToRest();
        Assert.Equal(-1, bench.Core.Alarms.FirstUp);
        bench.Inputs.LevelLow = true;
        bench.Run(1_000).Empty(true);
        Assert.Equal((int)AlarmId.ReservoirLow, bench.Core.Alarms.FirstUp);
        bench.Inputs.LevelLow = false;
        bench.Run(1_000).Press(Button.Acknowledge);
        Assert.Equal((int)AlarmId.ReservoirLow, bench.Core.Alarms.FirstUp);
        bench.Empty(false).Press(Button.Reset);
        Assert.Equal(-1, bench.Core.Alarms.FirstUp);
        bench.Empty(true);
        Assert.Equal((int)AlarmId.ReservoirEmpty, bench.Core.Alarms.FirstUp);
    }

    [Fact]
    public void What_is_hidden_and_what_was_first_survive_a_power_cut()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.RestMs] = 400_000).ToRest();
        bench.Inputs.LevelLow = true;
        bench.Run(1_000);
        bench.Core.Shelve(AlarmId.ReservoirLow, 60_000);
        bench.Core.SetOutOfService(AlarmId.LubricantCold, true);
        bench.Run(10_000).CutPower();
        Assert.Equal(AlarmState.Shelved, Low(bench));
        Assert.Equal(AlarmState.OutOfService, bench.Core.Alarms.StateOf(AlarmId.LubricantCold));
        Assert.Equal((int)AlarmId.ReservoirLow, bench.Core.Alarms.FirstUp);
        Assert.Equal(AlarmState.Shelved, Low(bench.Run(49_990)));
        Assert.NotEqual(AlarmState.Shelved, Low(bench.Run(20)));
    }

    private static void Hide(CoreBench bench, AlarmId id, bool shelve)
    {
        if (shelve)
            Assert.True(bench.Core.Shelve(id, 600_000));
        else
            bench.Core.SetOutOfService(id, true);
    }

    private static void Same(CoreBench shown, CoreBench hidden)
    {
        Assert.Equal(shown.Phase, hidden.Phase);
        Assert.Equal(shown.Outputs.Pump, hidden.Outputs.Pump);
        Assert.Equal(shown.Outputs.HealthyRelay, hidden.Outputs.HealthyRelay);
        Assert.Equal(shown.Standing(), hidden.Standing());
        Assert.Equal(shown.Core.Alarms.InterlockStands, hidden.Core.Alarms.InterlockStands);
    }

    private static AlarmState Empty(CoreBench bench) => bench.Core.Alarms.StateOf(AlarmId.ReservoirEmpty);

    private static AlarmState Low(CoreBench bench) => bench.Core.Alarms.StateOf(AlarmId.ReservoirLow);
}
