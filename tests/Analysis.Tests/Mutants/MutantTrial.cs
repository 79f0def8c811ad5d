using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using LubeController.Analysis.Exploration;
using LubeController.Analysis.Lockstep;
using LubeController.Analysis.Tests.Lockstep;
using LubeController.Files.Reading;
using LubeController.Scripts.ScriptFiles;

namespace LubeController.Analysis.Tests.Mutants;

/// <summary>What is tried on one core. Runs in a world of its own, so it takes and gives text only.</summary>
internal static class MutantTrial
{
    // Several times what the core as it is takes: a mutant that knows no end is told so.
    private const int MostStates = 250_000;

    /// <summary>Explores a file to its end, whatever is violated.</summary>
    /// <returns>The names of the properties violated, by commas; what the core threw, and a search without end, count as one.</returns>
    public static string Explore(string path)
    {
        var problems = new ProblemList();
        ExplorationFile file = new ExplorationReader(RestRules.All).Read(path, problems)
            ?? throw new InvalidDataException(string.Join(Environment.NewLine, problems.All));
        file = file with { Core = file.Core with { GoesOn = true }, MostStates = MostStates };
        try
        {
            (ExplorationResult result, CoreCoverage coverage) = CoreExploration.Run(file, 2L << 30, 1, null, CancellationToken.None);
            IEnumerable<string> violated = CoreProperties.Names.Where((_, index) => (coverage.Violated & (1 << index)) != 0);
            return string.Join(",", result.Outcome == ExplorationOutcome.Complete ? violated : violated.Append("(no end)"));
        }
        catch (Exception thrown) when (thrown is ArithmeticException or IndexOutOfRangeException or NullReferenceException)
        {
            return "(threw)";
        }
    }

    /// <summary>Runs the core against the specification on cases drawn at random.</summary>
    /// <returns>"difference", or nothing; what the core threw counts as one.</returns>
    public static string Lockstep(string cases)
    {
        try
        {
            return LockstepCampaign.Run(values => new DeployedCore(values), int.Parse(cases, CultureInfo.InvariantCulture), LockstepTests.Seed) is null ? "" : "difference";
        }
        catch (Exception thrown) when (thrown is ArithmeticException or IndexOutOfRangeException or NullReferenceException)
        {
            return "(threw)";
        }
    }
}
