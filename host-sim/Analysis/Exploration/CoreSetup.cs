using System;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>What is explored: the deployed core under some settings, with a rule perhaps, step by step.</summary>
/// <param name="Settings">Accepted settings, made small.</param>
/// <param name="MakeRule">Makes the user's rest rule, or null for none.</param>
/// <param name="StepMs">Time between two scans, milliseconds, 1 or more.</param>
/// <param name="Alphabet">What may happen in a step.</param>
public sealed record CoreSetup(Settings Settings, Func<IRestRule>? MakeRule, int StepMs, Alphabet Alphabet)
{
    /// <summary>The bounds of what may last, per cent of what is promised; less than 100 makes a search fail that should hold.</summary>
    public int BoundPercent { get; init; } = 100;

    /// <summary>Whether a violation is only noted in <see cref="CoreCoverage.Violated"/>, and the search goes on.</summary>
    public bool GoesOn { get; init; }
}
