using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Analysis.Specification;
using Xunit;
using static LubeController.Analysis.Specification.Phase;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>The alarm table, detection from raw inputs, delays, first-up, healthy relay and warning output.</summary>
public sealed class AlarmTests
{
    private static readonly SpecSettings Quiet = Bench.Short with { RestartDelayMs = 50_000 };

    /// <summary>The table of the control rules, written out a second time: name, action, category, latches.</summary>
    private static readonly Dictionary<AlarmId, (string Name, AlarmAction Action, AlarmCategory Category, bool Latches)> ControlRules = new()
    {
        [AlarmId.DividerStalled] = ("divider-stalled", AlarmAction.DoseEnding, AlarmCategory.Failure, true),
        [AlarmId.DoseTooLong] = ("dose-too-long", AlarmAction.DoseEnding, AlarmCategory.Failure, true),
        [AlarmId.LinePressureMissing] = ("line-pressure-missing", AlarmAction.DoseEnding, AlarmCategory.Failure, true),
        [AlarmId.LineNotVented] = ("line-not-vented", AlarmAction.DoseEnding, AlarmCategory.Failure, true),
        [AlarmId.LineOverpressure] = ("line-overpressure", AlarmAction.Interlock, AlarmCategory.Failure, true),
        [AlarmId.ReservoirEmpty] = ("reservoir-empty", AlarmAction.Interlock, AlarmCategory.Failure, true),
        [AlarmId.PumpOverload] = ("pump-overload", AlarmAction.Interlock, AlarmCategory.Failure, true),
        [AlarmId.SettingsInvalid] = ("settings-invalid", AlarmAction.Interlock, AlarmCategory.Failure, true),
        [AlarmId.CycleSwitchFault] = ("cycle-switch-fault", AlarmAction.DoseEnding, AlarmCategory.Failure, true),
        [AlarmId.OtherSwitchFault] = ("cycle-switch-fault (other switch)", AlarmAction.None, AlarmCategory.OutOfSpecification, true),
        [AlarmId.PulseWhileIdle] = ("pulse-while-idle", AlarmAction.None, AlarmCategory.Failure, true),
        [AlarmId.LogicFault] = ("logic-fault", AlarmAction.Interlock, AlarmCategory.Failure, true),
        [AlarmId.ScanOverrun] = ("scan-overrun", AlarmAction.None, AlarmCategory.Failure, true),
        [AlarmId.LubricationOverdue] = ("lubrication-overdue", AlarmAction.None, AlarmCategory.Failure, false),
        [AlarmId.ShaftSignalLost] = ("shaft-signal-lost", AlarmAction.None, AlarmCategory.OutOfSpecification, false),
        [AlarmId.RuleFault] = ("rule-fault", AlarmAction.None, AlarmCategory.OutOfSpecification, true),
        [AlarmId.PulseTooFast] = ("pulse-too-fast", AlarmAction.None, AlarmCategory.OutOfSpecification, true),
        [AlarmId.SensorsDisagree] = ("sensors-disagree", AlarmAction.None, AlarmCategory.OutOfSpecification, true),
        [AlarmId.PressureSignalLost] = ("pressure-signal-lost", AlarmAction.None, AlarmCategory.Failure, true),
        [AlarmId.LubricantCold] = ("lubricant-cold", AlarmAction.None, AlarmCategory.OutOfSpecification, false),
        [AlarmId.SupplyLow] = ("supply-low", AlarmAction.Holding, AlarmCategory.OutOfSpecification, false),
        [AlarmId.ReservoirLow] = ("reservoir-low", AlarmAction.None, AlarmCategory.MaintenanceRequired, false),
        [AlarmId.StorageCorrupt] = ("storage-corrupt", AlarmAction.None, AlarmCategory.MaintenanceRequired, true),
        [AlarmId.RestartUnexpected] = ("restart-unexpected", AlarmAction.None, AlarmCategory.MaintenanceRequired, true),
    };

    public static TheoryData<AlarmId> Every => new(Enum.GetValues<AlarmId>());

