using BenchmarkDotNet.Attributes;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Tests.Support;

namespace LubeController.Benchmarks;

/// <summary>
/// A fault-free day of the six-point plant. 86 400 simulated seconds: 86.4 ms a day is a million times real time, the
/// target with skipping; 1.728 s is fifty thousand times, the target without.
/// </summary>
[MemoryDiagnoser]
public class DayBenchmarks
{
    private BenchScript _day = null!;

    /// <summary>Reads the script once.</summary>
    [GlobalSetup]
    public void Read() => _day = Repository.Read("hil-scripts/running/salt-works-day.yaml");

    /// <summary>Quiet time skipped, between the events of a dose too.</summary>
    [Benchmark(Baseline = true)]
    public long Skipping() => new EmulatedBench().Run(_day).ScansExecuted;

    /// <summary>Every one of the 8 640 001 scans executed.</summary>
    [Benchmark]
    public long Every_tick() => new EmulatedBench { SkipQuietTime = false }.Run(_day).ScansExecuted;
}
