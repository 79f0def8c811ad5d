using System;
using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using System.IO;
using System.Linq;
using System.Threading;
using LubeController.Analysis.Exploration;
using LubeController.Tests.Support;
using LubeController.Tests.Support.Spin;

namespace LubeController.Benchmarks;

/// <summary>
/// The search and spin's verifier on the same small phase machine, turn about in one run: new states a second, and their ratio.
/// The target is 300 000 new states a second and core. Spin searches depth first, without a way back to each state; the search
/// goes breadth first and keeps for each state how it was reached.
/// </summary>
[SuppressMessage("ApiDesign", "RS0030", Justification = "A benchmark measures wall time and gates nothing.")]
internal static class SpinComparison
{
    private const int Rounds = 5;
    private static readonly PhaseMachineSize Size = new(Rest: 20, Wait: 120, Overdue: 250, Doses: 40);

    /// <summary>Runs the comparison and prints it.</summary>
    public static void Run()
    {
        using var spin = new SpinVerifier(Path.Combine(Repository.Root, "tests", "Analysis.Tests", "Spin", "phase-machine.pml"), Size);
        var ours = new double[2][];
        ours[0] = new double[Rounds];
        ours[1] = new double[Rounds];
        var theirs = new double[Rounds];
        long states = Search(1).States;
        for (int round = 0; round < Rounds; round++)
        {
            for (int workers = 1; workers <= 2; workers++)
            {
                (long found, double seconds) = Search(workers);
                Check(found, states);
                ours[workers - 1][round] = found / seconds;
            }

            long began = Stopwatch.GetTimestamp();
            Check(spin.Search().States, states);
            theirs[round] = states / Stopwatch.GetElapsedTime(began).TotalSeconds;
        }

        Console.WriteLine($"{states} states, medians of {Rounds} rounds");
        Console.WriteLine($"  this search, one core:  {Median(ours[0]):F0} new states a second");
        Console.WriteLine($"  this search, two cores: {Median(ours[1]):F0} new states a second");
        Console.WriteLine($"  spin's verifier:        {Median(theirs):F0} new states a second");
        Console.WriteLine($"  ratio on one core: {Median(ours[0]) / Median(theirs):F2}; on two: {Median(ours[1]) / Median(theirs):F2}");
    }

    private static (long States, double Seconds) Search(int workers)
    {
        long began = Stopwatch.GetTimestamp();
        var explorer = new Explorer(() => new PhaseMachine(Size), new ExplorationBounds(50_000_000, 8L << 30, workers));
        ExplorationResult result = explorer.Run(CancellationToken.None);
        return (result.Outcome == ExplorationOutcome.Complete ? result.States : -1, Stopwatch.GetElapsedTime(began).TotalSeconds);
    }

    private static void Check(long found, long states)
    {
        if (found != states)
            throw new InvalidOperationException($"{found} states, not {states}");
    }

    private static double Median(double[] values) => values.Order().ElementAt(values.Length / 2);
}
