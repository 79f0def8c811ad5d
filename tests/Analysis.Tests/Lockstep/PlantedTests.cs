using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Analysis.Lockstep;
using LubeController.Analysis.Specification;
using LubeController.Core;
using Xunit;
using AlarmId = LubeController.Analysis.Specification.AlarmId;
using AlarmTable = LubeController.Analysis.Specification.AlarmTable;
using Phase = LubeController.Analysis.Specification.Phase;

namespace LubeController.Analysis.Tests.Lockstep;

/// <summary>Disagreements planted on either side are found within the cases that every run draws, and shrink to few steps.</summary>
[Trait("Run", "Long")]
public sealed class PlantedTests(ITestOutputHelper output)
{
    private const int MostSteps = 14;

    private static readonly Dictionary<string, (Func<SpecSettings, SpecSettings>? Settings, SpecMisreadings Misread)> InSpecification = new()
    {
        ["a pause that is over leads to rest"] = (null, Phases(PhaseEvent.PauseOver, Phase.RetryPause, PhaseEvent.PowerUp)),
        ["reset takes the operating stop off"] = (null, Phases(PhaseEvent.Reset, Phase.Stopped, PhaseEvent.StartPressed)),
        ["prime is not refused in a dose"] = (null, Phases(PhaseEvent.PrimePressed, Phase.Dose, null)),
        ["an interlock leaves prime alone"] = (null, Phases(PhaseEvent.Interlock, Phase.Prime, null)),
        ["a cut in a dose leads to stopped"] = (null, Phases(PhaseEvent.PowerUp, Phase.Dose, PhaseEvent.StopOn)),
        ["an empty reservoir does not latch"] = (null, Alarms(AlarmId.ReservoirEmpty, rule => rule with { Latches = false })),
        ["a pulse while idle is no failure"] = (null, Alarms(AlarmId.PulseWhileIdle, rule => rule with { Category = Analysis.Specification.AlarmCategory.OutOfSpecification })),
        ["a pump overload ends the dose only"] = (null, Alarms(AlarmId.PumpOverload, rule => rule with { Action = Analysis.Specification.AlarmAction.DoseEnding })),
        ["a low supply does not hold the pump"] = (null, Alarms(AlarmId.SupplyLow, rule => rule with { Action = Analysis.Specification.AlarmAction.None })),
        ["a line not vented is not ended by reset"] = (null, Alarms(AlarmId.LineNotVented, rule => rule with { OnlyARunningPumpShows = false })),
        ["an alarm that returned needs no acknowledgement"] = (null, Lifecycles(LifecycleEvent.ConditionEnds, Lifecycle.Unacknowledged, LifecycleEvent.Acknowledge)),
        ["shelving hides nothing that is acknowledged"] = (null, Lifecycles(LifecycleEvent.Shelve, Lifecycle.Acknowledged, null)),
        ["a timeout is one scan longer"] = (s => s with { Switches = [.. s.Switches.Select(one => one with { TimeoutMs = one.TimeoutMs + 10 })] }, SpecMisreadings.None),
        ["one retry more"] = (s => s with { Switches = [.. s.Switches.Select(one => one with { Retries = one.Retries + 1 })] }, SpecMisreadings.None),
        ["no allowance for the first pulse"] = (s => s with { FirstPulseAllowanceMs = 0 }, SpecMisreadings.None),
        ["the rest after a reset is no restart delay"] = (s => s with { RestartDelayMs = 0 }, SpecMisreadings.None),
        ["a run-on time that is one scan longer"] = (s => s with { RunOnMs = s.RunOnMs + 10 }, SpecMisreadings.None),
        ["a hold time that is one scan shorter"] = (s => s with { HoldMs = Math.Max(1, s.HoldMs - 10) }, SpecMisreadings.None),
        ["no consequence is suppressed"] = (s => s with { Consequences = [] }, SpecMisreadings.None),
        ["one restart more is expected"] = (s => s with { RestartsMost = s.RestartsMost == 0 ? 0 : s.RestartsMost + 1 }, SpecMisreadings.None),
        ["one witness more proves a switch wrong"] = (s => s with { WitnessPulses = s.WitnessPulses == 0 ? 0 : s.WitnessPulses + 1 }, SpecMisreadings.None),
        ["a dose-ending switch that is wrong ends no dose"] = (null, Alarms(AlarmId.CycleSwitchFault, rule => rule with { Action = Analysis.Specification.AlarmAction.None })),
        ["another switch that is wrong ends the dose"] = (null, Alarms(AlarmId.OtherSwitchFault, rule => rule with { Action = Analysis.Specification.AlarmAction.DoseEnding })),
        ["a chatter window that is one scan longer"] = (s => s with { ChatterWindowMs = s.ChatterWindowMs + 10 }, SpecMisreadings.None),
        ["a run-down that is one scan longer"] = (s => s with { RunDownMs = s.RunDownMs == 0 ? 0 : s.RunDownMs + 10 }, SpecMisreadings.None),
        ["a rest counts while the machine stands"] = (s => s with { RestOnlyWhileRunning = false }, SpecMisreadings.None),
    };

