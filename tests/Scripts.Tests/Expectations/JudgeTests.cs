using LubeController.Scripts.Expectations;
using LubeController.Scripts.Steps;
using LubeController.Scripts.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Expectations;

/// <summary>Worked examples; every expected number is derived by hand from the run beside it.</summary>
public sealed class JudgeTests
{
    private const long Second = 1_000_000;

    /// <summary>Pressure climbs from 0 to 100 bar in the first 10 s, falls back to 40 bar by 20 s, and stays.</summary>
    private static Runs Hill() => new Runs()
        .Linear("pressure.line", "Pa", (0, 0), (10 * Second, 1e7), (20 * Second, 4e6))
        .EndingAt(60 * Second);

    /// <summary>An alarm that comes at 12 s and goes at 30 s, a pump that stops with it, and a phase.</summary>
    private static Runs Stall() => new Runs()
        .OnOff("alarm.divider-stalled", (0, 0), (12 * Second, 1), (30 * Second, 0))
        .OnOff("output.pump", (0, 0), (2 * Second, 1), (12 * Second, 0))
        .Phase((0, 0), (2 * Second, 1), (12 * Second, 5), (30 * Second, 0))
        .Count("counter.doses", (0, 0), (8 * Second, 1), (40 * Second, 2))
        .EndingAt(60 * Second);

    [Fact]
    public void Always_holds_by_the_lowest_margin_in_the_window()
    {
        ExpectationVerdict verdict = Hill().Judge(Hill().Always("pressure line < 120 bar"));
        Assert.Equal(Outcome.Held, verdict.Outcome);
        AssertMargin(20.0, "bar", open: false, verdict);
        Assert.Equal("pressure line was 100 bar", verdict.Seen);
    }

    [Fact]
    public void Always_fails_at_the_crossing_between_two_recorded_points()
    {
        ExpectationVerdict verdict = Hill().Judge(Hill().Always("pressure line <= 73 bar"));
        Assert.Equal(Outcome.Failed, verdict.Outcome);
        AssertMargin(-27.0, "bar", open: false, verdict);
        Assert.Equal(7.3 * Second, verdict.DecidedUs, 1.0);
    }

    [Fact]
    public void Margins_come_in_the_unit_that_was_written()
    {
        AssertMargin(2.0, "MPa", open: false, Hill().Judge(Hill().Always("pressure line < 12 MPa")));
        AssertMargin(2000.0, "kPa", open: false, Hill().Judge(Hill().Always("pressure line < 12000 kPa")));
    }

    [Fact]
    public void A_bound_that_is_just_touched_holds_unless_it_is_strict()
    {
        Assert.Equal(Outcome.Held, Hill().Judge(Hill().Always("pressure line <= 100 bar")).Outcome);
        Assert.Equal(Outcome.Failed, Hill().Judge(Hill().Always("pressure line < 100 bar")).Outcome);
        Assert.Equal(Outcome.Held, Hill().Judge(Hill().Eventually("pressure line >= 100 bar")).Outcome);
        Assert.Equal(Outcome.Failed, Hill().Judge(Hill().Eventually("pressure line > 100 bar")).Outcome);
    }

    [Fact]
    public void Eventually_tells_how_far_above_the_level_it_came()
    {
        ExpectationVerdict verdict = Hill().Judge(Hill().Eventually("pressure line >= 80 bar", within: 9 * Second));
        Assert.Equal(Outcome.Held, verdict.Outcome);
        AssertMargin(10.0, "bar", open: false, verdict);
        Assert.Equal(8.0 * Second, verdict.DecidedUs, 1.0);
    }

    [Fact]
    public void Eventually_on_a_word_tells_the_time_that_was_left()
    {
        AssertMargin(3.0, "s", open: false, Stall().Judge(Stall().Eventually("alarm divider-stalled is on", within: 15 * Second)));
        ExpectationVerdict late = Stall().Judge(Stall().Eventually("alarm divider-stalled is on", within: 10 * Second));
        Assert.Equal(Outcome.Failed, late.Outcome);
        AssertMargin(-2.0, "s", open: false, late);
    }

