namespace LubeController.Analysis.Specification;

/// <summary>Readings of the control rules where they are silent and another reading is as good.</summary>
internal sealed record SpecReadings
{
    /// <summary>The specification's own readings.</summary>
    internal static SpecReadings Own { get; } = new();

    /// <summary>Whether a retry pause runs on while the supply is low: in it the pump is off anyway.</summary>
    internal bool PauseRunsOnWhileHeld { get; init; }
}