    private static readonly Dictionary<string, Func<SettingsValues, ILockstepCore>> InCore = new()
    {
        ["one pulse more"] = Settings(SettingField.DoseEdges, value => value + 1),
        ["an overdue limit that is one scan shorter"] = Settings(SettingField.OverdueMs, value => value - 10),
        ["no debounce of the buttons"] = Settings(SettingField.ButtonDebounceMs, _ => 0),
        ["one pressure cycle of two"] = Settings(SettingField.PressureCycles, _ => 1),
        ["a prime limit that is one scan longer"] = Settings(SettingField.PrimeLimitMs, value => value + 10),
        ["no hysteresis of the supply"] = Settings(SettingField.SupplyHysteresisMv, _ => 0),
        ["a delay on of one scan"] = Settings(SettingField.DelayOn(Core.AlarmId.ReservoirEmpty), value => value + 10),
        ["a save interval that is one scan longer"] = Settings(SettingField.SaveIntervalMs, value => value + 10),
        ["a restart window that is half as long"] = Settings(SettingField.RestartWindowMs, value => Math.Max(1_000, value / 2)),
        ["one change more is chatter"] = Settings(SettingField.ChatterChanges, value => value == 0 ? 0 : value + 1),
        ["a run-down that is not judged"] = Settings(SettingField.RunDownMs, _ => 0),
        ["no second witness"] = Settings(SettingField.WitnessPulses, _ => 0),
        ["a reset that is not heard"] = values => new DistortedCore(values) { Hears = seen => seen with { Pressed = seen.Pressed & ~Buttons.Reset } },
        ["acknowledge that also resets"] = values => new DistortedCore(values)
        {
            Hears = seen => (seen.Pressed & Buttons.Acknowledge) != 0 ? seen with { Pressed = seen.Pressed | Buttons.Reset } : seen,
        },
        ["a stop that is not heard while prime is held"] = values => new DistortedCore(values)
        {
            Hears = seen => (seen.Pressed & Buttons.Prime) != 0 ? seen with { Stop = false } : seen,
        },
        ["a relay that is never dropped"] = values => new DistortedCore(values) { Shows = (seen, _) => seen with { HealthyRelay = true } },
        ["a pump that follows one scan late"] = values => new DistortedCore(values) { Shows = (seen, before) => seen with { Pump = before.Pump } },
        ["a vent valve that follows one scan late"] = values => new DistortedCore(values) { Shows = (seen, before) => seen with { VentValve = before.VentValve } },
        ["a lamp that does not flash"] = values => new DistortedCore(values) { Shows = (seen, before) => seen with { Lamp = seen.Lamp || before.Lamp } },
        ["an alarm that is lost in a power cut"] = values => new DistortedCore(values) { LosesAlarm = (int)Core.AlarmId.ReservoirEmpty },
        ["a cut that forgets everything"] = values => new DistortedCore(values) { Forgets = true },
        ["a clock that is two per cent fast"] = values => new DistortedCore(values) { Clock = nowMs => nowMs + (nowMs / 50) },
    };

