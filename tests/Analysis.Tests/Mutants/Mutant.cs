namespace LubeController.Analysis.Tests.Mutants;

/// <summary>A deliberate fault in a copy of the core.</summary>
/// <param name="Name">Its name in the table.</param>
/// <param name="Aim">The alarm or property that it is aimed at.</param>
/// <param name="File">The source file that it changes.</param>
/// <param name="From">What stands there, once in that file.</param>
/// <param name="To">What stands there instead.</param>
internal sealed record Mutant(string Name, string Aim, string File, string From, string To);
