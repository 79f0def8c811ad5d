using System.Collections.Generic;
using System.Threading;
using LubeController.Analysis.Exploration;
using Xunit;

namespace LubeController.Analysis.Tests.Exploration;

/// <summary>The search on a machine whose states can be counted by hand.</summary>
public sealed class ExplorerTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(7, 1)]
    [InlineData(40, 1)]
    [InlineData(40, 4)]
    public void Every_state_and_step_is_counted_once(int size, int workers)
    {
        ExplorationResult result = Explore(size, workers);
        Assert.Equal(ExplorationOutcome.Complete, result.Outcome);
        Assert.Equal(size * size, result.States);
        Assert.Equal((2 * size * (size - 1)) + (size * size), result.Transitions);
        Assert.Equal(2 * (size - 1), result.Depth);
        Assert.Empty(result.Letters);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void The_way_to_a_violation_is_the_shortest_and_always_the_same(int workers)
    {
        ExplorationResult result = Explore(30, workers, forbidden: (3, 2));
        Assert.Equal(ExplorationOutcome.Violated, result.Outcome);
        Assert.Equal(0, result.Property);
        Assert.False(result.InProbe);
        Assert.Equal([0, 0, 0, 1, 1], result.Letters);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void A_probe_that_fails_ends_with_the_way_to_its_state(int workers)
    {
        ExplorationResult result = Explore(30, workers, failsProbe: (1, 2));
        Assert.Equal(1, result.Property);
        Assert.True(result.InProbe);
        Assert.Equal([0, 1, 1], result.Letters);
    }

    [Fact]
    public void The_first_state_is_probed_too()
    {
        ExplorationResult result = Explore(30, 1, failsProbe: (0, 0));
        Assert.True(result.InProbe);
        Assert.Empty(result.Letters);
    }

    [Fact]
    public void Bounds_of_states_and_memory_end_the_search()
    {
        Assert.Equal(ExplorationOutcome.TooManyStates, Explore(300, 2, states: 1_000).Outcome);
        Assert.Equal(ExplorationOutcome.TooMuchMemory, Explore(300, 2, bytes: 1_000).Outcome);
    }

    [Fact]
    public void Progress_tells_each_level()
    {
        var levels = new List<(int Depth, int States)>();
        var explorer = new Explorer(() => new RingModel(3, null, null), new ExplorationBounds(1_000, long.MaxValue, 1), level => levels.Add((level.Depth, level.States)));
        explorer.Run(CancellationToken.None);
        Assert.Equal([(1, 3), (2, 6), (3, 8), (4, 9), (5, 9)], levels);
    }

    [Fact]
    public void A_search_that_is_given_up_ends()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        var explorer = new Explorer(() => new RingModel(300, null, null), new ExplorationBounds(1_000_000, long.MaxValue, 2));
        Assert.Throws<System.OperationCanceledException>(() => explorer.Run(cancel.Token));
    }

    private static ExplorationResult Explore(
        int size, int workers, (int, int)? forbidden = null, (int, int)? failsProbe = null, int states = 1_000_000, long bytes = long.MaxValue) =>
        new Explorer(() => new RingModel(size, forbidden, failsProbe), new ExplorationBounds(states, bytes, workers)).Run(CancellationToken.None);
}
