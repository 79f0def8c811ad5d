using LubeController.Files.SettingsFiles;

namespace LubeController.Analysis.Exploration;

/// <summary>An exploration as it was read. Immutable.</summary>
/// <param name="Path">Its file as the user gave it.</param>
/// <param name="Title">What it explores.</param>
/// <param name="PlantPath">Plant file for scripts of violations, relative to the file; empty where none is named.</param>
/// <param name="SettingsPath">Settings file, relative to the file.</param>
/// <param name="Settings">The settings with the user's rule.</param>
/// <param name="Core">What is explored.</param>
/// <param name="MostStates">Most states.</param>
public sealed record ExplorationFile(
    string Path, string Title, string PlantPath, string SettingsPath, ControlSettings Settings, CoreSetup Core, int MostStates);
