using System.Linq;
using LubeController.Core;
using LubeController.Scripts.Expectations;
using LubeController.Scripts.ScriptFiles;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.EndToEnd.Tests;

/// <summary>
/// Each alarm has a script in <c>hil-scripts/wiring</c> named for it, which follows it through relay, warning and lamp.
/// That the scripts hold is shown elsewhere.
/// </summary>
[Trait("Run", "Long")]
public sealed class AlarmWiringTests
{
    private static readonly string[][] Outputs =
    [
        ["supervisory.healthy"],
        ["supervisory.warning", "supervisory.no-warning"],
        ["lit.P1", "output.lamp"],
    ];

    public static TheoryData<string> Alarms => new(Enumerable.Range(0, AlarmTable.Count).Select(index => AlarmTable.Spec((AlarmId)index).Name));

    [Theory]
    [MemberData(nameof(Alarms))]
    public void Each_alarm_is_followed_through_relay_warning_and_lamp_in_health_and_in_alarm(string alarm)
    {
        BenchScript script = Repository.Read($"hil-scripts/wiring/{alarm}.yaml");
        Expectation[] inHealth = [.. script.Expectations.Where(one => one is AlwaysExpectation && one.To != null)];
        Expectation[] inAlarm = [.. script.Expectations.Where(one => one is not AlwaysExpectation && one.To == null)];

        Assert.NotNull(script.Plant.Wiring);
        Assert.Contains(inAlarm, one => Names(one).Contains("alarm." + alarm));
        foreach (string[] output in Outputs)
        {
            // Settings are invalid from the first scan on: there is no health before.
            if (alarm != "settings-invalid")
                Assert.Contains(inHealth, one => Names(one).Intersect(output).Any());
            Assert.Contains(inAlarm, one => Names(one).Intersect(output).Any());
        }
    }

    /// <summary>A lamp that the plant has is watched as it glows, not as it is driven.</summary>
    [Theory]
    [MemberData(nameof(Alarms))]
    public void A_lamp_that_is_wired_is_watched_itself(string alarm)
    {
        BenchScript script = Repository.Read($"hil-scripts/wiring/{alarm}.yaml");
        string lamp = script.Plant.Wiring!.Lamps.Count > 0 ? "lit.P1" : "output.lamp";
        Assert.Contains(script.Expectations.OfType<InOrderExpectation>(), one => one.Order.Count >= 3 && Names(one).All(name => name == lamp));
    }

    private static string[] Names(Expectation expectation) =>
        [.. expectation.Predicates.SelectMany(predicate => predicate.Comparisons).Select(comparison => comparison.Signal.Name)];
}
