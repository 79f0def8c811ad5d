using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>What settings are refused for: each value by its range, and values beside each other.</summary>
public sealed class SettingsTests
{
    public static TheoryData<int> Fields() => new(Enumerable.Range(0, SettingField.Count));

    [Fact]
    public void The_presets_are_accepted_and_every_preset_lies_in_its_range()
    {
        var check = new SettingsCheck();
        Assert.True(check.Accepts(new Settings(), false));
        Assert.Equal(0, check.Count);
        for (int field = 0; field < SettingField.Count; field++)
            Assert.InRange(SettingTable.Spec(field).Preset, SettingTable.Spec(field).Minimum, SettingTable.Spec(field).Maximum);
    }

    [Theory]
    [MemberData(nameof(Fields))]
    public void A_value_below_or_above_its_range_is_refused_with_field_value_and_range(int field)
    {
        SettingSpec spec = SettingTable.Spec(field);
        foreach (int value in new[] { spec.Minimum - 1, spec.Maximum + 1 })
        {
            Settings settings = TestSettings.Make();
            settings[field] = value;
            SettingsRefusal refusal = Single(settings);
            Assert.Equal((field, value, spec.Minimum, spec.Maximum), (refusal.Field, refusal.Value, refusal.Minimum, refusal.Maximum));
            Assert.Equal("out of range", refusal.Reason);
        }
    }

    [Theory]
    [MemberData(nameof(Fields))]
    public void Every_setting_has_a_name_of_its_own_by_which_it_is_found(int field)
    {
        SettingSpec spec = SettingTable.Spec(field);
        Assert.Equal(field, SettingTable.Find(spec.Name));
        Assert.Matches("^[a-z][a-z0-9-]*[a-z0-9]$", spec.Name);
        Assert.EndsWith(".", spec.Meaning, StringComparison.Ordinal);
        Assert.True(spec.Maximum >= spec.Minimum);
        Assert.Equal(spec.Unit == SettingUnit.Choice ? spec.Maximum + 1 : 0, spec.Choices.Length);
        if (spec.Unit == SettingUnit.Flag)
            Assert.Equal((0, 1), (spec.Minimum, spec.Maximum));
        if (spec.Unit == SettingUnit.Milliseconds)
            Assert.True(spec.Maximum <= SettingTable.LongestMs);
    }

    [Fact]
    public void A_name_that_is_no_setting_is_not_found() => Assert.Equal(-1, SettingTable.Find("no-such-setting"));

    [Fact]
    public void The_longest_time_is_24_days_and_below_the_counters_range() =>
        Assert.Equal(24L * 24 * 3600 * 1000, SettingTable.LongestMs);

    public static TheoryData<string, string, int, int, int> Pairs() => new()
    {
        { "a dose by cycles needs a switch", "cycle-switches", 0, 1, 4 },
        { "the dose-ending switch is fitted", "dose-ending-switch", 2, 1, 1 },
        { "run time within the limit", "dose-run-time", 60_000, 1_000, 59_999 },
        { "one witness pulse proves nothing", "witness-pulses", 1, 3, 100 },
        { "two witness pulses prove nothing", "witness-pulses", 2, 3, 100 },
        { "all tries together", "switch-1-timeout", 100_000_000, 100, 20_735_950 },
        { "debounce within the timeout", "switch-1-debounce", 1_000, 0, 999 },
        { "pulse interval within the timeout", "shortest-pulse-interval", 1_000, 0, 999 },
        { "a rule that is not built in", "rest-by", 3, 0, 2 },
        { "a rest by shaft needs a shaft switch", "shaft-switch", 0, 1, 1 },
        { "a rest by either needs a shaft switch", "shaft-switch", 0, 1, 1 },
        { "a rest by shaft needs a fallback", "rest-fallback", 999, 1_000, SettingTable.LongestMs },
        { "overdue beyond the rest", "overdue-limit", 60_000, 60_001, SettingTable.LongestMs },
        { "overdue beyond the fallback", "overdue-limit", 70_000, 70_001, SettingTable.LongestMs },
        { "pulses of a rest", "rest-revolutions", 2_147_484, 1, 2_147_483 },
        { "shaft too fast for the counter", "shaft-fastest-speed", 15_001, 1, 15_000 },
        { "reached below the limit", "pressure-reached", 20_000, 0, 19_999 },
        { "missing pressure needs a witness", "pressure-missing-time", 1, 0, 0 },
        { "a limit switch shows no pressure reached", "pressure-missing-time", 1, 0, 0 },
        { "a dose by pressure needs a witness", "pressure-switch-shows", 0, 1, 1 },
        { "a limit switch ends no dose", "pressure-switch-shows", 2, 1, 1 },
        { "vented below reached", "pressure-vented", 10_000, 0, 9_999 },
        { "a dose by pressure is bounded", "pressure-missing-time", 0, 1, 86_400_000 },
        { "missing pressure beyond the debounce", "pressure-missing-time", 3_000, 3_001, 86_400_000 },
        { "vent limit beyond the vent time", "vent-limit", 6_000, 6_001, 7_200_000 },
        { "vent limit beyond vent time and debounce", "vent-limit", 7_000, 7_001, 7_200_000 },
        { "dose limit beyond every pressure cycle", "dose-limit", 40_000, 40_001, 172_800_000 },
        { "more pressure cycles than a dose limit can hold", "dose-limit", 172_800_000, int.MaxValue, 172_800_000 },
    };

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Values_that_do_not_go_together_are_refused_with_field_value_and_range(string what, string field, int value, int minimum, int maximum)
    {
        SettingsRefusal refusal = Single(TestSettings.Make(Wrong[what]));
        Assert.Equal(
            (field, value, minimum, maximum),
            (SettingTable.Spec(refusal.Field).Name, refusal.Value, refusal.Minimum, refusal.Maximum));
        Assert.NotEqual("out of range", refusal.Reason);
        Assert.NotEmpty(refusal.Reason);

        // The nearest value that the range names is accepted.
        if (minimum > maximum)
            return;
        Settings nearest = TestSettings.Make(Wrong[what]);
        nearest[refusal.Field] = Math.Clamp(value, minimum, maximum);
        Assert.True(new SettingsCheck().Accepts(nearest, false));
    }

