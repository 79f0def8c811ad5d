using System;
using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>What is explored: the deployed core under some settings, with a rule perhaps, step by step.</summary>
/// <param name="Settings">Accepted settings, made small.</param>
/// <param name="MakeRule">Makes the user's rest rule, or null for none.</param>
/// <param name="StepMs">Time between two scans, milliseconds, 1 or more.</param>
/// <param name="Alphabet">What may happen in a step.</param>
public sealed record CoreSetup(Settings Settings, Func<IRestRule>? MakeRule, int StepMs, Alphabet Alphabet);
