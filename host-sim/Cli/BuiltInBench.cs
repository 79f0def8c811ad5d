using System;
using LubeController.Plant.Description;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.SettingsFiles;
using LubeController.Scripts.Signals;
using LubeController.Scripts.Steps;

namespace LubeController.Cli;

/// <summary>The bench that this build carries.</summary>
internal static class BuiltInBench
{
    /// <summary>Makes it.</summary>
    public static IScriptBench Make() => new Unfinished();

    private sealed class Unfinished : IScriptBench
    {
        public BenchVocabulary Describe(PlantDescription plant, ControlSettings settings) =>
            new(new SignalCatalogue([]), PlantFaults.Of(plant));

        public RunResult Run(BenchScript script) => throw new NotSupportedException("no bench is built in yet");
    }
}
