using LubeController.Files.Reading;
using LubeController.Scripts.Predicates;

namespace LubeController.Scripts.Steps;

/// <summary>One step of a script. Immutable.</summary>
/// <param name="Index">Its place in the script, from 0.</param>
/// <param name="Name">Its name; empty where it has none.</param>
/// <param name="Place">Where it is written.</param>
/// <param name="Time">When it is carried out.</param>
/// <param name="Action">What it does.</param>
public sealed record Step(int Index, string Name, SourcePlace Place, StepTime Time, StepAction Action)
{
    /// <summary>Its name, or its place in the list.</summary>
    public string Label => Name.Length > 0 ? Name : $"steps[{Index}]";

    /// <summary>What a run drew for it from the seed, in words; empty where it leaves nothing to the seed.</summary>
    public string Drawn { get; init; } = "";
}

/// <summary>When a step is carried out.</summary>
public abstract record StepTime;

/// <summary>At a time of the run.</summary>
/// <param name="TimeUs">Microseconds since its start.</param>
public sealed record AtTime(long TimeUs) : StepTime;

/// <summary>At a time of the run that the seed decides.</summary>
/// <param name="RangeMs">The range, milliseconds since its start.</param>
public sealed record AtDrawnTime(DrawRange RangeMs) : StepTime;

/// <summary>Some time after another step.</summary>
/// <param name="Step">Index of the other step.</param>
/// <param name="DelayUs">Microseconds after it.</param>
public sealed record AfterStep(int Step, long DelayUs) : StepTime;

/// <summary>Some time after something is true for the first time.</summary>
/// <param name="Trigger">What must be true; made of signals that keep their value between changes.</param>
/// <param name="SinceStep">Index of the step from which on it is watched; -1 for the start of the run.</param>
/// <param name="DelayUs">Microseconds after it.</param>
public sealed record AfterTrigger(Predicate Trigger, int SinceStep, long DelayUs) : StepTime;
