using BenchmarkDotNet.Attributes;
using LubeController.Core;
using LubeController.Plant;
using LubeController.Scripts.ScriptFiles;
using LubeController.Tests.Support;

namespace LubeController.Benchmarks;

/// <summary>
/// A dose of the six-point plant that never ends, in steps of ten simulated minutes: 120 ms for them is five thousand times
/// real time, the target.
/// </summary>
[MemoryDiagnoser]
public class DoseBenchmarks
{
    private const int Seconds = 600;

    private LubricationSystem _plant = null!;
    private UnrecordedBoard _board = null!;

    /// <summary>Runs a first minute.</summary>
    [GlobalSetup]
    public void Begin()
    {
        BenchScript day = Repository.Read("hil-scripts/running/salt-works-day.yaml");
        Settings settings = day.Settings.Values;
        settings[SettingField.DoseEdges] = 10000;
        settings[SettingField.DoseLimitMs] = 48 * 3600 * 1000;
        settings[SettingField.OverdueMs] = SettingTable.LongestMs;
        _plant = new LubricationSystem(day.Plant, seed: 1);
        _board = new UnrecordedBoard(_plant, settings);
        _board.Run(60);
    }

    /// <summary>Plant, core and main loop, every scan of 10 ms executed.</summary>
    [Benchmark]
    public long Every_tick()
    {
        if (_plant.ReservoirContentM3 < 0.5 * _plant.Description.Reservoir.CapacityM3)
            _plant.Refill(_plant.Description.Reservoir.CapacityM3);
        _board.Run(Seconds);
        if (_board.Core.Phase != Phase.Dose)
            throw new System.InvalidOperationException("the dose does not run");
        return _plant.EventCount;
    }
}
