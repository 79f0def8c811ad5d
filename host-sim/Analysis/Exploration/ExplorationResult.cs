using System.Collections.Generic;

namespace LubeController.Analysis.Exploration;

/// <summary>What a search found. The same model and bounds of states give the same numbers, however many workers there were.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="States">Different states reached.</param>
/// <param name="Transitions">Steps taken, those to known states too.</param>
/// <param name="Depth">Steps from the first state to the farthest.</param>
/// <param name="Property">The property violated, or -1.</param>
/// <param name="InProbe">Whether it was violated by a probe after the last letter, rather than in its step.</param>
/// <param name="Letters">The shortest way to the violation; empty without one.</param>
/// <param name="Bytes">Memory that states and what is known of them took at most, about.</param>
public sealed record ExplorationResult(
    ExplorationOutcome Outcome, int States, long Transitions, int Depth, int Property, bool InProbe, IReadOnlyList<int> Letters, long Bytes);

/// <summary>How far a search is once a level is done.</summary>
/// <param name="Depth">Steps from the first state.</param>
/// <param name="States">States so far.</param>
/// <param name="Transitions">Steps so far.</param>
/// <param name="Frontier">States of the next level.</param>
public sealed record ExplorationLevel(int Depth, int States, long Transitions, int Frontier);
