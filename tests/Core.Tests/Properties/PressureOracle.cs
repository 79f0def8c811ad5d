using Xunit;

namespace LubeController.Core.Tests;

/// <summary>
/// Judges doses by pressure from transmitter and outputs alone, without knowing of steps: what a dose must have shown, and
/// what a line must have shown before the pump starts. To be asked after every scan of a run that scans every tick.
/// </summary>
internal sealed class PressureOracle
{
    private int _lastMs;
    private bool _pump;
    private bool _inDose;
    private int _reading;
    private int _heldMs;
    private int _ventedMs;
    private bool _held;
    private int _cycles;
    private int _doses;

    /// <summary>Doses judged so far.</summary>
    public int Judged { get; private set; }

    /// <summary>Starts of the pump for a dose, judged so far.</summary>
    public int Starts { get; private set; }

    public void Judge(ScenarioRun run)
    {
        int elapsedMs = run.NowMs - _lastMs;
        _lastMs = run.NowMs;
        bool reached = _reading >= run[SettingField.PressureReachedMbar];
        bool vented = _reading <= run[SettingField.PressureVentedMbar];
        _heldMs = _pump && _inDose && reached ? _heldMs + elapsedMs : 0;
        if (_heldMs >= run[SettingField.HoldMs])
            _held = true;
        _ventedMs = _pump || !vented ? 0 : _ventedMs + elapsedMs;
        bool ventedForItsTime = _ventedMs >= run[SettingField.VentMs] && run.Inputs.PressureMbar <= run[SettingField.PressureVentedMbar];
        if (run.Core.DosesCompleted != _doses)
        {
            // The last pressure cycle ends with the scan that counts it.
            Assert.True(_held && ventedForItsTime, $"at {run.NowMs} ms: counted, held {_held}, vented for {_ventedMs} ms");
            Assert.True(_cycles + 1 >= run[SettingField.PressureCycles], $"at {run.NowMs} ms: {_cycles + 1} pressure cycles");
            _doses = run.Core.DosesCompleted;
            _cycles = 0;
            _held = false;
            Judged++;
        }

        bool starts = run.Outputs.Pump && !_pump;
        if (starts && run.Core.Phase == Phase.Dose)
        {
            Assert.True(ventedForItsTime, $"at {run.NowMs} ms: the pump starts, the line vented for {_ventedMs} ms");
            _cycles += _held ? 1 : 0;
            _held = false;
            Starts++;
        }

        _pump = run.Outputs.Pump;
        _inDose = run.Core.Phase == Phase.Dose;
        _reading = run.Inputs.PressureMbar;
    }
}
