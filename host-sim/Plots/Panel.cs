using System.Collections.Generic;

namespace LubeController.Plots;

/// <summary>One dose, and what is drawn of it.</summary>
/// <param name="Dose">The dose.</param>
/// <param name="Title">What a person sees in it, in one line.</param>
/// <param name="Lanes">From top to bottom.</param>
internal sealed record Panel(Dose Dose, string Title, IReadOnlyList<Lane> Lanes);