    public static TheoryData<string> Specification => [.. InSpecification.Keys];

    public static TheoryData<string> OfCore => [.. InCore.Keys];

    [Theory]
    [MemberData(nameof(Specification))]
    public void A_disagreement_planted_in_the_specification_is_found(string planted)
    {
        (Func<SpecSettings, SpecSettings>? alter, SpecMisreadings misread) = InSpecification[planted];
        Found(planted, (settings, steps) => Analysis.Lockstep.Lockstep.Run(
            settings, steps, values => new DeployedCore(values), alter, misread, LockstepAllowances.All));
    }

    [Theory]
    [MemberData(nameof(OfCore))]
    public void A_disagreement_planted_in_the_core_is_found(string planted) =>
        Found(planted, (settings, steps) => Analysis.Lockstep.Lockstep.Run(settings, steps, InCore[planted]));

    /// <summary>An allowance that is not needed is none.</summary>
    [Theory]
    [InlineData(LockstepAllowance.FirstUpOfOneScan)]
    [InlineData(LockstepAllowance.PauseRunsOnWhileHeld)]
    public void Without_an_allowance_a_difference_appears(LockstepAllowance allowance)
    {
        Assert.False(string.IsNullOrWhiteSpace(LockstepAllowances.Reasons[allowance]));
        HashSet<LockstepAllowance> others = [.. LockstepAllowances.All.Where(one => one != allowance)];
        Found(allowance.ToString(), (settings, steps) => Analysis.Lockstep.Lockstep.Run(
            settings, steps, values => new DeployedCore(values), null, SpecMisreadings.None, others));
    }

    [Fact]
    public void Every_allowance_has_its_reason() =>
        Assert.Equal(LockstepAllowances.All.Order(), LockstepAllowances.Reasons.Keys.Order());

    [Fact]
    public void The_campaign_finds_what_a_distorted_core_does_and_passes_the_deployed_one()
    {
        Assert.Null(LockstepCampaign.Run(values => new DeployedCore(values), 50, LockstepTests.Seed));
        Assert.NotNull(LockstepCampaign.Run(values => new DistortedCore(values) { Forgets = true }, LockstepTests.Cases, LockstepTests.Seed));
    }

    private static SpecMisreadings Phases(PhaseEvent happening, Phase phase, PhaseEvent? heard) =>
        SpecMisreadings.None with { Phases = (now, happens) => now == phase && happens == happening ? heard : happens };

    private static SpecMisreadings Lifecycles(LifecycleEvent happening, Lifecycle state, LifecycleEvent? heard) =>
        SpecMisreadings.None with { Lifecycle = (now, happens) => now == state && happens == happening ? heard : happens };

    private static SpecMisreadings Alarms(AlarmId alarm, Func<AlarmRule, AlarmRule> alter) =>
        SpecMisreadings.None with { Alarms = [.. AlarmTable.All.Select(rule => rule.Id == alarm ? alter(rule) : rule)] };

    private static Func<SettingsValues, ILockstepCore> Settings(int field, Func<int, int> alter) =>
        values => new DeployedCore(values.With(field, alter(values[field])));

    private void Found(string planted, Func<SettingsValues, IReadOnlyList<LockstepStep>, Disagreement?> run)
    {
        LockstepFinding? finding = LockstepCampaign.Find(run, LockstepTests.Cases, LockstepTests.Seed, shrink: true);

        Assert.True(finding is not null, $"{planted}: not found in {LockstepTests.Cases} cases");
        output.WriteLine($"{planted}: case {finding.Index}, {finding.Case.Steps.Count} steps, {finding.Case.Scans} scans: {finding.Found.What}");
        Assert.True(finding.Case.Steps.Count <= MostSteps, finding.ToString());
    }
}
