using LubeController.Analysis.Specification;
using Xunit;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>Prime that was pressed in stopped: an interlock leads back there, and no reset takes the operating stop off.</summary>
public sealed class PrimeFromStoppedTests
{
    [Fact]
    public void An_interlock_in_prime_leads_back_to_stopped_and_a_reset_does_not_lead_on()
    {
        var machine = new LubricationSpecification(new SpecSettings());
        Run(machine, new SpecInputs { Stop = true }, Phase.Stopped);
        Run(machine, new SpecInputs(), Phase.Stopped);
        Run(machine, new SpecInputs { Pressed = Buttons.Prime }, Phase.Prime);
        Run(machine, new SpecInputs { Pressed = Buttons.Prime, LevelEmpty = true }, Phase.Stopped);
        Run(machine, new SpecInputs(), Phase.Stopped);
        Run(machine, new SpecInputs { Pressed = Buttons.Reset }, Phase.Stopped);
        Run(machine, new SpecInputs { Pressed = Buttons.Start }, Phase.Rest);
    }

    private static void Run(LubricationSpecification machine, SpecInputs inputs, Phase expected)
    {
        for (int scan = 0; scan < 20; scan++)
            machine.Step(50, inputs);
        Assert.Equal(expected, machine.Outputs.Phase);
    }
}
