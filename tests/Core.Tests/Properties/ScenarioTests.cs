using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using Xunit;

namespace LubeController.Core.Tests;

/// <summary>What must hold for every run, tried on random ones.</summary>
public sealed class ScenarioTests
{
    private const int Cases = 400;

    /// <summary>Mark, length and check value come first in a saved state; the check value differs wherever anything does.</summary>
    private const int CheckValueEnd = 12;

    [Fact]
    public void Random_settings_are_accepted() =>
        Property.ForAll(Scenarios.Any, Cases, scenario =>
        {
            var check = new SettingsCheck();
            bool accepted = check.Accepts(scenario.MakeSettings(), true);
            Assert.True(accepted, accepted ? "" : $"{SettingTable.Spec(check[0].Field).Name} {check[0].Value}: {check[0].Reason}");
        });

    [Fact]
    public void Skipping_quiet_time_shows_what_scanning_every_tick_shows() =>
        Property.ForAll(Scenarios.Any, Cases, scenario =>
        {
            ScenarioRun every = new ScenarioRun(scenario, Pace.EveryTick).Play();
            ScenarioRun skipping = new ScenarioRun(scenario, Pace.Skipping).Play();
            Same(every, skipping, every.States.Count);
            Assert.True(skipping.Scans <= every.Scans);
        });

    [Fact]
    public void A_core_kept_from_skipping_decides_the_same() =>
        Property.ForAll(Scenarios.Any, Cases, scenario =>
        {
            ScenarioRun every = new ScenarioRun(scenario, Pace.EveryTick).Play();
            ScenarioRun forced = new ScenarioRun(scenario, Pace.EveryTickForced).Play();
            Same(every, forced, 1);
        });

    [Fact]
    public void A_new_core_given_the_saved_state_has_the_same_future() =>
        Property.ForAll(Gen.Select(Scenarios.Any, Gen.Int[0, 1_000]), Cases, (drawn) =>
        {
            (Scenario scenario, int when) = drawn;
            int at = when % scenario.Steps.Count;
            ScenarioRun whole = new ScenarioRun(scenario, Pace.EveryTick).Play();
            var swapped = new ScenarioRun(scenario, Pace.EveryTick);
            swapped.BeforeStep = (run, index) =>
            {
                if (index == at)
                    run.SwapCore();
            };
            Same(whole, swapped.Play(), whole.States.Count);
        });

    [Fact]
    public void Where_the_clock_starts_does_not_matter() =>
        Property.ForAll(Gen.Select(Scenarios.Any, Gen.UInt[0, 60_000]), Cases / 2, (drawn) =>
        {
            (Scenario scenario, uint before) = drawn;
            ScenarioRun low = new ScenarioRun(scenario, Pace.Skipping).Play();
            ScenarioRun wrapping = new ScenarioRun(scenario, Pace.Skipping, unchecked(0u - before)).Play();
            Same(low, wrapping, low.States.Count);
        });

    [Fact]
    public void The_pump_and_the_outputs_follow_phase_and_alarms() =>
        Property.ForAll(Scenarios.Any, Cases, scenario =>
        {
            var run = new ScenarioRun(scenario, Pace.EveryTick);
            run.OnScan = Invariants.Hold;
            run.Play();
        });

    [Fact]
    public void A_dose_by_pressure_counts_only_what_the_transmitter_showed_and_starts_only_from_a_vented_line()
    {
        int judged = 0;
        int starts = 0;
        Property.ForAll(Scenarios.ByTransmitter, Cases, scenario =>
        {
            var oracle = new PressureOracle();
            var run = new ScenarioRun(scenario, Pace.EveryTick);
            run.OnScan = oracle.Judge;
            run.Play();
            judged += oracle.Judged;
            starts += oracle.Starts;
        });
        Assert.True(judged > Property.Scaled(Cases / 2), $"{judged} doses and {starts} starts of the pump were judged");
        Assert.True(starts > Property.Scaled(Cases), $"{starts} starts of the pump were judged");
    }

    [Fact]
    public void Random_runs_meet_every_phase_and_every_alarm()
    {
        // Settings are always valid here.
        int all = ((1 << AlarmTable.Count) - 1) & ~(1 << (int)AlarmId.SettingsInvalid);
        var phases = new HashSet<Phase>();
        var steps = new HashSet<DoseStep>();
        int alarms = 0;
        foreach (Scenario scenario in Property.Draw(Scenarios.Any, 400))
        {
            var run = new ScenarioRun(scenario, Pace.Skipping);
            run.OnScan = seen =>
            {
                phases.Add(seen.Core.Phase);
                steps.Add(seen.Core.DoseStep);
                alarms |= seen.Core.Alarms.Standing;
            };
            run.Play();
            if (alarms == all && phases.Count == Enum.GetValues<Phase>().Length && steps.Count == Enum.GetValues<DoseStep>().Length)
                break;
        }

        Assert.Equal(Enum.GetValues<Phase>(), phases.Order());
        Assert.Equal(Enum.GetValues<DoseStep>(), steps.Order());
        Assert.Equal(all, alarms);
    }

    /// <summary>Compares what was shown, and the saved states from the end on.</summary>
    private static void Same(ScenarioRun left, ScenarioRun right, int states)
    {
        int common = Math.Min(left.Log.Count, right.Log.Count);
        for (int line = 0; line < common; line++)
            Assert.True(left.Log[line] == right.Log[line], Difference(left.Log, right.Log, line));
        Assert.True(left.Log.Count == right.Log.Count, Difference(left.Log, right.Log, common));
        for (int back = 1; back <= states; back++)
            Assert.True(left.States[^back].AsSpan().SequenceEqual(right.States[^back]), $"saved states differ, {back} from the end, at byte {FirstDifference(left.States[^back], right.States[^back])}");
    }

    private static int FirstDifference(byte[] left, byte[] right) =>
        Enumerable.Range(CheckValueEnd, left.Length - CheckValueEnd).FirstOrDefault(at => left[at] != right[at], -1);

    private static string Difference(List<string> left, List<string> right, int line) =>
        $"before: {string.Join(" | ", left.Take(line).TakeLast(6))}\nfirst:  {string.Join(" | ", left.Skip(line).Take(3))}\nsecond: {string.Join(" | ", right.Skip(line).Take(3))}";
}
