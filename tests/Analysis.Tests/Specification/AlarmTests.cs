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
    [Theory]
    [InlineData("divider-stalled", AlarmAction.DoseEnding, AlarmCategory.Failure, true)]
    [InlineData("dose-too-long", AlarmAction.DoseEnding, AlarmCategory.Failure, true)]
    [InlineData("line-pressure-missing", AlarmAction.DoseEnding, AlarmCategory.Failure, true)]
    [InlineData("line-not-vented", AlarmAction.DoseEnding, AlarmCategory.Failure, true)]
    [InlineData("line-overpressure", AlarmAction.Interlock, AlarmCategory.Failure, true)]
    [InlineData("reservoir-empty", AlarmAction.Interlock, AlarmCategory.Failure, true)]
    [InlineData("pump-overload", AlarmAction.Interlock, AlarmCategory.Failure, true)]
    [InlineData("settings-invalid", AlarmAction.Interlock, AlarmCategory.Failure, true)]
    [InlineData("cycle-switch-fault", AlarmAction.DoseEnding, AlarmCategory.Failure, true)]
    [InlineData("cycle-switch-fault (other switch)", AlarmAction.None, AlarmCategory.OutOfSpecification, true)]
    [InlineData("pulse-while-idle", AlarmAction.None, AlarmCategory.Failure, true)]
    [InlineData("logic-fault", AlarmAction.Interlock, AlarmCategory.Failure, true)]
    [InlineData("scan-overrun", AlarmAction.None, AlarmCategory.Failure, true)]
    [InlineData("lubrication-overdue", AlarmAction.None, AlarmCategory.Failure, false)]
    [InlineData("shaft-signal-lost", AlarmAction.None, AlarmCategory.OutOfSpecification, false)]
    [InlineData("rule-fault", AlarmAction.None, AlarmCategory.OutOfSpecification, true)]
    [InlineData("pulse-too-fast", AlarmAction.None, AlarmCategory.OutOfSpecification, true)]
    [InlineData("sensors-disagree", AlarmAction.None, AlarmCategory.OutOfSpecification, true)]
    [InlineData("lubricant-cold", AlarmAction.None, AlarmCategory.OutOfSpecification, false)]
    [InlineData("supply-low", AlarmAction.Holding, AlarmCategory.OutOfSpecification, false)]
    [InlineData("reservoir-low", AlarmAction.None, AlarmCategory.MaintenanceRequired, false)]
    [InlineData("storage-corrupt", AlarmAction.None, AlarmCategory.MaintenanceRequired, true)]
    [InlineData("restart-unexpected", AlarmAction.None, AlarmCategory.MaintenanceRequired, true)]
    public void Each_alarm_acts_and_latches_as_the_rules_say(string name, AlarmAction action, AlarmCategory category, bool latches)
    {
        AlarmRule rule = Assert.Single(AlarmTable.All, one => one.Name == name);
        Assert.Equal((action, category, latches), (rule.Action, rule.Category, rule.Latches));

        // A witness for one scan, in rest: what follows is what the row says.
        Bench bench = new(Quiet);
        bench.Scan();
        bench.Witness(rule.Id);
        Assert.Equal(action == AlarmAction.Interlock ? Failed : Rest, bench.Phase);
        Assert.Equal(category == AlarmCategory.Failure, !bench.Out.HealthyRelay);
        Assert.Equal(category != AlarmCategory.Failure, bench.Out.WarningOutput);
        bench.Scan();
        Assert.Equal(latches, bench.Alarm(rule.Id).Stands);
    }

    [Fact]
    public void The_alarm_table_has_each_alarm_once_and_in_order()
    {
        Assert.Equal(24, AlarmTable.All.Count);
        Assert.Equal(Enumerable.Range(0, 24), AlarmTable.All.Select(rule => (int)rule.Id));
    }

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
