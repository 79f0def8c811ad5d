using System;
using LubeController.Core;

namespace LubeController.Board;

/// <summary>
/// The loop that is deployed: read inputs, scan, write outputs, save, note in the logbook, kick the watchdog, wait. It holds no
/// control logic. Outputs are written before the save, which may be slow, so that a pump stops at once.
/// </summary>
public sealed class MainLoop
{
    private readonly IBoard _board;
    private readonly Inputs _inputs;
    private readonly Outputs _outputs;
    private readonly bool _hasRule;
    private readonly SavePolicy _saves;
    private readonly LogEntry _entry = new LogEntry();
    private readonly Controller _core;
    private readonly BoardMemory _memory;
    private readonly bool _stateRestored;
    private int _scanLimitMs;
    private bool _writeLost;
    private uint _passedMs;
    private int _faults;

    /// <summary>
    /// Makes the loop, restores the newest saved state, powers the core up and commits the start: the boot record, then the
    /// state. Only then may the pump run.
    /// </summary>
    /// <param name="board">The board.</param>
    /// <param name="storage">Its non-volatile memory.</param>
    /// <param name="settings">The settings compiled in: used, and stored if they are accepted, where none were ever stored.</param>
    /// <param name="rule">A user's rest rule, or null.</param>
    /// <exception cref="ArgumentException">The storage is too small.</exception>
    public MainLoop(IBoard board, IBlockStorage storage, Settings settings, IRestRule? rule)
    {
        _board = board;
        _inputs = new Inputs();
        _outputs = new Outputs();
        _hasRule = rule != null;
        _memory = new BoardMemory(storage);
        settings = Choose(settings);
        _core = new Controller(_inputs, _outputs, settings, rule);
        _saves = new SavePolicy(settings[SettingField.SaveIntervalMs]);
        _scanLimitMs = settings[SettingField.ScanLimitMs];
        _stateRestored = _memory.LoadState(_core);
        _core.PowerUp();
        _passedMs = board.NowMs;
        Start();
    }

    /// <summary>The control core.</summary>
    public Controller Core => _core;

    /// <summary>All that is kept over a power cut.</summary>
    public BoardMemory Memory => _memory;

    /// <summary>Whether a saved state was found and restored at power-up.</summary>
    public bool StateRestored => _stateRestored;

    /// <summary>Exceptions caught; the first one makes the outputs safe and restarts the board.</summary>
    public int Faults => _faults;

