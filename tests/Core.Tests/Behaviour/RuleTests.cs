using System;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>A user's rest rule, well behaved and not.</summary>
public sealed class RuleTests
{
    private const int FallbackMs = 40_000;
    private const int LongestMs = 100_000;

    [Fact]
    public void A_rule_decides_the_rest()
    {
        var rule = new FakeRule { Remaining = (own, _) => Math.Max(0, 25_000 - own.ElapsedMs) };
        CoreBench bench = AtRest(rule);
        Assert.Equal(25_000, bench.RunUntil(Phase.Dose, 100_000));
        Assert.Equal("", bench.Standing());
        Assert.Equal(2, rule.Begins);
    }

    [Fact]
    public void A_rule_may_decide_by_shaft_pulses()
    {
        var rule = new FakeRule
        {
            Remaining = (_, _) => LongestMs,
            RemainingPulses = (own, _) => Math.Max(0, 3_000 - own.Pulses),
        };
        CoreBench bench = AtRest(rule);
        bench.ShaftPulsesPerTick = 1;
        Assert.Equal(30_000, bench.RunUntil(Phase.Dose, 100_000));
        Assert.Equal("", bench.Standing());
    }

    [Fact]
    public void A_rule_is_asked_again_when_the_pressure_changes()
    {
        var rule = new FakeRule { Remaining = (own, inputs) => inputs.PressureMbar == 4_321 && own.ElapsedMs > 2_000 ? 0 : 50_000 };
        CoreBench bench = AtRest(rule, settings => settings[SettingField.PressureTransmitterFitted] = 1);
        bench.Run(5_000);
        Assert.Equal(Phase.Rest, bench.Phase);
        bench.Inputs.PressureMbar = 4_321;
        bench.Run(10);
        Assert.Equal(Phase.Dose, bench.Phase);
    }

    [Theory]
    [InlineData(nameof(IRestRule.Begin))]
    [InlineData(nameof(IRestRule.Advance))]
    [InlineData(nameof(IRestRule.RemainingMs))]
    [InlineData(nameof(IRestRule.RemainingShaftPulses))]
    public void A_rule_that_throws_is_survived_and_the_fallback_time_takes_over(string where)
    {
        var rule = new FakeRule();
        CoreBench bench = Made(rule);
        bench.RunUntil(Phase.Dose, 12_000);
        rule.OnCall = call =>
        {
            if (call == where)
                throw new InvalidOperationException("invented");
        };
        bench.Pulses(3).Switch(true).RunUntil(Phase.Rest, 200);
        Assert.Equal(FallbackMs, bench.RunUntil(Phase.Dose, 100_000));
        Assert.Equal("rule-fault", bench.Standing());
        Assert.True(bench.Outputs.HealthyRelay);
        Assert.True(bench.Outputs.Warning);
    }

    [Fact]
    public void A_rule_that_throws_while_its_state_is_saved_is_survived()
    {
        var rule = new FakeRule();
        CoreBench bench = AtRest(rule);
        rule.OnCall = call =>
        {
            if (call == nameof(IRestRule.Transfer))
                throw new InvalidOperationException("invented");
        };
        Assert.Equal(0, bench.Core.SaveState(new byte[bench.Core.StateLength]));
        bench.Empty(true);
        Assert.True(bench.Stands(AlarmId.RuleFault));
    }

    [Theory]
    [InlineData(-1, Saturating.Never)]
    [InlineData(int.MinValue, Saturating.Never)]
    [InlineData(LongestMs + 1, Saturating.Never)]
    [InlineData(Saturating.Never, Saturating.Never)]
    [InlineData(1_000, -1)]
    public void An_answer_out_of_range_is_a_rule_fault(int remainingMs, int remainingPulses)
    {
        var rule = new FakeRule { Remaining = (_, _) => remainingMs, RemainingPulses = (_, _) => remainingPulses };
        CoreBench bench = AtRest(rule);
        Assert.True(bench.Stands(AlarmId.RuleFault));
        Assert.Equal(FallbackMs, bench.RunUntil(Phase.Dose, 100_000));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(LongestMs)]
    public void The_ends_of_the_range_are_answers_like_others(int remainingMs)
    {
        var rule = new FakeRule { Remaining = (own, _) => own.ElapsedMs < 2_000 ? 2_000 : remainingMs };
        CoreBench bench = AtRest(rule);
        bench.Run(5_000);
        Assert.Equal("", bench.Standing());
        Assert.Equal(remainingMs == 0 ? Phase.Dose : Phase.Rest, bench.Phase);
    }

    [Theory]
    [InlineData(990, true)]
    [InlineData(1_000, false)]
    public void A_rest_below_one_second_is_a_rule_fault(int restMs, bool fault)
    {
        var rule = new FakeRule { Remaining = (own, _) => Math.Max(0, restMs - own.ElapsedMs) };
        CoreBench bench = AtRest(rule);
        bench.Run(1_000);
        Assert.Equal(fault, bench.Stands(AlarmId.RuleFault));
        Assert.Equal(fault ? Phase.Rest : Phase.Dose, bench.Phase);
    }