    /// <summary>An alarm without a row of <see cref="ControlRules"/> fails here.</summary>
    [Theory]
    [MemberData(nameof(Every))]
    public void Each_alarm_acts_and_latches_as_the_rules_say(AlarmId alarm)
    {
        Assert.True(ControlRules.TryGetValue(alarm, out var expected), $"{alarm} has no row");
        AlarmRule rule = Assert.Single(AlarmTable.All, one => one.Id == alarm);
        Assert.Equal(expected, (rule.Name, rule.Action, rule.Category, rule.Latches));

        // A witness for one scan, in rest: what follows is what the row says.
        Bench bench = new(Quiet);
        bench.Scan();
        bench.Witness(rule.Id);
        Assert.Equal(expected.Action == AlarmAction.Interlock ? Failed : Rest, bench.Phase);
        Assert.Equal(expected.Category == AlarmCategory.Failure, !bench.Out.HealthyRelay);
        Assert.Equal(expected.Category != AlarmCategory.Failure, bench.Out.WarningOutput);
        bench.Scan();
        Assert.Equal(expected.Latches, bench.Alarm(rule.Id).Stands);
    }

    [Fact]
    public void The_alarm_table_has_each_alarm_once_and_in_order() =>
        Assert.Equal(Enum.GetValues<AlarmId>(), AlarmTable.All.Select(rule => rule.Id));

    public static TheoryData<string, AlarmId> Detections => new()
    {
        { "pressure", AlarmId.LineOverpressure },
        { "empty", AlarmId.ReservoirEmpty },
        { "low", AlarmId.ReservoirLow },
        { "overload", AlarmId.PumpOverload },
        { "cold", AlarmId.LubricantCold },
        { "supply", AlarmId.SupplyLow },
    };

    [Theory]
    [MemberData(nameof(Detections))]
    public void A_raw_input_raises_its_alarm_and_no_other(string input, AlarmId alarm)
    {
        Bench bench = new(Quiet);
        bench.Scan();
        bench.Inputs = Beyond(input);
        bench.Scan();

        Assert.All(AlarmTable.All, rule => Assert.Equal(rule.Id == alarm, bench.Alarm(rule.Id).Active));
    }

    [Fact]
    public void At_their_limits_analog_inputs_raise_nothing()
    {
        Bench bench = new(Quiet);
        bench.Inputs = bench.Inputs with { PressurePa = 30_000_000, TemperatureMilliCelsius = -10_000, SupplyMilliVolt = 18_000 };
        bench.Scan();

        Assert.All(AlarmTable.All, rule => Assert.False(bench.Alarm(rule.Id).Stands));
    }

    [Fact]
    public void Without_their_sensors_analog_alarms_are_never_raised()
    {
        Bench bench = new(Quiet with { OverpressurePa = null, ColdMilliCelsius = null, SupplyLowMilliVolt = null });
        bench.Inputs = bench.Inputs with { PressurePa = int.MaxValue, TemperatureMilliCelsius = int.MinValue, SupplyMilliVolt = 0 };
        bench.Scan();

        Assert.All(AlarmTable.All, rule => Assert.False(bench.Alarm(rule.Id).Stands));
    }

    [Fact]
    public void Delays_on_and_off_hold_an_alarm_back()
    {
        Bench bench = new(Quiet with { Delays = new Dictionary<AlarmId, AlarmDelays> { [AlarmId.LubricantCold] = new(100, 50) } });
        SpecInputs warm = bench.Inputs;
        bench.Inputs = Beyond("cold");
        bench.Run(100);
        Assert.False(bench.Alarm(AlarmId.LubricantCold).Active);
        bench.Scan();
        Assert.True(bench.Alarm(AlarmId.LubricantCold).Active);
        bench.Inputs = warm;
        bench.Run(50);
        Assert.True(bench.Alarm(AlarmId.LubricantCold).Active);
        bench.Scan();

        Assert.False(bench.Alarm(AlarmId.LubricantCold).Active);
    }

    [Fact]
    public void A_delay_on_begins_again_when_the_condition_is_interrupted()
    {
        Bench bench = new(Quiet with { Delays = new Dictionary<AlarmId, AlarmDelays> { [AlarmId.RuleFault] = new(100, 0) } });
        for (int time = 0; time < 5; time++)
        {
            bench.Inputs = new SpecInputs().WithWitness(AlarmId.RuleFault);
            bench.Run(100);
            bench.Inputs = new SpecInputs();
            bench.Scan();
        }

        Assert.False(bench.Alarm(AlarmId.RuleFault).Stands);
    }

    [Fact]
    public void A_delay_on_goes_on_after_a_power_cut()
    {
        Bench bench = new(Quiet with { Delays = new Dictionary<AlarmId, AlarmDelays> { [AlarmId.RuleFault] = new(100, 0) } });
        bench.Inputs = bench.Inputs.WithWitness(AlarmId.RuleFault);
        bench.Run(90);
        bench.Spec.PowerCut();
        bench.Scan(0);
        bench.Scan();
        Assert.False(bench.Alarm(AlarmId.RuleFault).Active);
        bench.Scan();

        Assert.True(bench.Alarm(AlarmId.RuleFault).Active);
    }

