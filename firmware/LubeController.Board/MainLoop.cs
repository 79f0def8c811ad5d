using System;
using LubeController.Core;

namespace LubeController.Board;

/// <summary>
/// The loop that is deployed: read inputs, scan, write outputs, save, kick the watchdog, wait. It holds no logic of its
/// own beyond when to save. Outputs come before the save, which may be slow, so that a pump is off at once.
/// </summary>
public sealed class MainLoop
{
    private readonly IBoard _board;
    private readonly Inputs _inputs;
    private readonly Outputs _outputs;
    private readonly StateMemory _memory;
    private readonly int _saveIntervalMs;
    private readonly int _scanLimitMs;
    private Phase _savedPhase;
    private int _savedStanding;
    private bool _savedVenting;
    private uint _savedAtMs;

    /// <summary>Makes the loop, restores the newest saved state, and powers the core up.</summary>
    /// <param name="board">The board.</param>
    /// <param name="storage">Its non-volatile memory.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="rule">A user's rest rule, or null.</param>
    public MainLoop(IBoard board, IBlockStorage storage, Settings settings, IRestRule? rule)
    {
        _board = board;
        _inputs = new Inputs();
        _outputs = new Outputs();
        Core = new Controller(_inputs, _outputs, settings, rule);
        _memory = new StateMemory(storage, Core.StateLength);
        _saveIntervalMs = settings[SettingField.SaveIntervalMs] < 1 ? 1 : settings[SettingField.SaveIntervalMs];
        _scanLimitMs = settings[SettingField.ScanLimitMs];
        StateRestored = _memory.Load(Core);
        Core.PowerUp();
        if (board.ResetCause == ResetCause.LoopFault || board.ResetCause == ResetCause.Watchdog)
            Core.NoteLogicFault();
        _savedAtMs = board.NowMs;
        Save();
    }

    /// <summary>The control core.</summary>
    public Controller Core { get; }

    /// <summary>Whether a saved state was found and restored at power-up.</summary>
    public bool StateRestored { get; }

    /// <summary>Exceptions caught; the first one makes the outputs safe and restarts the board.</summary>
    public int Faults { get; private set; }

    /// <summary>Saves that the storage did not take.</summary>
    public int FailedSaves => _memory.FailedWrites;

    /// <summary>Runs until the board says that power is going or the run is over, or until a fault, which restarts the board.</summary>
    public void Run()
    {
        while (RunOnce() && Wait())
        {
        }
    }

    /// <summary>One turn without the wait. An exception makes the outputs safe, withholds the watchdog and restarts the board.</summary>
    /// <returns>Whether the turn was completed.</returns>
    public bool RunOnce()
    {
        try
        {
            _board.ReadInputs(_inputs);
            _inputs.ScanLate = _board.LateMs > _scanLimitMs;
            Core.Scan(_board.NowMs);
            _board.WriteOutputs(_outputs);
            if (SaveIsDue())
                Save();
            _board.KickWatchdog();
            return true;
        }
        catch (Exception)
        {
            GiveUp();
            return false;
        }
    }

    private bool Wait()
    {
        try
        {
            return _board.WaitForNextScan(Core, UntilSaveMs());
        }
        catch (Exception)
        {
            GiveUp();
            return false;
        }
    }

    /// <summary>Outputs that cannot even be made safe must not keep the board from restarting, which drops them.</summary>
    private void GiveUp()
    {
        Faults = Saturating.Add(Faults, 1);
        try
        {
            _outputs.MakeSafe();
            _board.WriteOutputs(_outputs);
        }
        catch (Exception)
        {
            Faults = Saturating.Add(Faults, 1);
        }

        _board.Restart();
    }

    private uint SinceSaveMs => unchecked(_board.NowMs - _savedAtMs);

    private bool Venting => Core.DoseStep == DoseStep.Vent;

    /// <summary>
    /// What may not be lost is saved at once: a phase, which decides what power-up does, an alarm, and that a dose by
    /// pressure has come to venting or has begun its next pressure cycle.
    /// </summary>
    private bool SaveIsDue() =>
        Core.Phase != _savedPhase || Venting != _savedVenting || Core.Alarms.Standing != _savedStanding || SinceSaveMs >= (uint)_saveIntervalMs;

    private void Save()
    {
        _memory.Save(Core);
        _savedPhase = Core.Phase;
        _savedStanding = Core.Alarms.Standing;
        _savedVenting = Venting;

        // Only a save that was due by time starts the time anew: power cuts one interval apart would else save no progress.
        if (SinceSaveMs >= (uint)_saveIntervalMs)
            _savedAtMs = _board.NowMs;
    }

    private int UntilSaveMs()
    {
        uint since = SinceSaveMs;
        return since >= (uint)_saveIntervalMs ? 1 : _saveIntervalMs - (int)since;
    }
}
