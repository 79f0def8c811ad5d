using System.Collections.Generic;
using LubeController.Scripts.Quantities;

namespace LubeController.Scripts.Steps;

/// <summary>A fault that a bench can set on one plant.</summary>
/// <param name="Name">Lower case with hyphens, for instance <c>outlet-blocked</c>.</param>
/// <param name="Parts">The parts of this plant that can have it; empty where it needs no part.</param>
/// <param name="Magnitude">Range of its magnitude, or null where it has none.</param>
/// <param name="DefaultMagnitude">SI magnitude where a script gives none; null where it must give one.</param>
public sealed record BenchFault(string Name, IReadOnlyList<string> Parts, QuantityRange? Magnitude, double? DefaultMagnitude);
