namespace LubeController.Analysis.Exploration;

/// <summary>How far a search may go.</summary>
/// <param name="MostStates">Most states, 1 or more.</param>
/// <param name="MostBytes">Most memory for states and what is known of them, bytes.</param>
/// <param name="Workers">Threads, 1 or more.</param>
public sealed record ExplorationBounds(int MostStates, long MostBytes, int Workers);
