using System.Collections.Generic;

namespace LubeController.Plots;

/// <summary>A picture of the README: one panel or several below each other, on one scale.</summary>
/// <param name="Name">The file's name without extension.</param>
/// <param name="WindowS">How long each panel is drawn from the pump's start, s.</param>
/// <param name="MostBar">Upper end of the pressure scale, bar.</param>
/// <param name="Panels">The panels, from top to bottom.</param>
internal sealed record Picture(string Name, double WindowS, double MostBar, IReadOnlyList<Panel> Panels);
