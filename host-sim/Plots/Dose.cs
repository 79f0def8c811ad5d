namespace LubeController.Plots;

/// <summary>One dose of one run.</summary>
/// <param name="Script">The script, by its path below the repository's root.</param>
/// <param name="Number">Which start of the pump begins it, 0 the first one; from the end where negative, -1 the last one.</param>
internal sealed record Dose(string Script, int Number);
