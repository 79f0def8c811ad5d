using System.Collections.Generic;
using System.Linq;
using LubeController.Analysis.Wiring;
using LubeController.Core;
using LubeController.Emulator;
using LubeController.Plant.Wiring;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.EndToEnd.Tests;

/// <summary>
/// The wiring matrix against whole runs: the deployed main loop, the simulated plant and one wire fault, seen at the
/// supervisory inputs. The matrix takes from the core's table what an alarm does; a run takes it from the core itself.
/// </summary>
[Trait("Run", "Long")]
public sealed class WiringAgreementTests
{
    private const long CauseUs = 60_000_000;

    // The lamp's whole period is shorter.
    private const long FlashUs = 2_000_000;

    // Fast enough to be known as chatter before it makes another switch look wrong.
    private const double ChatterS = 0.06;

    /// <summary>A script for plant and settings, a fault that causes just one alarm, and how long it may take to be alarmed, us.</summary>
    public static TheoryData<string, string, string, string, long> Causes => new()
    {
        { "reservoir-empty", "level-switch-stuck-on", "empty", "reservoir-empty", 3_000_000 },
        { "reservoir-low", "level-switch-stuck-on", "low", "reservoir-low", 3_000_000 },
        { "shaft-signal-lost", "shaft-switch-lost", "", "shaft-signal-lost", 40_000_000 },
        { "shaft-signal-lost", "level-switch-stuck-on", "empty", "reservoir-empty", 3_000_000 },
        { "no-power", "level-switch-stuck-on", "empty", "reservoir-empty", 3_000_000 },
        { "no-power", "level-switch-stuck-on", "low", "reservoir-low", 3_000_000 },
        { "line-overpressure", "level-switch-stuck-on", "empty", "reservoir-empty", 3_000_000 },
        { "line-overpressure", "level-switch-stuck-on", "low", "reservoir-low", 3_000_000 },
        { "divider-stalled", "outlet-blocked", "crosshead-right", "divider-stalled", 120_000_000 },
        { "line-not-vented", "vent-valve-stuck-closed", "", "line-not-vented", 260_000_000 },
        { "cycle-switch-fault-of-another", "cycle-switch-chattering", "c2-switch", "cycle-switch-fault", 8_000_000 },
    };

    [Theory]
    [MemberData(nameof(Causes))]
    public void What_a_run_shows_under_each_single_fault_is_what_the_matrix_says(string name, string cause, string part, string alarm, long withinUs)
    {
        BenchScript script = Repository.Read($"hil-scripts/wiring/{name}.yaml");
        SupervisoryWiringDescription wiring = script.Plant.Wiring!;
        BenchFault[] faults = [.. new EmulatedBench().Describe(script.Plant, script.Settings).Faults];
        var matrix = WiringMatrix.Of(wiring, WiringCondition.All);
        int compared = 0;
        foreach (WiringRow row in matrix.Rows.Where(row => row.Condition.Name == alarm))
        {
            List<Step> steps = row.Fault == null ? [] : [Set(script, faults, 0, row.Fault.Name, row.Fault.Part, 1_000_000)];
            steps.Add(Set(script, faults, steps.Count, cause, part, CauseUs));
            Trace trace = new EmulatedBench().Run(script with { Steps = steps, Expectations = [], DurationUs = CauseUs + withinUs + 1 }).Trace;
            Assert.Equal(1, trace.Find("alarm." + alarm)!.ValueAt(CauseUs + withinUs - FlashUs));
            AssertSeen(row, row.InHealth, trace, wiring, CauseUs - 1);
            AssertSeen(row, row.InAlarm, trace, wiring, CauseUs + withinUs);
            compared++;
        }

        Assert.Equal(matrix.Faults.Count + 1, compared);
    }

    /// <summary>Every alarm's category in the table is what the outputs of a run do while that alarm stands alone.</summary>
    [Fact]
    public void The_outputs_in_a_run_are_those_that_the_matrix_reckons_with()
    {
        var seen = new HashSet<string>();
        foreach (string path in Repository.WiringScripts)
        {
            Trace trace = new EmulatedBench().Run(Repository.Read(path)).Trace;
            for (long at = 1_000_000; at < trace.EndUs; at += 500_000)
            {
                AlarmId[] standing = [.. Enumerable.Range(0, AlarmTable.Count).Select(index => (AlarmId)index).Where(id => trace.Find("alarm." + AlarmTable.Spec(id).Name)!.ValueAt(at) == 1)];
                bool powered = trace.Find("output.healthy-relay")!.ValueAt(at) == 1 || standing.Length > 0;
                if (standing.Length != 1 || !powered || trace.Find("phase")!.ValueAt(at) == (int)Phase.Stopped || standing[0] is AlarmId.CycleSwitchFault or AlarmId.SensorsDisagree
                    || trace.Find("phase")!.ValueAt(at) == (int)Phase.OutputTest)
                    continue;
                var pattern = OutputPattern.Of(AlarmTable.Spec(standing[0]).Category);
                seen.Add(AlarmTable.Spec(standing[0]).Name);
                Assert.Equal(pattern.HealthyRelay == OutputState.On, trace.Find("output.healthy-relay")!.ValueAt(at) == 1);
                Assert.Equal(pattern.Warning == OutputState.On, trace.Find("output.warning")!.ValueAt(at) == 1);
            }
        }

        Assert.Superset(new HashSet<string> { "divider-stalled", "dose-too-long", "line-pressure-missing", "line-overpressure", "reservoir-low", "pulse-while-idle", "shaft-signal-lost", "line-not-vented", "rule-fault", "settings-invalid", "pump-overload", "lubricant-cold", "supply-low", "restart-unexpected", "pressure-signal-lost" }, seen);
    }

    private static Step Set(BenchScript script, BenchFault[] faults, int index, string name, string part, long atUs)
    {
        BenchFault kind = faults.Single(known => known.Name == name);
        return new Step(index, $"step-{index}", script.Steps[0].Place, new AtTime(atUs), new SetFault(kind, part, name == "cycle-switch-chattering" ? ChatterS : kind.DefaultMagnitude));
    }

    /// <summary>What an input read during the last flash of the lamp: one state, or several, which is changing.</summary>
    private static void AssertSeen(WiringRow row, WiringPicture picture, Trace trace, SupervisoryWiringDescription wiring, long timeUs)
    {
        for (int input = 0; input < wiring.Inputs.Count; input++)
        {
            Signal signal = trace.Find("supervisory." + wiring.Inputs[input].Name)!;
            string[] states = [.. Enumerable.Range(0, 100).Select(step => signal.Labels![(int)signal.ValueAt(timeUs - (FlashUs * step / 100))]).Distinct()];
            string seen = states.Length == 1 ? states[0] : "changing";
            Assert.True(picture.Allows(input, seen), $"{row.Condition.Name} under {row.Fault}: a run shows {wiring.Inputs[input].Name} {seen}, the matrix {picture}");
        }
    }
}
