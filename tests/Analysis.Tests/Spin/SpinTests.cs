using System.IO;
using System.Threading;
using LubeController.Analysis.Exploration;
using LubeController.Tests.Support;
using LubeController.Tests.Support.Spin;
using Xunit;

namespace LubeController.Analysis.Tests.Spin;

/// <summary>
/// The search against the model checker spin (Holzmann, The Spin Model Checker, 2004; Debian's package): the same machine has the
/// same number of states and transitions.
/// </summary>
[Trait("Run", "Long")]
public sealed class SpinTests
{
    private static string Model => Path.Combine(Repository.Root, "tests", "Analysis.Tests", "Spin", "phase-machine.pml");

    [Theory]
    [InlineData(3, 2, 3, 1)]
    [InlineData(60, 20, 100, 3)]
    [InlineData(20, 30, 250, 4)]
    public void States_and_transitions_are_as_many_as_spin_finds(byte rest, byte wait, byte overdue, byte doses)
    {
        foreach (ExternalTool tool in new[] { ExternalTool.Spin, ExternalTool.CCompiler })
            Assert.SkipUnless(tool.IsInstalled, tool.Reason);
        var size = new PhaseMachineSize(rest, wait, overdue, doses);
        var explorer = new Explorer(() => new PhaseMachine(size), new ExplorationBounds(10_000_000, 1L << 31, 2));
        ExplorationResult result = explorer.Run(CancellationToken.None);
        Assert.Equal(ExplorationOutcome.Complete, result.Outcome);
        using var spin = new SpinVerifier(Model, size);
        (long states, long transitions) = spin.Search();
        Assert.Equal(states, result.States);
        Assert.Equal(transitions, result.Transitions);
    }
}