    [Fact]
    public void The_first_alarm_keeps_its_mark_until_none_stands_and_none_waits()
    {
        Bench bench = new(Quiet);
        bench.Scan();
        bench.Witness(AlarmId.RuleFault, AlarmId.PulseTooFast);
        Assert.Equal(AlarmId.RuleFault, bench.Out.FirstUp);
        bench.Witness(AlarmId.ScanOverrun);
        Assert.Equal(AlarmId.RuleFault, bench.Out.FirstUp);
        Assert.True(bench.Alarm(AlarmId.RuleFault).FirstUp);
        bench.Press(Buttons.Reset);
        Assert.Equal(AlarmId.RuleFault, bench.Out.FirstUp);
        bench.Press(Buttons.Acknowledge);
        Assert.Null(bench.Out.FirstUp);

        bench.Witness(AlarmId.ScanOverrun);
        Assert.Equal(AlarmId.ScanOverrun, bench.Out.FirstUp);
    }

    [Fact]
    public void The_warning_output_is_on_in_stopped_and_prime()
    {
        Bench bench = new(Quiet);
        Assert.False(bench.Out.WarningOutput);
        Assert.True(bench.To(Stopped).Out.WarningOutput);
        bench.Press(Buttons.Start);
        Assert.False(bench.Out.WarningOutput);

        Assert.True(bench.To(Prime).Out.WarningOutput);
    }

    [Fact]
    public void Reset_alone_clears_a_latch_and_only_once_its_condition_has_ended()
    {
        Bench bench = new(Quiet);
        bench.Inputs = bench.Inputs.WithWitness(AlarmId.StorageCorrupt);
        bench.Scan();
        bench.Press(Buttons.Reset);
        Assert.True(bench.Alarm(AlarmId.StorageCorrupt).Latched);
        bench.Inputs = new SpecInputs();
        bench.Press(Buttons.Acknowledge);
        Assert.True(bench.Alarm(AlarmId.StorageCorrupt).Latched);
        bench.Press(Buttons.Reset);

        Assert.False(bench.Alarm(AlarmId.StorageCorrupt).Stands);
    }

    [Fact]
    public void Line_pressure_missing_lasts_without_its_witness_and_reset_itself_ends_it()
    {
        Bench bench = new Bench().To(Dose);
        bench.Witness(AlarmId.LinePressureMissing);
        bench.Run(100);
        Assert.Equal(Failed, bench.Phase);
        Assert.True(bench.Alarm(AlarmId.LinePressureMissing).Active);

        Assert.Equal(Rest, bench.Press(Buttons.Reset).Phase);
        Assert.False(bench.Alarm(AlarmId.LinePressureMissing).Stands);
    }

    [Fact]
    public void Alarms_outlive_a_power_cut()
    {
        Bench bench = new(Quiet);
        bench.Empty(true);
        bench.Scan();
        bench.Empty(false);
        bench.Witness(AlarmId.PulseTooFast);
        bench.Spec.Shelve(AlarmId.PulseTooFast, 1000);
        bench.Spec.PowerCut();
        Assert.False(bench.Out.HealthyRelay);
        bench.Scan(40);

        Assert.Equal(Failed, bench.Phase);
        Assert.True(bench.Alarm(AlarmId.ReservoirEmpty).Latched);
        Assert.Equal(960, bench.Alarm(AlarmId.PulseTooFast).ShelvedMs);
    }

    [Fact]
    public void An_input_not_yet_known_after_power_up_leaves_its_alarm_as_it_was()
    {
        Bench bench = new(Quiet with { LevelDebounceMs = 100 });
        bench.Inputs = Beyond("low");
        bench.Run(110);
        Assert.True(bench.Alarm(AlarmId.ReservoirLow).Active);
        bench.Spec.PowerCut();
        Assert.True(bench.Run(50).WarningOutput);
        bench.Inputs = new SpecInputs();

        Assert.False(bench.Run(110).WarningOutput);
    }

    private static SpecInputs Beyond(string input) => input switch
    {
        "pressure" => new SpecInputs { PressurePa = 30_000_001 },
        "empty" => new SpecInputs { LevelEmpty = true },
        "low" => new SpecInputs { LevelLow = true },
        "overload" => new SpecInputs { PumpOverload = true },
        "cold" => new SpecInputs { TemperatureMilliCelsius = -10_001 },
        _ => new SpecInputs { SupplyMilliVolt = 17_999 },
    };
}