    [Fact]
    public void What_never_comes_has_an_open_margin()
    {
        ExpectationVerdict verdict = Stall().Judge(Stall().Eventually("phase is prime", within: 20 * Second));
        Assert.Equal(Outcome.Failed, verdict.Outcome);
        AssertMargin(-40.0, "s", open: true, verdict);
        Assert.Equal("it never came true", verdict.Reason);
    }

    [Fact]
    public void Never_on_a_word_tells_how_far_away_it_stayed()
    {
        Runs run = Stall();
        ExpectationVerdict verdict = run.Judge(run.Always("alarm divider-stalled is on", never: true) with { To = new TimeEdge(9 * Second, "9 s") });
        Assert.Equal(Outcome.Held, verdict.Outcome);
        AssertMargin(3.0, "s", open: false, verdict);
        ExpectationVerdict failed = run.Judge(run.Always("alarm divider-stalled is on", never: true) with { To = new TimeEdge(20 * Second, "20 s") });
        Assert.Equal(Outcome.Failed, failed.Outcome);
        AssertMargin(-8.0, "s", open: false, failed);
    }

    [Fact]
    public void Counts_have_margins_in_counts()
    {
        AssertMargin(1.0, "1", open: false, Stall().Judge(Stall().Always("counter doses < 3")));
        AssertMargin(-1.0, "1", open: false, Stall().Judge(Stall().Eventually("counter doses = 3")));
        AssertMargin(0.0, "1", open: false, Stall().Judge(Stall().Eventually("counter doses = 2")));
    }

    [Fact]
    public void A_window_may_begin_with_a_step_and_end_with_an_event()
    {
        Runs run = Stall();
        Expectation expectation = run.Always("phase is dose") with { From = new StepEdge(4, "go"), To = new TriggerEdge(run.Predicate("alarm divider-stalled is on"), "the alarm") };
        ExpectationVerdict verdict = run.Judge(expectation, null, new FiredStep(4, 3 * Second));
        Assert.Equal((3.0 * Second, 12.0 * Second), (verdict.FromUs, verdict.ToUs));
        Assert.Equal(Outcome.Failed, verdict.Outcome);
        AssertMargin(0.0, "s", open: false, verdict);
    }

    [Theory]
    [InlineData("phase is prime", "its window never began")]
    [InlineData("phase is stopped", "its window never began")]
    public void A_trigger_never_reached_is_not_exercised(string trigger, string reason)
    {
        Runs run = Stall();
        ExpectationVerdict verdict = run.Judge(run.Always("phase is rest") with { From = new TriggerEdge(run.Predicate(trigger), trigger) });
        Assert.Equal(Outcome.NotExercised, verdict.Outcome);
        Assert.Contains(reason, verdict.Reason);
        Assert.Null(verdict.Margin);
    }

    [Fact]
    public void A_step_never_carried_out_is_no_window()
    {
        Runs run = Stall();
        Assert.Equal(Outcome.NotExercised, run.Judge(run.Always("phase is rest") with { From = new StepEdge(0, "go") }).Outcome);
        Assert.Equal(Outcome.NotExercised, run.Judge(run.Always("phase is rest") with { To = new StepEdge(0, "go") }).Outcome);
    }

