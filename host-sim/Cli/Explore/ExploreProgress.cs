using System;
using System.Globalization;
using LubeController.Analysis.Exploration;

namespace LubeController.Cli.Explore;

/// <summary>One line on the error stream, drawn only on a terminal: how far an exploration is.</summary>
internal sealed class ExploreProgress(Action<string> write) : IExplorationProgress
{
    private const int Every = 4;

    /// <summary>A line where the error stream is a terminal, else none.</summary>
    public static IExplorationProgress ForThisTerminal() =>
        new ExploreProgress(Console.IsErrorRedirected ? Nowhere : Console.Error.Write);

    private static void Nowhere(string text)
    {
    }

    /// <inheritdoc/>
    public void Level(int depth, int states, long transitions, int frontier)
    {
        if (frontier == 0)
            write("\r\u001b[K");
        else if (depth % Every == 0)
            write(string.Create(CultureInfo.InvariantCulture, $"\r\u001b[Kdepth {depth}: {states} states, {transitions} transitions, {frontier} to go on from"));
    }
}
