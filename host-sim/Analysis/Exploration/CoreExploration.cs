using System;
using System.Collections.Generic;
using System.Threading;

namespace LubeController.Analysis.Exploration;

/// <summary>Carries out what an exploration file asks for.</summary>
public static class CoreExploration
{
    /// <summary>Searches everything that the core can reach, and notes what it came by.</summary>
    /// <param name="file">What is explored.</param>
    /// <param name="mostBytes">Most memory for states, bytes.</param>
    /// <param name="workers">Threads, 1 or more.</param>
    /// <param name="progress">Hears each level; null where nobody listens.</param>
    /// <param name="cancel">Gives it up.</param>
    /// <exception cref="OperationCanceledException">The search was given up.</exception>
    public static (ExplorationResult Result, CoreCoverage Coverage) Run(
        ExplorationFile file, long mostBytes, int workers, Action<ExplorationLevel>? progress, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(file);
        var models = new List<CoreModel>();
        var explorer = new Explorer(Make, new ExplorationBounds(file.MostStates, mostBytes, workers), progress);
        ExplorationResult result = explorer.Run(cancel);
        var coverage = new CoreCoverage();
        foreach (CoreModel model in models)
            coverage.Add(model.Coverage);
        return (result, coverage);

        CoreModel Make()
        {
            var model = new CoreModel(file.Core);
            models.Add(model);
            return model;
        }
    }
}
