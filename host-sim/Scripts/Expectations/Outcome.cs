namespace LubeController.Scripts.Expectations;

/// <summary>What became of an expectation, or of a whole script.</summary>
public enum Outcome
{
    /// <summary>It held.</summary>
    Held,

    /// <summary>It was put to the test and failed.</summary>
    Failed,

    /// <summary>It was not put to the test, which is not a pass.</summary>
    NotExercised,
}