    [Fact]
    public void With_a_rule_overdue_must_lie_beyond_both_the_longest_rest_and_the_fallback()
    {
        foreach ((int longest, int fallback) in new[] { (50_000, 90_000), (90_000, 50_000) })
        {
            Settings settings = TestSettings.Make(change =>
            {
                change[SettingField.RestMode] = (int)RestMode.Rule;
                change[SettingField.RuleLongestRestMs] = longest;
                change[SettingField.RestFallbackMs] = fallback;
                change[SettingField.OverdueMs] = 90_000;
            });
            SettingsRefusal refusal = Single(settings, true);
            Assert.Equal((SettingField.OverdueMs, 90_001), (refusal.Field, refusal.Minimum));
            settings[SettingField.OverdueMs] = 90_001;
            Assert.True(new SettingsCheck().Accepts(settings, true));
        }
    }

    [Fact]
    public void A_rule_needs_a_fallback()
    {
        Settings settings = TestSettings.Make(change =>
        {
            change[SettingField.RestMode] = (int)RestMode.Rule;
            change[SettingField.OverdueMs] = SettingTable.LongestMs;
        });
        Assert.Equal(SettingField.RestFallbackMs, Single(settings, true).Field);
    }

    [Fact]
    public void A_rest_of_24_days_leaves_room_for_its_own_overdue_limit_only_at_the_top()
    {
        Settings settings = TestSettings.Make(change =>
        {
            change[SettingField.RestMs] = SettingTable.LongestMs;
            change[SettingField.OverdueMs] = SettingTable.LongestMs;
        });
        Assert.True(new SettingsCheck().Accepts(settings, false));
        settings[SettingField.OverdueMs] = SettingTable.LongestMs - 1;
        Assert.Equal(SettingTable.LongestMs, Single(settings).Minimum);
    }

    [Fact]
    public void A_counter_without_a_shortest_pulse_takes_every_speed()
    {
        Settings settings = TestSettings.Make(change =>
        {
            change[SettingField.ShaftFitted] = 1;
            change[SettingField.ShaftMinPulseWidthUs] = 0;
            change[SettingField.ShaftMaxPerMinute] = 100_000;
            change[SettingField.ShaftPulsesPerRevolution] = 10;
        });
        Assert.True(new SettingsCheck().Accepts(settings, false));
    }

    [Fact]
    public void A_dose_by_run_time_needs_no_cycle_switch()
    {
        Settings settings = TestSettings.Make(change =>
        {
            change[SettingField.DoseMode] = (int)DoseMode.RunTime;
            change[SettingField.SwitchCount] = 0;
        });
        Assert.True(new SettingsCheck().Accepts(settings, false));
    }

