using System;
using System.Linq;
using LubeController.Core;
using Xunit;

namespace LubeController.Handbook.Tests;

/// <summary>The core held against open standards and figures derived from them. The source stands beside each check.</summary>
public sealed class StandardsTests
{
    private readonly Inputs _inputs = new();
    private readonly Outputs _outputs = new();
    private uint _nowMs;

    /// <summary>
    /// Source: ISA-18.2 / IEC 62682, alarm states, as OPC 10000-9 section 4.8 and annex E.3 also give them: normal to
    /// unacknowledged on the condition, to acknowledged on acknowledge, to returned-to-normal unacknowledged on clearing,
    /// back to unacknowledged on recurrence, to normal on acknowledge or on clearing.
    /// </summary>
    [Fact]
    public void An_alarm_that_does_not_latch_goes_through_the_states_of_ISA_18_2()
    {
        Controller core = Core();
        Assert.Equal("normal", State(core, AlarmId.ReservoirLow));

        Low(core, true);
        Assert.Equal("unacknowledged", State(core, AlarmId.ReservoirLow));
        Low(core, false);
        Assert.Equal("returned to normal, unacknowledged", State(core, AlarmId.ReservoirLow));
        Low(core, true);
        Assert.Equal("unacknowledged", State(core, AlarmId.ReservoirLow));
        Acknowledge(core);
        Assert.Equal("acknowledged", State(core, AlarmId.ReservoirLow));
        Low(core, false);
        Assert.Equal("normal", State(core, AlarmId.ReservoirLow));

        Low(core, true);
        Low(core, false);
        Acknowledge(core);
        Assert.Equal("normal", State(core, AlarmId.ReservoirLow));
    }

    /// <summary>Source: ISA-18.2 / IEC 62682: a latched alarm needs a reset after its condition has cleared.</summary>
    [Fact]
    public void A_latching_alarm_stands_until_reset_and_reset_does_nothing_while_the_condition_lasts()
    {
        Controller core = Core();
        Empty(core, true);
        Press(core, reset: true);
        Assert.True(core.Alarms.Stands(AlarmId.ReservoirEmpty));

        Empty(core, false);
        Acknowledge(core);
        Assert.True(core.Alarms.Stands(AlarmId.ReservoirEmpty));
        Assert.False(core.Alarms.IsActive(AlarmId.ReservoirEmpty));

        Press(core, reset: true);
        Assert.False(core.Alarms.Stands(AlarmId.ReservoirEmpty));
    }

    /// <summary>Source: IEC 60204-1, fail-safe output: shut-down by de-energising, so that a broken wire alarms too.</summary>
    [Fact]
    public void The_healthy_relay_is_energised_in_health_and_dropped_by_a_failure_and_before_the_first_scan()
    {
        Assert.False(_outputs.HealthyRelay);
        Controller core = Core();
        Assert.True(_outputs.HealthyRelay);

        Empty(core, true);
        Assert.False(_outputs.HealthyRelay);
    }

    /// <summary>
    /// Source: NAMUR NE 107, four categories; function check is for work in progress, so no alarm has it. Each of the other three
    /// has an alarm, and no alarm has anything else.
    /// </summary>
    [Fact]
    public void The_categories_of_the_alarms_are_those_of_NE_107_without_function_check()
    {
        Assert.Equal(["Failure", "MaintenanceRequired", "OutOfSpecification"], Enum.GetNames<AlarmCategory>().Order());
        Assert.Equal(Enum.GetValues<AlarmCategory>(), Enum.GetValues<AlarmId>().Select(id => AlarmTable.Spec(id).Category).Distinct().Order());
    }

    /// <summary>Source: NAMUR NE 107: maintenance and out of specification leave the function whole, so that only a failure drops the relay.</summary>
    [Theory]
    [InlineData(AlarmId.ReservoirEmpty, AlarmCategory.Failure)]
    [InlineData(AlarmId.LubricantCold, AlarmCategory.OutOfSpecification)]
    [InlineData(AlarmId.ReservoirLow, AlarmCategory.MaintenanceRequired)]
    public void Of_the_categories_only_a_failure_drops_the_healthy_relay_and_the_others_warn(AlarmId alarm, AlarmCategory category)
    {
        Controller core = Core();
        _inputs.LevelEmpty = alarm == AlarmId.ReservoirEmpty;
        _inputs.LevelLow = alarm == AlarmId.ReservoirLow;
        _inputs.TemperatureDeciC = alarm == AlarmId.LubricantCold ? -400 : _inputs.TemperatureDeciC;
        Scan(core, 600);

        Assert.Equal([alarm], Enum.GetValues<AlarmId>().Where(core.Alarms.Stands));
        Assert.Equal(category, core.Alarms.CategoryOf(alarm));
        Assert.Equal(category != AlarmCategory.Failure, _outputs.HealthyRelay);
        Assert.Equal(category != AlarmCategory.Failure, _outputs.Warning);
    }

