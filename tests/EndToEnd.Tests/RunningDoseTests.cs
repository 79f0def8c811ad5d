using System;
using LubeController.Core;
using LubeController.Plant;
using LubeController.Scripts.ScriptFiles;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.EndToEnd.Tests;

/// <summary>What a simulated second of a running dose takes of the memory: plant, core and main loop, apart from what is recorded.</summary>
[Trait("Run", "Long")]
public sealed class RunningDoseTests
{
    [Theory]
    [InlineData("salt-works-day")]
    [InlineData("quarry-day")]
    [InlineData("stone-saw-day")]
    public void A_running_dose_allocates_nothing(string name)
    {
        BenchScript day = Repository.Read($"hil-scripts/running/{name}.yaml");
        var plant = new LubricationSystem(day.Plant, seed: 1);
        var board = new UnrecordedBoard(plant, Endless(day.Settings.Values));
        board.Run(60);
        long strokes = plant.TotalStrokes;

        long before = GC.GetAllocatedBytesForCurrentThread();
        board.Run(120);
        long after = GC.GetAllocatedBytesForCurrentThread();

        Assert.Equal(0, after - before);
        Assert.Equal(Phase.Dose, board.Core.Phase);
        Assert.True(plant.TotalStrokes > strokes + 10, "Nothing moved.");
    }

    private static Settings Endless(Settings settings)
    {
        settings[SettingField.DoseMode] = (int)DoseMode.Cycles;
        settings[SettingField.DoseEdges] = 10000;
        settings[SettingField.DoseLimitMs] = 48 * 3600 * 1000;
        settings[SettingField.OverdueMs] = SettingTable.LongestMs;
        return settings;
    }
}