    [Fact]
    public void A_window_beyond_the_run_is_not_exercised_unless_decided()
    {
        Runs run = Stall();
        Assert.Equal(Outcome.NotExercised, run.Judge(run.Always("output pump is off") with { From = new TimeEdge(20 * Second, "20 s"), To = new TimeEdge(90 * Second, "90 s") }).Outcome);
        Assert.Equal(Outcome.Failed, run.Judge(run.Always("output pump is off") with { To = new TimeEdge(90 * Second, "90 s") }).Outcome);
        Assert.Equal(Outcome.Held, run.Judge(run.Eventually("output pump is on", within: 90 * Second)).Outcome);
        Assert.Equal(Outcome.NotExercised, run.Judge(run.Eventually("phase is prime", within: 90 * Second)).Outcome);
        Assert.Equal(Outcome.NotExercised, run.Judge(run.Always("output pump is off") with { From = new TimeEdge(61 * Second, "61 s") }, 90 * Second).Outcome);
        Assert.Equal(Outcome.NotExercised, run.Judge(run.Always("counter doses < 3"), plannedEndUs: 61 * Second).Outcome);
        Assert.Equal(Outcome.NotExercised, run.Judge(run.InOrder("phase is failed", "phase is prime") with { WithinUs = 90 * Second }).Outcome);
        Assert.Equal(Outcome.NotExercised, run.Judge(run.Holds("phase is prime", Second, within: 90 * Second)).Outcome);
        Assert.Equal(Outcome.NotExercised, run.Judge(run.Until("counter doses < 3", "phase is prime", within: 90 * Second)).Outcome);
    }

    [Fact]
    public void Until_holds_up_to_the_event()
    {
        Runs run = Stall();
        ExpectationVerdict verdict = run.Judge(run.Until("phase is dose", "alarm divider-stalled is on", within: 20 * Second) with { From = new TimeEdge(2 * Second, "2 s") });
        Assert.Equal(Outcome.Held, verdict.Outcome);
        AssertMargin(0.0, "s", open: false, verdict);
        ExpectationVerdict slack = run.Judge(run.Until("counter doses < 2", "alarm divider-stalled is on", within: 20 * Second));
        Assert.Equal(Outcome.Held, slack.Outcome);
        AssertMargin(8.0, "s", open: false, slack);
        Assert.Equal("+1 for 'counter doses < 2' alone", $"{slack.Parts[0].Margin} for '{slack.Parts[0].Sentence}' alone");
    }

    [Fact]
    public void Until_fails_where_the_first_ends_too_early()
    {
        Runs run = Stall();
        ExpectationVerdict verdict = run.Judge(run.Until("phase is rest", "alarm divider-stalled is on", within: 20 * Second));
        Assert.Equal(Outcome.Failed, verdict.Outcome);
        AssertMargin(-10.0, "s", open: false, verdict);
        Assert.Equal(2.0 * Second, verdict.DecidedUs);
    }

    [Fact]
    public void Until_of_one_quantity_has_a_margin_of_it()
    {
        Runs run = new Runs()
            .Linear("pressure.line", "Pa", (0, 3e6), (10 * Second, 1e6))
            .Linear("pressure.gauge", "Pa", (0, 0), (10 * Second, 1e7))
            .EndingAt(10 * Second);
        // line falls 2 bar/s from 30, gauge climbs 10 bar/s: with line >= 20 before and gauge >= 40, the least of
        // (line - 20) and (gauge - 40) is greatest where 10 - 2t = 10t - 40, t = 50/12 s: 10 - 100/12 = 1.6667 bar.
        ExpectationVerdict verdict = run.Judge(run.Until("pressure line >= 20 bar", "pressure gauge >= 40 bar"));
        Assert.Equal(Outcome.Held, verdict.Outcome);
        AssertMargin(10.0 - (100.0 / 12.0), "bar", open: false, verdict);
    }

    [Fact]
    public void Holds_measures_the_longest_stretch()
    {
        Runs run = Stall();
        AssertMargin(8.0, "s", open: false, run.Judge(run.Holds("phase is failed", 10 * Second)));
        ExpectationVerdict failed = run.Judge(run.Holds("phase is dose", 15 * Second));
        Assert.Equal(Outcome.Failed, failed.Outcome);
        AssertMargin(-5.0, "s", open: false, failed);
    }

    [Fact]
    public void Holds_of_a_quantity_finds_the_level_kept()
    {
        // Up 10 bar/s to 100 at 10 s, down 6 bar/s: a stretch of 4 s is kept above L where (100-L)/10 + (100-L)/6 = 4 s,
        // so 100 - L = 15 bar, L = 85 bar: 25 bar above 60.
        Runs run = Hill();
        ExpectationVerdict verdict = run.Judge(run.Holds("pressure line >= 60 bar", 4 * Second));
        Assert.Equal(Outcome.Held, verdict.Outcome);
        AssertMargin(25.0, "bar", open: false, verdict);
    }