    /// <summary>Source: IEC 60947-5-2, ready delay of a proximity switch at most 300 ms; from memory.</summary>
    [Fact]
    public void The_preset_ready_delay_covers_what_the_standard_allows_a_switch() =>
        Assert.True(new Settings()[SettingField.ReadyDelayMs] >= 300);

    /// <summary>
    /// Source: Ganssle, a guide to debouncing, 20 to 50 ms for slow contacts (from memory); derived: an input so debounced
    /// cannot count beyond 25 to 10 pulses a second, pulse and pause both lasting that long.
    /// </summary>
    [Theory]
    [InlineData(20, 25)]
    [InlineData(50, 10)]
    public void A_shaft_faster_than_its_shortest_pulse_lets_the_counter_follow_is_refused(int shortestMs, int pulsesPerSecond)
    {
        Settings settings = Shaft(shortestMs, perMinute: pulsesPerSecond * 60);
        Assert.True(new SettingsCheck().Accepts(settings, hasRule: false));

        settings = Shaft(shortestMs, perMinute: (pulsesPerSecond * 60) + 1);
        var check = new SettingsCheck();
        Assert.False(check.Accepts(settings, hasRule: false));
        Assert.Equal(SettingField.ShaftMaxPerMinute, check[0].Field);
        Assert.Equal(pulsesPerSecond * 60, check[0].Maximum);
    }

    /// <summary>Source: 2^32 ms = 49 d 17.0465 h, and unsigned (now - start) survives one wrap; arithmetic.</summary>
    [Fact]
    public void A_restart_delay_that_spans_the_wrap_of_the_clock_is_not_a_millisecond_off()
    {
        _nowMs = uint.MaxValue - 5_000;
        Controller core = Core();
        uint started = _nowMs;
        while (core.Phase == Phase.Rest)
            Scan(core, 1);

        Assert.Equal(10_000u, unchecked(_nowMs - started));
    }

    private static Settings Shaft(int shortestMs, int perMinute)
    {
        var settings = new Settings();
        settings[SettingField.ShaftFitted] = 1;
        settings[SettingField.ShaftMinPulseWidthUs] = shortestMs * 1000;
        settings[SettingField.ShaftMaxPerMinute] = perMinute;
        return settings;
    }

    private static string State(Controller core, AlarmId id)
    {
        bool active = core.Alarms.IsActive(id);
        if (core.Alarms.IsUnseen(id))
            return active ? "unacknowledged" : "returned to normal, unacknowledged";
        return active ? "acknowledged" : "normal";
    }

    private Controller Core()
    {
        var settings = new Settings();
        settings[SettingField.LevelLowFitted] = 1;
        settings[SettingField.LevelEmptyFitted] = 1;
        settings[SettingField.ColdJudged] = 1;
        var core = new Controller(_inputs, _outputs, settings, null);
        Scan(core, 1);
        return core;
    }

    private void Low(Controller core, bool on)
    {
        _inputs.LevelLow = on;
        Scan(core, 600);
    }

    private void Empty(Controller core, bool on)
    {
        _inputs.LevelEmpty = on;
        Scan(core, 600);
    }

    private void Acknowledge(Controller core) => Press(core, reset: false);

    private void Press(Controller core, bool reset)
    {
        _inputs.SetDown(Button.Acknowledge, !reset);
        _inputs.SetDown(Button.Reset, reset);
        Scan(core, 50);
        _inputs.SetDown(Button.Acknowledge, false);
        _inputs.SetDown(Button.Reset, false);
        Scan(core, 50);
    }

    private void Scan(Controller core, int times)
    {
        for (int scan = 0; scan < times; scan++)
            core.Scan(_nowMs += 1);
    }
}
