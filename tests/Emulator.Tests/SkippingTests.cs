using System.Collections.Generic;
using System.Linq;
using CsCheck;
using LubeController.Core;
using LubeController.Emulator.Platform;
using LubeController.Plant.Faults;
using Xunit;

namespace LubeController.Emulator.Tests;

/// <summary>Skipping quiet time changes nothing but the number of scans.</summary>
[Trait("Run", "Long")]
public sealed class SkippingTests
{
    private static readonly AlarmId[] OfTheBoard = [AlarmId.LogicFault, AlarmId.ScanOverrun, AlarmId.StorageCorrupt];

    [Fact]
    public void Random_runs_have_the_same_trace_with_and_without_skipping() => RandomBench.Run.Sample(
        run =>
        {
            Bench skipping = Executed(run.Setup, run.Actions);
            Bench everyTick = Executed(run.Setup with { SkipQuietTime = false }, run.Actions);

            string? difference = FirstDifference(everyTick.Trace, skipping.Trace);
            Assert.True(difference == null, difference);
            Assert.True(skipping.ScansExecuted <= everyTick.ScansExecuted);
        },
        iter: 200);

    /// <summary>Also with every fault of the board, alone and together, and with a jittering board of other depth and watchdog.</summary>
    [Fact]
    public void Random_runs_with_faults_of_the_board_have_the_same_trace_with_and_without_skipping() => RandomBench.BoardRun.Sample(
        run =>
        {
            Bench skipping = Executed(run.Setup, run.Actions);
            Bench everyTick = Executed(run.Setup with { SkipQuietTime = false }, run.Actions);

            string? difference = FirstDifference(everyTick.Trace, skipping.Trace);
            Assert.True(difference == null, difference);
            Assert.Equal(everyTick.Platform.FaultLog.Entries, skipping.Platform.FaultLog.Entries);
            Assert.True(skipping.ScansExecuted <= everyTick.ScansExecuted);
        },
        iter: 200);

    [Fact]
    public void Random_runs_with_faults_of_the_board_see_each_of_them_take_effect_and_reach_its_alarms()
    {
        var took = new HashSet<Fault>();
        var alarms = new HashSet<AlarmId>();
        RandomBench.BoardRun.Sample(
            run =>
            {
                Bench bench = Executed(run.Setup, run.Actions);
                lock (took)
                {
                    took.UnionWith(bench.Platform.FaultLog.Entries.Where(entry => entry.TookEffect).Select(entry => entry.Fault));
                    alarms.UnionWith(OfTheBoard.Where(id => Raised(bench.Trace, id)));
                }
            },
            iter: 200,
            seed: "0000LubeBnch");

        Assert.Equal(BoardFaults.All.Select(fault => fault.Name).Order(), took.Select(fault => fault.Name).Order());
        Assert.Equal(OfTheBoard, alarms.Order());
    }

    [Fact]
    public void Random_runs_reach_every_phase_and_most_alarms_so_that_the_comparison_means_something()
    {
        var phases = new HashSet<double>();
        var alarms = new HashSet<string>();
        RandomBench.Run.Sample(
            run =>
            {
                Trace trace = Executed(run.Setup, run.Actions).Trace;
                lock (phases)
                {
                    Signal phase = trace.Find("phase")!;
                    for (int point = 0; point < phase.Count; point++)
                        phases.Add(phase.Value(point));
                    foreach (Signal alarm in trace.Signals.Where(signal => signal.Name.StartsWith("alarm.", System.StringComparison.Ordinal)))
                    {
                        if (Enumerable.Range(0, alarm.Count).Any(point => alarm.Value(point) == 1))
                            alarms.Add(alarm.Name);
                    }
                }
            },
            iter: 300,
            seed: "0000LubeBnch");

        Assert.Equal([0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0], phases.Order());

        // These need settings and rules that these runs do not have, and faults of the board, which others have.
        AlarmId[] without = [AlarmId.SettingsInvalid, AlarmId.RuleFault, .. OfTheBoard];
        System.Collections.Generic.IEnumerable<string> unseen = Enumerable.Range(0, AlarmTable.Count).Select(index => (AlarmId)index).Except(without)
            .Select(id => "alarm." + AlarmTable.Spec(id).Name).Except(alarms);
        Assert.True(unseen.Count() <= 1, "not seen: " + string.Join(", ", unseen));
    }

    [Fact]
    public void A_run_leaves_nothing_allocated_for_each_scan()
    {
        (BenchSetup setup, RandomAction[] _) = RandomBench.Run.Single(_ => true, "0000LubeBnch");
        setup = setup with { SkipQuietTime = false, ScanPeriodMs = 1 };
        Executed(setup with { DurationUs = 1_000_000 }, []);
        // The least of a few: what the runtime allocates for itself, once, is no matter of the scans.
        long shortRun = Enumerable.Range(0, 3).Min(_ => Allocated(setup with { DurationUs = 9_000_000 }));
        long longRun = Enumerable.Range(0, 3).Min(_ => Allocated(setup with { DurationUs = 9_990_000 }));

        // The first dose begins after ten seconds: until then 990 more scans record nothing and so may allocate nothing.
        Assert.Equal(shortRun, longRun);
    }

    private static long Allocated(BenchSetup setup)
    {
        long before = System.GC.GetAllocatedBytesForCurrentThread();
        Executed(setup, []);
        return System.GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private static bool Raised(Trace trace, AlarmId id)
    {
        Signal alarm = trace.Find("alarm." + AlarmTable.Spec(id).Name)!;
        return Enumerable.Range(0, alarm.Count).Any(point => alarm.Value(point) == 1);
    }

    private static Bench Executed(BenchSetup setup, RandomAction[] actions)
    {
        var bench = new Bench(setup, new RandomBench.Driver(actions));
        bench.Run();
        bench.Platform.NoteFaultEffects();
        return bench;
    }

    private static string? FirstDifference(Trace expected, Trace actual)
    {
        for (int index = 0; index < System.Math.Min(expected.Events.Count, actual.Events.Count); index++)
        {
            if (expected.Events[index] != actual.Events[index])
                return $"event {index}: every tick {expected.Events[index]}, skipping {actual.Events[index]}";
        }

        if (expected.Events.Count != actual.Events.Count)
            return $"{expected.Events.Count} events without skipping, {actual.Events.Count} with";
        for (int signal = 0; signal < expected.Signals.Count; signal++)
        {
            Signal one = expected.Signals[signal];
            Signal other = actual.Signals[signal];
            for (int point = 0; point < System.Math.Min(one.Count, other.Count); point++)
            {
                if (one.TimeUs(point) != other.TimeUs(point) || !one.Value(point).Equals(other.Value(point)))
                    return $"{one.Name} point {point}: every tick {one.TimeUs(point)} us {one.Value(point):R}, skipping {other.TimeUs(point)} us {other.Value(point):R}";
            }

            if (one.Count != other.Count)
                return $"{one.Name}: {one.Count} points without skipping, {other.Count} with";
        }

        return null;
    }
}
