using BenchmarkDotNet.Attributes;
using LubeController.Core;

namespace LubeController.Benchmarks;

/// <summary>Cost of one scan of the core at rest, and of one in a dose with a pulse coming and going.</summary>
[MemoryDiagnoser]
public class ScanBenchmarks
{
    private const int Scans = 1000;
    private readonly Inputs _inputs = new();
    private readonly Outputs _outputs = new();
    private readonly Settings _settings = new();
    private Controller _core = null!;
    private uint _nowMs;
    private bool _on;

    /// <summary>A rest of 20 days, so that every measured scan lies in it.</summary>
    [GlobalSetup(Target = nameof(At_rest))]
    public void ComeToRest()
    {
        _settings[SettingField.DoseMode] = (int)DoseMode.RunTime;
        _settings[SettingField.DoseRunMs] = 1000;
        _settings[SettingField.RestMs] = SettingTable.LongestMs - 1;
        _settings[SettingField.OverdueMs] = SettingTable.LongestMs;
        _core = new Controller(_inputs, _outputs, _settings, null);
        for (int scan = 0; scan < 2000; scan++)
            _core.Scan(_nowMs += 10);
        if (_core.Phase != Phase.Rest || _core.DosePending)
            throw new System.InvalidOperationException("the core did not come to rest");
    }

    /// <summary>A dose without end.</summary>
    [GlobalSetup(Target = nameof(In_a_dose))]
    public void ComeToDose()
    {
        _settings[SettingField.DoseEdges] = 10000;
        _settings[SettingField.DoseLimitMs] = 48 * 3600 * 1000;
        _settings[SettingField.ChatterChanges] = 0;
        _settings[SettingField.OverdueMs] = SettingTable.LongestMs;
        _core = new Controller(_inputs, _outputs, _settings, null);
        for (int scan = 0; scan < 2000; scan++)
            _core.Scan(_nowMs += 10);
    }

    /// <summary>Target: at most 40 ns and 0 B.</summary>
    [Benchmark(OperationsPerInvoke = Scans)]
    public void At_rest()
    {
        for (int scan = 0; scan < Scans; scan++)
            _core.Scan(_nowMs += 10);
    }

    /// <summary>The switch changes every tenth scan, which is far more often than on a machine.</summary>
    [Benchmark(OperationsPerInvoke = Scans)]
    public void In_a_dose()
    {
        for (int scan = 0; scan < Scans; scan++)
        {
            if (scan % 10 == 0)
            {
                _on = !_on;
                _inputs.SetCycleSwitch(0, _on);
            }

            _core.Scan(_nowMs += 10);
        }
    }
}
