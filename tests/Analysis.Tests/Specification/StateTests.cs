using System.Collections.Generic;
using LubeController.Analysis.Specification;
using Xunit;
using static LubeController.Analysis.Specification.Phase;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>The state can be read, begins with everything off, and its settings are checked.</summary>
public sealed class StateTests
{
    [Fact]
    public void At_power_up_all_is_off_until_the_first_scan()
    {
        Bench bench = new Bench().To(Dose);
        bench.Spec.PowerCut();

        Assert.Equal(new SpecOutputs(Rest, false, false, false, false, false, false, false, Buttons.None, null), bench.Out);
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
}
