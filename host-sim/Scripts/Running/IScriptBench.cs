using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.Steps;

namespace LubeController.Scripts.Running;

/// <summary>
/// Where a script is carried out. It exists so that scripts, verdicts and records are the same for the simulated rig and
/// for a real one, and can be tested beside <see cref="FakeScriptBench"/>. One bench may be asked from several threads at
/// once: each run stands alone.
/// </summary>
public interface IScriptBench : IVocabularySource
{
    /// <summary>Carries out a script from the start to its duration or its scan bound. Same script, same trace.</summary>
    RunResult Run(BenchScript script);
}
