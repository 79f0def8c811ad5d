using LubeController.Core;
using Buttons = LubeController.Analysis.Specification.Buttons;

namespace LubeController.Analysis.Lockstep;

/// <summary>
/// The deployed core behind <see cref="ILockstepCore"/>. Of the core it uses only what is in its own assembly, and nothing else
/// here does, so that this one file can be compiled against another build of the core.
/// </summary>
public sealed class DeployedCore : ILockstepCore
{
    private readonly Inputs _inputs = new Inputs();
    private readonly Outputs _outputs = new Outputs();
    private readonly Controller _core;

    /// <summary>Makes a core just powered up that has found no valid state.</summary>
    /// <param name="values">Values of its settings; refused ones raise settings-invalid, as in the core.</param>
    public DeployedCore(SettingsValues values)
    {
        var settings = new Settings();
        for (int field = 0; field < values.Count; field++)
            settings[field] = values[field];
        _core = new Controller(_inputs, _outputs, settings, null);
    }

    /// <inheritdoc/>
    public void Scan(LockstepInputs inputs, uint nowMs)
    {
        for (int index = 0; index < Inputs.MaxCycleSwitches; index++)
            _inputs.SetCycleSwitch(index, (inputs.CycleSwitches & (1 << index)) != 0);
        _inputs.ShaftPulses = inputs.ShaftPulses;
        _inputs.ShaftPulseAgeMs = inputs.ShaftPulseAgeMs;
        _inputs.PumpRevolutions = inputs.PumpRevolutions;
        _inputs.PumpRevolutionAgeMs = inputs.PumpRevolutionAgeMs;
        _inputs.MachineRunning = inputs.MachineRunning;
        _inputs.LevelLow = inputs.LevelLow;
        _inputs.LevelEmpty = inputs.LevelEmpty;
        _inputs.PressureSwitch = inputs.PressureSwitch;
        _inputs.PumpOverload = inputs.PumpOverload;
        _inputs.Stop = inputs.Stop;
        _inputs.SetDown(Button.Start, (inputs.Pressed & Buttons.Start) != 0);
        _inputs.SetDown(Button.Acknowledge, (inputs.Pressed & Buttons.Acknowledge) != 0);
        _inputs.SetDown(Button.Reset, (inputs.Pressed & Buttons.Reset) != 0);
        _inputs.SetDown(Button.DoseNow, (inputs.Pressed & Buttons.DoseNow) != 0);
        _inputs.SetDown(Button.Prime, (inputs.Pressed & Buttons.Prime) != 0);
        _inputs.SetDown(Button.OutputTest, (inputs.Pressed & Buttons.OutputTest) != 0);
        _inputs.ScanLate = inputs.ScanLate;
        _inputs.SupplyMv = inputs.SupplyMv;
        _inputs.PressureMbar = inputs.PressureMbar;
        _inputs.TemperatureDeciC = inputs.TemperatureDeciC;
        _core.Scan(nowMs);
    }

    /// <inheritdoc/>
    public Observation Observe()
    {
        AlarmList list = _core.Alarms;
        var alarms = new AlarmObservation[AlarmTable.Count];
        for (int index = 0; index < alarms.Length; index++)
        {
            var id = (AlarmId)index;
            bool stands = list.Stands(id);
            alarms[index] = new AlarmObservation(
                (byte)list.StateOf(id),
                stands ? (byte)list.ActionOf(id) : (byte)0,
                stands ? (byte)list.CategoryOf(id) : (byte)0,
                list.IsActive(id),
                list.IsLatched(id));
        }

        return new Observation(
            (int)_core.Phase, _outputs.Pump, _outputs.VentValve, _outputs.HealthyRelay, _outputs.Warning, _outputs.Lamp,
            _core.DosesCompleted, _core.PressesRefused, list.FirstUp, alarms);
    }

    /// <inheritdoc/>
    public byte[] Save()
    {
        byte[] saved = new byte[_core.StateLength];
        _core.SaveState(saved);
        return saved;
    }

    /// <inheritdoc/>
    public bool Restore(byte[] saved) => _core.RestoreState(saved);

    /// <inheritdoc/>
    public void PowerUp() => _core.PowerUp();

    /// <inheritdoc/>
    public void NoteLogicFault() => _core.NoteLogicFault();

    /// <inheritdoc/>
    public void NoteStorageCorrupt() => _core.NoteStorageCorrupt();

    /// <inheritdoc/>
    public void Shelve(int alarm, int forMs) => _core.Shelve((AlarmId)alarm, forMs);

    /// <inheritdoc/>
    public void Unshelve(int alarm) => _core.Unshelve((AlarmId)alarm);

    /// <inheritdoc/>
    public void SetOutOfService(int alarm, bool isOut) => _core.SetOutOfService((AlarmId)alarm, isOut);
}
