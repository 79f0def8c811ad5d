using System.Collections.Generic;
using LubeController.Files.Quantities;
using LubeController.Plant.Faults;

namespace LubeController.Scripts.Steps;

/// <summary>A fault that a bench can set on one plant.</summary>
/// <param name="Name">Lower case with hyphens, for instance <c>outlet-blocked</c>.</param>
/// <param name="Parts">The parts of this plant that can have it; empty where it needs no part.</param>
/// <param name="Magnitude">Range of its magnitude, or null where it has none.</param>
/// <param name="DefaultMagnitude">SI magnitude where a script gives none; null where it must give one.</param>
public sealed record BenchFault(string Name, IReadOnlyList<string> Parts, QuantityRange? Magnitude, double? DefaultMagnitude)
{
    /// <summary>What the virtual bench sets; null on a bench with faults of its own.</summary>
    public Fault? Fault { get; init; }

    /// <summary>SI magnitude at which it changes nothing, from which it may grow; null where it can only come at once.</summary>
    public double? HarmlessMagnitude { get; init; }

    /// <summary>Its second number, or null.</summary>
    public BenchFaultNumber? Second { get; init; }

    /// <summary>What must happen for it to take effect; goes on after "it needs". Empty where nothing is known.</summary>
    public string Needs { get; init; } = "";
}

/// <summary>A number beside a fault's magnitude.</summary>
/// <param name="Name">Its name, a field of a step's <c>with</c>.</param>
/// <param name="Range">Its range.</param>
/// <param name="Default">SI value where a script gives none.</param>
public sealed record BenchFaultNumber(string Name, QuantityRange Range, double Default);