    [Fact]
    public void A_rule_by_pulses_that_ends_at_once_is_a_rule_fault()
    {
        var rule = new FakeRule { RemainingPulses = (_, _) => 0 };
        CoreBench bench = AtRest(rule);
        Assert.True(bench.Stands(AlarmId.RuleFault));
        Assert.Equal(Phase.Rest, bench.Phase);
    }

    [Fact]
    public void A_rule_that_lets_the_rest_run_too_long_is_a_rule_fault_and_the_fallback_is_over_already()
    {
        var rule = new FakeRule { Remaining = (_, _) => 5_000 };
        CoreBench bench = AtRest(rule);
        Assert.Equal(LongestMs, bench.RunUntil(Phase.Dose, 200_000));
        Assert.Equal("rule-fault", bench.Standing());
    }

    [Fact]
    public void Reset_asks_the_rule_again_from_now_on_and_starts_no_pump()
    {
        int answer = 0;
        var rule = new FakeRule { Remaining = (own, _) => answer == 0 ? 0 : Math.Max(0, answer - own.ElapsedMs) };
        CoreBench bench = AtRest(rule);
        Assert.True(bench.Stands(AlarmId.RuleFault));
        answer = 20_000;
        bench.Run(3_000).Set(Button.Reset, true);
        bench.RunUntil(() => !bench.Stands(AlarmId.RuleFault), 100);
        Assert.Equal(Phase.Rest, bench.Phase);
        Assert.Equal(20_000, bench.RunUntil(Phase.Dose, 100_000));
    }

    [Fact]
    public void Reset_does_not_clear_the_fault_of_a_rule_that_is_still_wrong()
    {
        var rule = new FakeRule { Remaining = (_, _) => -1 };
        CoreBench bench = AtRest(rule);
        bench.ClearLog();
        bench.Press(Button.Reset);
        Assert.Equal("rule-fault", bench.Standing());
        Assert.Equal(["Reset obeyed"], bench.Log);
    }

    [Fact]
    public void A_rule_is_not_asked_while_a_dose_is_pending()
    {
        int asked = 0;
        var rule = new FakeRule
        {
            Remaining = (_, _) =>
            {
                asked++;
                return 50_000;
            },
        };
        CoreBench bench = Made(rule);
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(2);
        Assert.Equal(0, asked);
        bench.Pulses(2);
        Assert.True(asked > 0);
    }

    [Fact]
    public void A_rule_in_prime_is_asked_in_time()
    {
        var rule = new FakeRule { Remaining = (own, _) => own.ElapsedMs < 10_000 ? 10_000 - own.ElapsedMs : -1 };
        CoreBench bench = AtRest(rule);
        bench.Hold(Button.Prime);
        Assert.Equal(10_000 - 50, bench.RunUntil(() => bench.Stands(AlarmId.RuleFault), 20_000));
    }

    [Fact]
    public void A_rule_keeps_its_state_over_a_cut()
    {
        var rule = new FakeRule { Remaining = (own, _) => Math.Max(0, 25_000 - own.ElapsedMs) };
        CoreBench bench = AtRest(rule);
        bench.Run(20_000).CutPower();
        Assert.Equal(5_000, bench.RunUntil(Phase.Dose, 100_000));
    }

    [Fact]
    public void The_fault_of_a_rule_survives_a_cut()
    {
        var rule = new FakeRule { Remaining = (_, _) => -1 };
        CoreBench bench = AtRest(rule);
        rule.Remaining = (_, _) => 50_000;
        bench.CutPower().Run(100);
        Assert.True(bench.Stands(AlarmId.RuleFault));
    }

    [Fact]
    public void In_another_rest_mode_a_rule_is_left_alone()
    {
        var rule = new FakeRule { OnCall = call => Assert.Equal(nameof(IRestRule.Transfer), call) };
        CoreBench bench = new CoreBench(null, rule).ToRest();
        bench.RunUntil(Phase.Dose, 70_000);
        Assert.Equal("", bench.Standing());
    }

    private static CoreBench Made(FakeRule rule, Action<Settings>? more = null) => new(
        settings =>
        {
            settings[SettingField.RestMode] = (int)RestMode.Rule;
            settings[SettingField.RestFallbackMs] = FallbackMs;
            settings[SettingField.RuleLongestRestMs] = LongestMs;
            more?.Invoke(settings);
        },
        rule);

    private static CoreBench AtRest(FakeRule rule, Action<Settings>? more = null)
    {
        CoreBench bench = Made(rule, more);
        bench.RunUntil(Phase.Dose, 12_000);
        bench.Pulses(3).Switch(true).RunUntil(Phase.Rest, 200);
        return bench;
    }
}
