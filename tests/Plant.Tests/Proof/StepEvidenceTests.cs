using System.Linq;
using Xunit;

namespace LubeController.Plant.Tests.Proof;

/// <summary>
/// The steps of the network are of its own choice, so that they must be shown to be short enough: with shorter ones no pulse
/// moves by more than a thousandth of a cycle and no volume by more than a ten-thousandth. Pulses are held as times since
/// the start, so that what they are off by adds up over the ten cycles and more of a run.
/// </summary>
[Trait("Run", "Long")]
public sealed class StepEvidenceTests(ITestOutputHelper output)
{
    private const double PulsePart = 1e-3;

    private const double VolumePart = 1e-4;

    public static TheoryData<string> EveryScenario() => [.. Scenarios.All.Select(scenario => scenario.Name)];

    [Theory]
    [MemberData(nameof(EveryScenario))]
    public void Halving_every_step_and_halving_it_again_moves_no_pulse_and_no_volume(string name)
    {
        Scenario scenario = Scenarios.Named(name);
        Evidence whole = scenario.Run();
        Evidence half = scenario.Run(stepScale: 0.5);
        Evidence quarter = scenario.Run(stepScale: 0.25);

        Assert.True(half.System.StepCount > whole.System.StepCount, "Half the step must take more of them.");
        Hold("1 against 1/2", whole, half);
        Hold("1/2 against 1/4", half, quarter);
        Hold("1 against 1/4", whole, quarter);
        Assert.InRange(whole.System.Balance().RelativeError, 0, 1e-9);
    }

    [Theory]
    [MemberData(nameof(EveryScenario))]
    public void A_fine_fixed_step_of_a_fifth_of_a_millisecond_finds_the_same_pulses_and_volumes(string name)
    {
        const double longestS = 2e-4;
        const double endS = 45;
        Scenario scenario = Scenarios.Named(name);
        Evidence own = scenario.Run(endS: endS);
        Evidence fixedStep = scenario.Run(longestStepS: longestS, endS: endS);

        // No step is longer; where nothing at all flows there need be none.
        Assert.True(fixedStep.System.StepCount > endS / longestS / 4, $"{fixedStep.System.StepCount} steps");
        Hold("own against fixed", own, fixedStep, atRest: false);
    }

    [Theory]
    [MemberData(nameof(EveryScenario))]
    public void Steps_fifty_times_shorter_find_the_same_pulses_and_volumes_in_a_whole_dose(string name)
    {
        Scenario scenario = Scenarios.Named(name);
        Evidence own = scenario.Run();
        Evidence fine = scenario.Run(stepScale: 0.02);

        Hold("1 against 1/50", own, fine);
    }

    // What an outlet has at a set time in mid-stroke says where its piston is, not what it gives: there the volumes at the
    // last pulse count.
    private void Hold(string what, Evidence coarse, Evidence fine, bool atRest = true)
    {
        Difference difference = Difference.Of(coarse, fine);
        output.WriteLine($"{what,-18} steps {coarse.System.StepCount,6} and {fine.System.StepCount,6}, {difference}");
        Assert.True(difference.Edges >= 2, $"Only {difference.Edges} edges to compare.");
        Assert.InRange(difference.PulsePart, 0, PulsePart);
        Assert.InRange(difference.VolumeAtPulsePart, 0, VolumePart);
        if (atRest)
            Assert.InRange(difference.VolumeAtEndPart, 0, VolumePart);
    }
}
