using LubeController.Files.SettingsFiles;
using LubeController.Plant.Description;

namespace LubeController.Scripts.Steps;

/// <summary>
/// Says what a bench can do. It stands apart from running a script, so that scripts can be read without a bench to run them on.
/// </summary>
public interface IVocabularySource
{
    /// <summary>What can be said and done for a plant under a controller.</summary>
    BenchVocabulary Describe(PlantDescription plant, ControlSettings settings);
}
