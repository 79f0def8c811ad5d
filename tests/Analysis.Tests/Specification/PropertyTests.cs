using System;
using System.Linq;
using CsCheck;
using LubeController.Analysis.Specification;
using LubeController.Tests.Draws;
using Xunit;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>What holds on every sequence of inputs, presses, alarms and power cuts.</summary>
public sealed class PropertyTests
{
    private const int Sequences = 300;
    private const int StallBoundMs = 50 + (2 * 100) + (2 * 40) + Bench.ScanMs;

    private static readonly Gen<Move> Moves = Gen.Select(
        Generators.Among(0, 10, 10, 10, 40, 100, 200, 1000),
        Generators.Among(0, 0, 1, 2, 3),
        Generators.Among(Buttons.None, Buttons.None, Buttons.None, Buttons.Start, Buttons.Acknowledge, Buttons.Reset, Buttons.DoseNow, Buttons.Prime, Buttons.OutputTest),
        Gen.Frequency((60, Gen.Const(0UL)), (1, Gen.Int[0, AlarmTable.All.Count - 1].Select(alarm => 1UL << alarm))),
        Gen.Frequency((40, Gen.Const(false)), (1, Gen.Const(true))),
        Gen.Frequency((60, Gen.Const(false)), (1, Gen.Const(true))),
        Gen.Frequency((30, Gen.Const(false)), (1, Gen.Const(true))),
        Gen.Frequency((60, Gen.Const(false)), (1, Gen.Const(true))),
        (elapsed, switches, pressed, witnessed, stop, empty, low, cut) => new Move(
            elapsed,
            new SpecInputs
            {
                CycleSwitches = switches,
                Pressed = pressed,
                Witnessed = witnessed,
                Stop = stop,
                LevelEmpty = empty,
                SupplyMilliVolt = low ? 12_000 : 24_000,
            },
            cut));

    private static readonly Gen<Move[]> Sequence = Moves.Array[1, 300];

    private static readonly Gen<SpecSettings> Settings = Gen.Select(Gen.Bool, Gen.Bool, Gen.Int[0, 2], Gen.Int[1, 3]).Select(
        (tries, time, switches, pulses) => Bench.Short with
        {
            NewTries = tries,
            DosePulses = pulses,
            DoseMode = switches == 0 ? DoseMode.RunTime : DoseMode.Cycles,
            Switches = [.. Enumerable.Range(0, switches).Select(index => new SwitchSettings(100 + (50 * index), index))],
            RestMode = time ? RestMode.Time : RestMode.Either,
            HasShaft = !time,
            OverdueMs = 3000,
            SwitchDebounceMs = 10,
        });

    [Fact]
    public void After_every_scan_phase_pump_and_relay_agree_with_what_stands() => Check((spec, _) =>
    {
        AlarmRule[] standing = [.. AlarmTable.All.Where(rule => spec.Alarm(rule.Id).Stands)];
        SpecOutputs shown = spec.Outputs;
        bool interlock = standing.Any(rule => rule.Action == AlarmAction.Interlock);
        bool failure = standing.Any(rule => rule.Category == AlarmCategory.Failure);
        bool holding = standing.Any(rule => rule.Action == AlarmAction.Holding);

        if (shown.Phase == Phase.Failed)
            Assert.True(standing.Any(rule => rule.StopsPump) && !shown.HealthyRelay, $"failed with nothing standing: {spec}");
        Assert.False(shown.Pump && (interlock || holding), $"pump on under an interlock or a low supply: {spec}");
        Assert.False(shown.Pump && shown.Phase is not (Phase.Dose or Phase.Prime), $"pump on: {spec}");
        Assert.True(interlock ? shown.Phase is Phase.Failed or Phase.Stopped : shown.FunctionCheck || shown.HealthyRelay == !failure, $"{spec}");
        bool waits = AlarmTable.All.Any(rule => spec.Alarm(rule.Id).Lifecycle is Lifecycle.Unacknowledged or Lifecycle.ReturnedUnacknowledged);
        Assert.True(spec.Outputs.FirstUp is null == (standing.Length == 0 && !waits), $"first-up: {spec}");
    });

    [Fact]
    public void An_alarm_stands_exactly_while_its_lifecycle_says_so_unless_it_is_silenced() => Check((spec, _) =>
    {
        foreach (AlarmRule rule in AlarmTable.All)
        {
            AlarmView alarm = spec.Alarm(rule.Id);
            bool agrees = alarm.Lifecycle switch
            {
                Lifecycle.Normal => !alarm.Stands,
                Lifecycle.Acknowledged => alarm.Active,
                Lifecycle.Unacknowledged => alarm.Stands,
                Lifecycle.ReturnedUnacknowledged => !alarm.Active,
                Lifecycle.Latched => alarm is { Latched: true, Active: false },
                _ => true,
            };
            Assert.True(agrees && (!alarm.Latched || rule.Latches), $"{rule.Name}: {alarm}");
        }
    });

