using ScottPlot;

namespace LubeController.Plots;

/// <summary>A signal that is on or off, drawn below the pressures.</summary>
/// <param name="Signal">Its name in the trace.</param>
/// <param name="Label">How the axis calls it.</param>
/// <param name="Colour">Its colour.</param>
/// <param name="Of">The dose it is taken from, for comparison; null for the panel's own.</param>
internal sealed record Lane(string Signal, string Label, Color Colour, Dose? Of = null);
