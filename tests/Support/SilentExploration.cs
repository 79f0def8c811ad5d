using LubeController.Analysis.Exploration;

namespace LubeController.Tests.Support;

/// <summary>An exploration that nobody watches.</summary>
public sealed class SilentExploration : IExplorationProgress
{
    /// <inheritdoc/>
    public void Level(int depth, int states, long transitions, int frontier)
    {
    }
}