    [Fact]
    public void A_dose_in_rest_keeps_at_least_one_pulse_for_the_pump() => Check((spec, settings) =>
    {
        SpecState state = spec.State;
        int most = state.Phase is Phase.Dose or Phase.RetryPause ? settings.DosePulses : Math.Max(0, settings.DosePulses - 1);
        Assert.True(state.Dose.Count <= most, spec.ToString());
        Assert.All(state.Switches.Zip(settings.Switches), pair => Assert.True(pair.First.RetriesUsed <= pair.Second.Retries));
    });

    [Fact]
    public void Silencing_alarms_changes_annunciation_only()
    {
        Gen<(int, int)[]> hands = Gen.Select(Gen.Int[0, AlarmTable.All.Count - 1], Gen.Int[0, 3]).Array[1, 30];
        Gen.Select(Settings, Sequence, hands).Sample(
            (settings, moves, silencings) =>
            {
                LubricationSpecification plain = new(settings with { Consequences = [] });
                LubricationSpecification silenced = new(settings);
                for (int index = 0; index < moves.Length; index++)
                {
                    (int alarm, int how) = silencings[index % silencings.Length];
                    Silence(silenced, (AlarmId)alarm, how);
                    Play(plain, moves[index]);
                    Play(silenced, moves[index]);
                    Assert.Equal(
                        plain.Outputs with { WarningOutput = false, Lamp = false, FirstUp = null },
                        silenced.Outputs with { WarningOutput = false, Lamp = false, FirstUp = null });
                    Assert.All(AlarmTable.All, rule => Assert.Equal(
                        (plain.Alarm(rule.Id).Active, plain.Alarm(rule.Id).Latched), (silenced.Alarm(rule.Id).Active, silenced.Alarm(rule.Id).Latched)));
                }
            },
            iter: Sequences, threads: 1);
    }

    [Fact]
    public void After_its_cause_is_gone_failed_is_left_by_reset_and_stopped_by_start() => Gen.Select(Settings, Sequence).Sample(
        (settings, moves) =>
        {
            LubricationSpecification spec = new(settings);
            foreach (Move move in moves)
                Play(spec, move);
            spec.Step(10, new SpecInputs());
            spec.Step(10, new SpecInputs { Pressed = Buttons.Reset });
            Assert.NotEqual(Phase.Failed, spec.Outputs.Phase);
            spec.Step(10, new SpecInputs { Pressed = Buttons.Start });

            // An output test refuses start, even in the scan in which it ends.
            spec.Step(settings.OutputTestMs, new SpecInputs());
            spec.Step(10, new SpecInputs { Pressed = Buttons.Start });
            Assert.NotEqual(Phase.Stopped, spec.Outputs.Phase);
        },
        iter: Sequences * 4, threads: 1);

    /// <summary>
    /// Allowance, r + 1 timeouts and r pauses, in time spent in dose and retry pause with the supply good; here for one
    /// retry. One pause more, as a run-on pulse or a reset in a retry pause renews all and the rest of that pause comes on
    /// top; and one scan.
    /// </summary>
    [Fact]
    public void A_stall_is_alarmed_within_its_bound_from_every_state()
    {
        SpecSettings settings = Bench.Short;
        Sequence.Sample(
            moves =>
            {
                LubricationSpecification spec = new(settings);
                foreach (Move move in moves)
                    Play(spec, move);

                // The last edge may be under way; then nothing comes any more.
                spec.Step(10, new SpecInputs());
                spec.Step(10, new SpecInputs());
                int spent = 0;
                for (int scan = 0; scan < 1000 && !spec.Alarm(AlarmId.DividerStalled).Stands; scan++)
                {
                    bool counts = spec.Outputs.Phase is Phase.Dose or Phase.RetryPause;
                    spec.Step(10, new SpecInputs { Pressed = Nudge(spec.Outputs.Phase, scan) });
                    spent += counts ? 10 : 0;
                    Assert.True(spent <= StallBoundMs || spec.Alarm(AlarmId.DividerStalled).Stands, $"{spent} ms: {spec}");
                }

                Assert.True(spec.Alarm(AlarmId.DividerStalled).Stands || spec.Outputs.Phase == Phase.Failed, spec.ToString());
            },
            iter: Sequences, threads: 1);
    }

    private static Buttons Nudge(Phase phase, int scan) => phase == Phase.Stopped && scan % 2 == 0 ? Buttons.Start : Buttons.None;

    private static void Check(Action<LubricationSpecification, SpecSettings> holds) => Gen.Select(Settings, Sequence).Sample(
        (settings, moves) =>
        {
            LubricationSpecification spec = new(settings);
            foreach (Move move in moves)
            {
                Play(spec, move);
                if (!move.Cut)
                    holds(spec, settings);
            }
        },
        iter: Sequences, threads: 1);

    private static void Play(LubricationSpecification spec, Move move)
    {
        if (move.Cut)
            spec.PowerCut();
        else
            spec.Step(move.ElapsedMs, move.Inputs);
    }

    private static void Silence(LubricationSpecification spec, AlarmId alarm, int how)
    {
        if (how == 0)
            spec.Shelve(alarm, 150);
        else if (how == 1)
            spec.TakeOutOfService(alarm);
        else if (how == 2)
            spec.ReturnToService(alarm);
    }

    private sealed record Move(int ElapsedMs, SpecInputs Inputs, bool Cut);
}
