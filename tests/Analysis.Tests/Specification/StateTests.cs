using System.Collections.Generic;
using System.Reflection;
using LubeController.Analysis.Specification;
using Xunit;
using static LubeController.Analysis.Specification.Phase;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>The state can be kept, compared, read and gone back to.</summary>
public sealed class StateTests
{
    [Fact]
    public void A_snapshot_is_not_changed_by_later_scans()
    {
        Bench bench = new Bench().To(Dose);
        SpecState kept = bench.State;
        string before = kept.ToString();
        bench.Pulse();
        bench.Witness(AlarmId.LogicFault);

        Assert.Equal(before, kept.ToString());
        Assert.NotEqual(kept, bench.State);
    }

    [Fact]
    public void From_a_restored_state_the_same_inputs_lead_to_the_same_states()
    {
        Bench first = new Bench().To(RetryPause);
        Bench second = new();
        second.Spec.Restore(first.State);
        Assert.Equal(first.Out, second.Out);
        for (int time = 0; time < 5; time++)
        {
            first.Pulse();
            second.Pulse();
            Assert.Equal(first.State, second.State);
            Assert.Equal(first.State.GetHashCode(), second.State.GetHashCode());
        }
    }

    [Fact]
    public void An_older_state_can_be_what_the_memory_holds_at_power_up()
    {
        Bench bench = new Bench().To(Dose);
        SpecState saved = bench.State;
        bench.Pulse();
        bench.Pulse();
        bench.Pulse();
        Assert.False(bench.State.Dose.Pending);
        bench.Spec.PowerCut(saved);

        Assert.Equal(Rest, bench.Scan().Phase);
        Assert.True(bench.State.Dose.Pending);
    }

    [Fact]
    public void Without_a_valid_state_everything_begins_anew()
    {
        Bench bench = new Bench().To(Failed);
        bench.Spec.PowerCutWithoutState();
        bench.Inputs = new SpecInputs();
        bench.Scan(0);

        Assert.Equal(new Bench().State, bench.State);
    }

    [Fact]
    public void At_power_up_all_is_off_until_the_first_scan()
    {
        Bench bench = new Bench().To(Dose);
        bench.Spec.PowerCut();

        Assert.Equal(new SpecOutputs(Rest, false, false, false, false, false, false, false, Buttons.None, null), bench.Out);
    }

    /// <summary>Changes each field of the state, one at a time: equality must see every one.</summary>
    [Fact]
    public void Equality_sees_every_field()
    {
        Bench bench = new();
        int fields = 0;
        foreach (FieldInfo field in typeof(SpecState).GetFields(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public))
        {
            SpecState changed = bench.State;
            field.SetValue(changed, Changed(field.GetValue(changed)));
            Assert.False(bench.State.Equals(changed), field.Name);
            fields++;
        }

        Assert.Equal(12, fields);
    }

    [Fact]
    public void A_person_can_read_the_state()
    {
        Bench bench = new Bench().To(RetryPause);
        bench.Witness(AlarmId.RuleFault);
        string text = bench.Spec.ToString();

        Assert.StartsWith("retry pause; pump off; dose 0 counted, 150 ms, position unknown; rest 10 ms, 0 pulses; in this phase 10 ms,", text);
        Assert.EndsWith("switch 0 off, 150 ms, 1 retries used, allowance 50 ms; rule-fault unacknowledged active latched first-up", text);
    }

    [Fact]
    public void A_state_of_other_settings_is_refused()
    {
        Bench bench = new(Bench.Short with { Switches = [new SwitchSettings(100, 1), new SwitchSettings(100, 1)] });

        Assert.Throws<System.ArgumentException>(() => bench.Spec.Restore(new Bench().State));
    }

    public static TheoryData<string, SpecSettings> BadSettings => new()
    {
        { "RestMs is 0; accepted: 1 or more.", Bench.Short with { RestMs = 0 } },
        { "RestartDelayMs is -1; accepted: 0 or more.", Bench.Short with { RestartDelayMs = -1 } },
        { "Switches is 0; accepted: 1 to 4 switches.", Bench.Short with { Switches = [] } },
        { "Switches is 5; accepted: 1 to 4 switches.", Bench.Short with { Switches = [new(1, 0), new(1, 0), new(1, 0), new(1, 0), new(1, 0)] } },
        { "DoseMode is Pressure; accepted: a dose by pressure needs a transmitter, or a switch that shows that pressure is reached.", Bench.Short with { DoseMode = DoseMode.Pressure, OverpressurePa = null } },
        { "DoseEndingSwitch is 1; accepted: 0 to 0.", Bench.Short with { DoseEndingSwitch = 1 } },
        { "Retries is -1; accepted: 0 or more.", Bench.Short with { Switches = [new SwitchSettings(1, -1)] } },
        { "RestMode is Shaft; accepted: rest by revolutions needs a shaft input: set HasShaft.", Bench.Short with { RestMode = RestMode.Shaft } },
        {
            "delay on of dose-too-long is 5; accepted: 0, as its timeout is its delay.",
            Bench.Short with { Delays = new Dictionary<AlarmId, AlarmDelays> { [AlarmId.DoseTooLong] = new(5, 0) } }
        },
        {
            "Consequences is Consequence { Alarm = LubricationOverdue, Cause = DividerStalled }; accepted: any alarm but lubrication-overdue, which is never suppressed.",
            Bench.Short with { Consequences = [new Consequence(AlarmId.LubricationOverdue, AlarmId.DividerStalled)] }
        },
    };

    [Theory]
    [MemberData(nameof(BadSettings))]
    public void Settings_that_make_no_sense_are_refused_with_what_is_accepted(string message, SpecSettings settings) =>
        Assert.Equal(message, Assert.Throws<System.ArgumentException>(() => new LubricationSpecification(settings)).Message);

    private static object Changed(object? value)
    {
        switch (value)
        {
            case null:
                return AlarmId.DividerStalled;
            case bool one:
                return !one;
            case Phase:
                return OutputTest;
            case DoseProgress dose:
                return dose with { Count = dose.Count + 1 };
            case Clocks clocks:
                return clocks with { OverdueMs = clocks.OverdueMs + 1 };
            case Restarts restarts:
                return restarts with { Count = restarts.Count + 1 };
            case Levels levels:
                return levels with { Prime = default };
            case Held held:
                return held with { PressureReached = !held.PressureReached };
            case LineState line:
                return line with { VentedMs = line.VentedMs + 1 };
            case SwitchState[] switches:
                switches[0].TimerMs++;
                return switches;
            default:
                var alarms = (AlarmState[])value;
                alarms[^1].Latched = true;
                return alarms;
        }
    }
}
