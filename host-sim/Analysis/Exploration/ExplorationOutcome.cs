namespace LubeController.Analysis.Exploration;

/// <summary>How a search ended.</summary>
public enum ExplorationOutcome
{
    /// <summary>Nothing new is reached any more, and everything holds.</summary>
    Complete,

    /// <summary>A property is violated.</summary>
    Violated,

    /// <summary>The bound of states was reached before the end.</summary>
    TooManyStates,

    /// <summary>The bound of memory was reached before the end.</summary>
    TooMuchMemory,
}
