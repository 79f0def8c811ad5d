namespace LubeController.Scripts.Steps;

/// <summary>A step that was carried out.</summary>
/// <param name="Step">Index of the step in its script.</param>
/// <param name="TimeUs">When, microseconds since the start of the run.</param>
public sealed record FiredStep(int Step, long TimeUs);
