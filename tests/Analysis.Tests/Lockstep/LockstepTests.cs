using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using CsCheck;
using LubeController.Analysis.Lockstep;
using LubeController.Core;
using Xunit;
using Specified = LubeController.Analysis.Specification;

namespace LubeController.Analysis.Tests.Lockstep;

/// <summary>Core and specification agree on random sequences. LUBE_PROPERTY_PERCENT scales how many, LUBE_PROPERTY_SEED draws others.</summary>
[Trait("Run", "Long")]
public sealed class LockstepTests
{
    internal const int Cases = 2_000;

    internal const ulong Seed = 20_251_126;

    /// <summary>Alarms that no case raises, since the specification leaves out what raises them.</summary>
    internal static readonly IReadOnlySet<AlarmId> LeftOut = new HashSet<AlarmId> { AlarmId.SettingsInvalid, AlarmId.RuleFault };

    /// <summary>Alarms of which one meeting would show little, since there are several ways to them.</summary>
    private static readonly (AlarmId Alarm, int Cases)[] Often =
    [
        (AlarmId.RestartUnexpected, 100),
        (AlarmId.SensorsDisagree, 50),
        (AlarmId.CycleSwitchFault, 90),
    ];

    [Fact]
    public void Core_and_specification_agree_on_random_sequences()
    {
        int cases = Math.Max(1, (int)((long)Cases * Number("LUBE_PROPERTY_PERCENT", 100) / 100));
        LockstepFinding? finding = LockstepCampaign.Find(
            Analysis.Lockstep.Lockstep.Run, cases, (ulong)Number("LUBE_PROPERTY_SEED", (int)Seed), Number("LUBE_PROPERTY_SHRINK", 1) != 0);

        Assert.True(finding is null, finding?.ToString());
    }

    /// <summary>Agreement over nothing proves nothing: these cases go everywhere that the specification knows.</summary>
    [Fact]
    public void Random_sequences_meet_every_phase_every_way_to_end_a_dose_and_every_alarm_that_is_specified()
    {
        var phases = new HashSet<int>();
        var alarms = new HashSet<(AlarmId Alarm, int Case)>();
        var states = new HashSet<int>();
        var completed = new HashSet<DoseMode>();
        for (int index = 0; index < 1_500; index++)
        {
            int at = index;
            LockstepCase drawn = LockstepCases.Any.Generate(new PCG((uint)index + 1, Seed), null, out _);
            Analysis.Lockstep.Lockstep.Run(drawn.Settings, drawn.Steps, values => new DistortedCore(values) { Shows = (seen, _) => Note(drawn, at, seen) });
        }

        Assert.Equal(Enumerable.Range(0, 7), phases.Order());
        Assert.Equal(Enumerable.Range(0, 9), states.Order());
        Assert.Equal(Enum.GetValues<DoseMode>(), completed.Order());
        Assert.Equal(Enum.GetValues<AlarmId>().Where(alarm => !LeftOut.Contains(alarm)), alarms.Select(raised => raised.Alarm).Distinct().Order());
        Assert.All(Often, often => Assert.True(alarms.Count(raised => raised.Alarm == often.Alarm) >= often.Cases, $"{often.Alarm}: {alarms.Count(raised => raised.Alarm == often.Alarm)} cases"));

        Observation Note(LockstepCase drawn, int at, Observation seen)
        {
            phases.Add(seen.Phase);
            if (seen.DosesCompleted > 0)
                completed.Add((DoseMode)drawn.Settings[SettingField.DoseMode]);
            for (int alarm = 0; alarm < seen.Alarms.Count; alarm++)
            {
                states.Add(seen.Alarms[alarm].State);
                if (seen.Alarms[alarm].Active || seen.Alarms[alarm].Latched)
                    alarms.Add(((AlarmId)alarm, at));
            }

            return seen;
        }
    }

    [Fact]
    public void A_difference_is_told_with_the_sequence_that_shows_it()
    {
        LockstepStep[] steps = [new(new LockstepInputs(), 10, 3), new(new LockstepInputs { LevelEmpty = true }, 10, 2)];
        SettingsValues settings = LockstepSettings.Neutral(LockstepSettings.ValuesOf(new Settings())).With(SettingField.LevelEmptyFitted, 1).With(SettingField.LevelDebounceMs, 10);

        Assert.Null(Analysis.Lockstep.Lockstep.Run(settings, steps));
        Disagreement? found = Analysis.Lockstep.Lockstep.Run(settings, steps, values => new DeployedCore(values.With(SettingField.LevelDebounceMs, 0)));

        Assert.NotNull(found);
        Assert.Equal((1, 0, "phase: core failed, specification rest"), (found.Step, found.Scan, found.What));
        Assert.StartsWith(
            "In step 1, scan 0: phase: core failed, specification rest\n  0: 3 x 10 ms\n  1: 2 x 10 ms, empty switch on\n  specification: rest; pump off;",
            found.Tell(steps),
            StringComparison.Ordinal);
    }

    /// <summary>The numbers that an observation carries mean the same on both sides.</summary>
    [Fact]
    public void Numbers_mean_the_same_on_both_sides()
    {
        Assert.Equal(Enum.GetNames<Core.Phase>(), Enum.GetNames<Specified.Phase>());
        Assert.Equal(Enum.GetNames<Core.AlarmAction>(), Enum.GetNames<Specified.AlarmAction>());
        Assert.Equal(Enum.GetNames<Core.AlarmCategory>(), Enum.GetNames<Specified.AlarmCategory>());
        Assert.Equal(
            ["Normal", "Unacknowledged", "Acknowledged", "ReturnedUnacknowledged", "LatchedUnacknowledged", "LatchedAcknowledged", "Shelved", "SuppressedByDesign", "OutOfService"],
            Enum.GetNames<AlarmState>());
        Assert.All(Specified.AlarmTable.All.Where(rule => rule.Id != Specified.AlarmId.OtherSwitchFault), rule =>
            Assert.Equal(rule.Name, Core.AlarmTable.Spec((AlarmId)LockstepSettings.CoreNumberOf(rule.Id)).Name));
        Assert.Equal(
            Enumerable.Range(0, Core.AlarmTable.Count),
            Specified.AlarmTable.All.Select(rule => LockstepSettings.CoreNumberOf(rule.Id)).Distinct().Order());
    }

    [Fact]
    public void Settings_that_cannot_be_expressed_are_refused_by_name()
    {
        SettingsValues presets = LockstepSettings.ValuesOf(new Settings());
        SettingsValues neutral = LockstepSettings.Neutral(presets);

        Assert.Equal(neutral, LockstepSettings.Neutral(neutral));
        Assert.Equal(20 * 60 * 1000, LockstepSettings.ToSpec(neutral).RestMs);
        Assert.Equal("pulses-show-pressure is 1; accepted: 0, as the specification leaves it out. (Parameter 'values')", Refusal(presets.With(SettingField.PulsesShowPressure, 1)));
        Assert.Equal("rest is 10; accepted: 1000 to 2073600000: out of range. (Parameter 'values')", Refusal(neutral.With(SettingField.RestMs, 10)));
        Assert.Contains("no rest rule is built in", Refusal(neutral.With(SettingField.RestMode, (int)RestMode.Rule)), StringComparison.Ordinal);

        static string Refusal(SettingsValues values) => Assert.Throws<ArgumentException>(() => LockstepSettings.ToSpec(values)).Message;
    }

    private static int Number(string variable, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out int number) ? number : otherwise;
}