    /// <summary>When the state is saved.</summary>
    public SavePolicy Saves => _saves;

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
            ReportLostWrite();
            _board.ReadInputs(_inputs);
            _inputs.ScanLate = _board.LateMs > _scanLimitMs;
            _core.Scan(_board.NowMs);
            _board.WriteOutputs(_outputs);
            PassTime();
            if (_saves.IsDue(_core))
                Save();
            NoteEvents();
            _board.KickWatchdog();
            return true;
        }
        catch (Exception)
        {
            GiveUp();
            return false;
        }
    }

    /// <summary>Stores settings and goes on with them, if they are accepted as a whole and the storage takes them.</summary>
    /// <returns>Whether that was done; if not, nothing has changed.</returns>
    public bool StoreSettings(Settings settings)
    {
        if (!new SettingsCheck().Accepts(settings, _hasRule) || !_memory.Settings.Store(settings))
            return false;
        _core.UseSettings(settings);
        _saves.SetInterval(settings[SettingField.SaveIntervalMs]);
        _scanLimitMs = settings[SettingField.ScanLimitMs];
        Note(LogEvent.SettingsStored, 0, _memory.Settings.Stores);
        return true;
    }

    /// <summary>The settings to start with. Settings that cannot be read are replaced by some that the core refuses, so that the pump is interlocked.</summary>
    private Settings Choose(Settings compiledIn)
    {
        switch (_memory.Settings.State)
        {
            case SettingsState.NeverStored:
                if (new SettingsCheck().Accepts(compiledIn, _hasRule))
                    _memory.Settings.Store(compiledIn);
                return compiledIn;
            case SettingsState.Stored:
                return _memory.Settings.Values;
            default:
                return SettingsMemory.Unreadable();
        }
    }

    /// <summary>
    /// What must rise again if the power is cut before its alarm is in the saved state waits in the boot record until it is.
    /// </summary>
    private void Start()
    {
        CorruptPlaces corrupt = _memory.FindCorrupt();
        BootRecord boot = _memory.Boot;
        bool newlyCorrupt = !corrupt.AreAllIn(boot.CorruptReported);
        bool foreign = _memory.OnlyForeignStates;
        _writeLost = !boot.CommitStart(_board.ResetCause, corrupt);
        if (boot.FaultPending)
            _core.NoteLogicFault();
        if (newlyCorrupt || foreign)
            _core.NoteStorageCorrupt();
        if (!_memory.SaveState(_core) || !boot.CommitReported(corrupt))
            _writeLost = true;
        _saves.Begin(_core);
        Note(LogEvent.Started, (int)boot.Cause, boot.Starts);
        if (newlyCorrupt)
            Note(LogEvent.StorageCorrupt, _memory.Corrupt, 0);
        if (foreign)
            Note(LogEvent.StateForeign, 0, 0);
        if (_memory.Settings.State == SettingsState.Refused || _memory.Settings.State == SettingsState.Lost)
            Note(LogEvent.SettingsUnreadable, (int)_memory.Settings.State, 0);
        if (_memory.Settings.Mend())
            Note(LogEvent.SettingsMended, 0, 0);
        PassTime();
    }

    private bool Wait()
    {
        try
        {
            PassTime();
            return _board.WaitForNextScan(_core, _writeLost ? 1 : _saves.RemainingMs);
        }
        catch (Exception)
        {
            GiveUp();
            return false;
        }
    }

    /// <summary>The board must restart even if the outputs cannot be made safe, since a restart drops them, and even if the storage fails.</summary>
    private void GiveUp()
    {
        _faults = Saturating.Add(_faults, 1);
        try
        {
            _outputs.MakeSafe();
            _board.WriteOutputs(_outputs);
        }
        catch (Exception)
        {
            _faults = Saturating.Add(_faults, 1);
        }

        try
        {
            _memory.Boot.MarkFault();
            Note(LogEvent.FaultCaught, _faults, _memory.Boot.Faults);
        }
        catch (Exception)
        {
            _faults = Saturating.Add(_faults, 1);
        }

        _board.Restart();
    }

    private void PassTime()
    {
        uint now = _board.NowMs;
        uint passed = unchecked(now - _passedMs);
        _passedMs = now;
        int elapsedMs = passed > int.MaxValue ? int.MaxValue : (int)passed;
        _saves.Advance(elapsedMs);
        _memory.Uptime.Advance(elapsedMs);
    }

    private void Save()
    {
        if (!_memory.SaveState(_core))
            _writeLost = true;
        PassTime();
        _saves.Saved(_core);
    }

    /// <summary>A memory that refuses writes keeps old data, so the fault must not stay hidden until power is cut. It is reported before a scan, so that the events of that scan are still logged.</summary>
    private void ReportLostWrite()
    {
        if (_writeLost && !_core.Alarms.Stands(AlarmId.StorageCorrupt))
            _core.NoteStorageCorrupt();
        _writeLost = false;
    }

    private void NoteEvents()
    {
        ScanEvents events = _core.Events;
        if (events.Count == 0)
            return;
        for (int index = 0; index < events.Count; index++)
        {
            if (!LogEntry.IsKept(events, index))
                continue;
            _entry.Fill(events, index, _core.Alarms.FirstUp);
            Append();
        }

        if (events.Lost > 0)
            Note(LogEvent.EventsLost, events.Lost, 0);
    }

    private void Note(int what, int subject, int detail)
    {
        _entry.Fill(what, subject, detail);
        Append();
    }

    private void Append()
    {
        _entry.HasWallTime = _board.HasWallTime;
        _entry.WallTimeS = _entry.HasWallTime ? _board.WallTimeS : 0;
        if (!_memory.Log.Append(_entry))
            _writeLost = true;
    }
}
