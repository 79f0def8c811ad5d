using LubeController.Scripts.Predicates;

namespace LubeController.Scripts.Expectations;

/// <summary>Where a window begins or ends.</summary>
public abstract record WindowEdge(string Text);

/// <summary>At a time of the run.</summary>
/// <param name="TimeUs">Microseconds since the start of the run.</param>
/// <param name="Text">As written.</param>
public sealed record TimeEdge(long TimeUs, string Text) : WindowEdge(Text);

/// <summary>When a step is carried out.</summary>
/// <param name="Step">Index of the step.</param>
/// <param name="Text">As written.</param>
public sealed record StepEdge(int Step, string Text) : WindowEdge(Text);

/// <summary>When something is true for the first time; for the end of a window, for the first time after its beginning.</summary>
/// <param name="Trigger">What must be true.</param>
/// <param name="Text">As written.</param>
public sealed record TriggerEdge(Predicate Trigger, string Text) : WindowEdge(Text);
