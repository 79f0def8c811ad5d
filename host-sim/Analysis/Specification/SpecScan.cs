namespace LubeController.Analysis.Specification;

/// <summary>What one scan sees and finds; nothing of it outlives the scan.</summary>
internal sealed class SpecScan
{
    /// <summary>What it sees.</summary>
    internal SpecInputs Inputs;

    /// <summary>Conditions that began in it, be it once more, as bits of <see cref="AlarmId"/>.</summary>
    internal ulong Began;

    /// <summary>Those of them that a person is told of.</summary>
    internal ulong Raised;

    /// <summary>Conditions that had begun when a new try was begun in this scan.</summary>
    internal ulong BeganBeforeTry;

    /// <summary>A dose was completed.</summary>
    internal bool DoseCompleted;

    /// <summary>The mark of the first alarm was given.</summary>
    internal bool MarkedFirstUp;

    /// <summary>Fresh presses.</summary>
    internal Buttons Fresh;

    /// <summary>Presses that were refused.</summary>
    internal Buttons Refused;

    /// <summary>A scan begins.</summary>
    internal void Begin(SpecInputs inputs)
    {
        Inputs = inputs;
        Began = Raised = BeganBeforeTry = 0;
        DoseCompleted = false;
        Fresh = Refused = Buttons.None;
    }

    internal bool IsFresh(Buttons button) => (Fresh & button) != 0;
}