    [Fact]
    public void Holds_for_longer_than_its_window_is_not_exercised() =>
        Assert.Equal(Outcome.NotExercised, Stall().Judge(Stall().Holds("phase is failed", 10 * Second, within: 5 * Second)).Outcome);

    [Fact]
    public void In_order_wants_each_to_come_after_the_one_before()
    {
        Runs run = Stall();
        ExpectationVerdict verdict = run.Judge(run.InOrder("output pump is on", "counter doses >= 1", "alarm divider-stalled is on", "phase is failed", "phase is rest"));
        Assert.Equal(Outcome.Held, verdict.Outcome);
        AssertMargin(0.0, "s", open: false, verdict);
        ExpectationVerdict wrong = run.Judge(run.InOrder("counter doses >= 2", "alarm divider-stalled is on"));
        Assert.Equal(Outcome.Failed, wrong.Outcome);
        AssertMargin(-28.0, "s", open: false, wrong);
        Assert.Contains("before", wrong.Reason);
    }

    [Fact]
    public void In_order_does_not_take_what_was_true_before_for_what_comes_after()
    {
        Runs run = Stall();
        Assert.Equal(Outcome.Failed, run.Judge(run.InOrder("counter doses >= 1", "output pump is on")).Outcome);
        Assert.Equal(Outcome.Held, run.Judge(run.InOrder("output pump is on", "counter doses >= 1")).Outcome);
    }

    [Fact]
    public void Units_are_never_mixed_in_one_margin()
    {
        Runs run = Hill();
        run.OnOff("output.pump", (0, 1), (15 * Second, 0));
        ExpectationVerdict verdict = run.Judge(run.Always("pressure line < 120 bar and output pump is on") with { To = new TimeEdge(9 * Second, "9 s") });
        Assert.Equal(Outcome.Held, verdict.Outcome);
        AssertMargin(6.0, "s", open: false, verdict);
        PartMargin part = Assert.Single(verdict.Parts);
        Assert.Equal("pressure line < 120 bar", part.Sentence);
        Assert.Equal(30.0, part.Margin.Value, 1e-9);
        Assert.Equal("bar", part.Margin.Unit);
    }

    [Fact]
    public void Comparisons_of_one_quantity_share_its_margin()
    {
        Runs run = Hill();
        AssertMargin(-10.0, "bar", open: false, run.Judge(run.Always("pressure line >= 10 bar and pressure line <= 20 MPa")));
        AssertMargin(900.0, "bar", open: false, run.Judge(run.Always("pressure line >= 70 bar or pressure line <= 1000 bar")));
    }

    [Fact]
    public void A_signal_without_value_is_not_exercised()
    {
        Runs run = new Runs().OnOff("output.pump", (5 * Second, 1)).EndingAt(10 * Second);
        ExpectationVerdict verdict = run.Judge(run.Always("output pump is on"));
        Assert.Equal(Outcome.NotExercised, verdict.Outcome);
        Assert.Contains("'output pump' has no value at 0 s", verdict.Reason);
    }

    [Fact]
    public void The_last_of_two_points_at_one_time_counts()
    {
        Runs run = new Runs().Linear("pressure.line", "Pa", (0, 0), (10 * Second, 1e6), (10 * Second, 5e6), (20 * Second, 5e6)).EndingAt(20 * Second);
        Assert.Equal(10.0 * Second, run.Judge(run.Eventually("pressure line >= 30 bar")).DecidedUs);
        AssertMargin(-30.0, "bar", open: false, run.Judge(run.Always("pressure line < 20 bar")));
    }

    private static void AssertMargin(double value, string unit, bool open, ExpectationVerdict verdict)
    {
        Assert.NotNull(verdict.Margin);
        Assert.Equal((unit, open), (verdict.Margin.Value.Unit, verdict.Margin.Value.IsOpen));
        Assert.Equal(value, verdict.Margin.Value.Value, 1e-6);
    }
}