    [Fact]
    public void A_dose_by_pressure_with_a_switch_alone_needs_no_transmitter_no_cycle_switch_and_no_threshold()
    {
        Settings settings = TestSettings.Make(change =>
        {
            TestSettings.ByPressure(change);
            change[SettingField.PressureTransmitterFitted] = 0;
            change[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Reached;
            change[SettingField.PressureVentedMbar] = 1_000_000;
        });
        Assert.True(new SettingsCheck().Accepts(settings, false));
    }

    [Fact]
    public void Doses_that_end_otherwise_ask_nothing_of_the_settings_of_a_dose_by_pressure()
    {
        Settings settings = TestSettings.Make(change =>
        {
            change[SettingField.VentMs] = 3_600_000;
            change[SettingField.VentLimitMs] = 200;
            change[SettingField.PressureVentedMbar] = 1_000_000;
            change[SettingField.PressureTransmitterFitted] = 1;
            change[SettingField.PressureCycles] = 100;
            change[SettingField.HoldMs] = 3_600_000;
        });
        Assert.True(new SettingsCheck().Accepts(settings, false));
    }

    [Fact]
    public void Every_wrong_value_is_listed_up_to_the_capacity()
    {
        var settings = new Settings();
        for (int field = 0; field < SettingField.Count; field++)
            settings[field] = int.MaxValue;
        var check = new SettingsCheck();
        Assert.False(check.Accepts(settings, true));
        Assert.Equal(SettingsCheck.Capacity, check.Count);
        Assert.Equal(Enumerable.Range(0, SettingsCheck.Capacity), Enumerable.Range(0, check.Count).Select(index => check[index].Field));
        Assert.True(check.Accepts(new Settings(), true));
        Assert.Equal(0, check.Count);
    }

    [Fact]
    public void A_core_with_refused_settings_keeps_the_pump_off_until_they_are_right_and_reset_was_pressed()
    {
        CoreBench bench = new CoreBench(settings => settings[SettingField.DoseEdges] = 0);
        bench.Run(60_000);
        Assert.Equal("settings-invalid", bench.Standing());
        Assert.Equal(["rest > failed"], bench.Phases);
        Assert.Equal(1, bench.Core.SettingsCheck.Count);
        bench.Press(Button.Reset);
        Assert.Equal(Phase.Failed, bench.Phase);
        Assert.True(bench.Core.UseSettings(TestSettings.Make()));
        bench.Run(60_000);
        Assert.Equal(Phase.Failed, bench.Phase);
        bench.Press(Button.Reset);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.RunUntil(Phase.Dose, 12_000);
    }

    [Fact]
    public void Settings_are_copied_and_refused_ones_change_nothing()
    {
        CoreBench bench = new CoreBench().ToRest();
        bench.Settings[SettingField.DoseEdges] = 1;
        bench.Run(6_000).Press(Button.DoseNow).Pulse();
        Assert.Equal(Phase.Dose, bench.Phase);
        Settings wrong = TestSettings.Make(settings =>
        {
            settings[SettingField.DoseEdges] = 1;
            settings[SettingField.RestMs] = 0;
        });
        Assert.False(bench.Core.UseSettings(wrong));
        Assert.True(bench.Core.UseSettings(TestSettings.Make()));
        bench.Pulse();
        Assert.Equal(Phase.Dose, bench.Phase);
    }

    private static readonly Dictionary<string, Action<Settings>> Wrong = new()
    {
        ["a dose by cycles needs a switch"] = settings => settings[SettingField.SwitchCount] = 0,
        ["the dose-ending switch is fitted"] = settings => settings[SettingField.DoseEndingSwitch] = 2,
        ["run time within the limit"] = settings =>
        {
            settings[SettingField.DoseMode] = (int)DoseMode.RunTime;
            settings[SettingField.DoseRunMs] = 60_000;
            settings[SettingField.DoseLimitMs] = 60_000;
        },
        ["one witness pulse proves nothing"] = settings => settings[SettingField.WitnessPulses] = 1,
        ["two witness pulses prove nothing"] = settings => settings[SettingField.WitnessPulses] = 2,
        ["all tries together"] = settings =>
        {
            settings.SetTimeout(0, 100_000_000);
            settings.SetRetries(0, 99);
            settings[SettingField.FirstPulseAllowanceMs] = 5_000;
        },
        ["debounce within the timeout"] = settings =>
        {
            settings.SetTimeout(0, 1_000);
            settings[SettingField.OfSwitch(0, SettingField.SwitchDebounceMs)] = 1_000;
        },
        ["pulse interval within the timeout"] = settings =>
        {
            settings.SetTimeout(0, 1_000);
            settings[SettingField.MinPulseIntervalMs] = 1_000;
        },
        ["a rule that is not built in"] = settings =>
        {
            settings[SettingField.RestMode] = (int)RestMode.Rule;
            settings[SettingField.RestFallbackMs] = 1_000;
            settings[SettingField.RuleLongestRestMs] = 1_000;
            settings[SettingField.ShaftFitted] = 1;
        },
        ["a rest by shaft needs a shaft switch"] = settings =>
        {
            settings[SettingField.RestMode] = (int)RestMode.Shaft;
            settings[SettingField.RestFallbackMs] = 1_000;
        },
        ["a rest by either needs a shaft switch"] = settings => settings[SettingField.RestMode] = (int)RestMode.Either,
        ["a rest by shaft needs a fallback"] = settings =>
        {
            settings[SettingField.RestMode] = (int)RestMode.Shaft;
            settings[SettingField.ShaftFitted] = 1;
            settings[SettingField.RestFallbackMs] = 999;
        },
        ["overdue beyond the rest"] = settings => settings[SettingField.OverdueMs] = TestSettings.RestMs,
        ["overdue beyond the fallback"] = settings =>
        {
            settings[SettingField.RestMode] = (int)RestMode.Shaft;
            settings[SettingField.ShaftFitted] = 1;
            settings[SettingField.RestFallbackMs] = 70_000;
            settings[SettingField.OverdueMs] = 70_000;
        },
        ["pulses of a rest"] = settings =>
        {
            settings[SettingField.ShaftFitted] = 1;
            settings[SettingField.ShaftPulsesPerRevolution] = 1_000;
            settings[SettingField.ShaftMaxPerMinute] = 1;
            settings[SettingField.RestRevolutions] = 2_147_484;
        },
        ["shaft too fast for the counter"] = settings =>
        {
            // Pulse and pause of 1 ms each: 500 pulses a second, two a revolution: 15 000 a minute.
            settings[SettingField.ShaftFitted] = 1;
            settings[SettingField.ShaftPulsesPerRevolution] = 2;
            settings[SettingField.ShaftMinPulseWidthUs] = 1_000;
            settings[SettingField.ShaftMaxPerMinute] = 15_001;
        },
        ["reached below the limit"] = settings =>
        {
            settings[SettingField.PressureTransmitterFitted] = 1;
            settings[SettingField.PressureReachedMbar] = 20_000;
            settings[SettingField.PressureLimitMbar] = 20_000;
        },
        ["missing pressure needs a witness"] = settings => settings[SettingField.PressureMissingMs] = 1,
        ["a limit switch shows no pressure reached"] = settings =>
        {
            settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Limit;
            settings[SettingField.PressureMissingMs] = 1;
        },
        ["a dose by pressure needs a witness"] = settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.PressureTransmitterFitted] = 0;
        },
        ["a limit switch ends no dose"] = settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.PressureTransmitterFitted] = 0;
            settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Limit;
        },
        ["vented below reached"] = settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.PressureVentedMbar] = 10_000;
        },
        ["a dose by pressure is bounded"] = settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.PressureMissingMs] = 0;
        },
        ["missing pressure beyond the debounce"] = settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Reached;
            settings[SettingField.PressureDebounceMs] = 3_000;
            settings[SettingField.PressureMissingMs] = 3_000;
        },
        ["vent limit beyond the vent time"] = settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.VentMs] = 6_000;
            settings[SettingField.VentLimitMs] = 6_000;
        },
        ["vent limit beyond vent time and debounce"] = settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.PressureSwitchUse] = (int)PressureSwitchUse.Reached;
            settings[SettingField.PressureDebounceMs] = 1_000;
            settings[SettingField.VentMs] = 6_000;
            settings[SettingField.VentLimitMs] = 7_000;
        },
        ["dose limit beyond every pressure cycle"] = settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.PressureCycles] = 4;
            settings[SettingField.DoseLimitMs] = 40_000;
        },
        ["more pressure cycles than a dose limit can hold"] = settings =>
        {
            TestSettings.ByPressure(settings);
            settings[SettingField.PressureCycles] = 100;
            settings[SettingField.PressureMissingMs] = 86_400_000;
            settings[SettingField.DoseLimitMs] = 172_800_000;
        },
    };

    private static SettingsRefusal Single(Settings settings, bool hasRule = false)
    {
        var check = new SettingsCheck();
        Assert.False(check.Accepts(settings, hasRule));
        Assert.Equal(1, check.Count);
        return check[0];
    }
}
