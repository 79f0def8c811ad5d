using LubeController.Core;

namespace LubeController.Board;

/// <summary>All that the board keeps over a power cut; the layout is told in <c>firmware/MEMORY.md</c>.</summary>
public sealed class BoardMemory
{
    private readonly IBlockStorage _storage;
    private StateMemory? _state;

    /// <summary>Looks through a storage: everything but the state, whose length the core tells.</summary>
    /// <param name="storage">The storage.</param>
    /// <exception cref="System.ArgumentException">It is too small.</exception>
    public BoardMemory(IBlockStorage storage)
    {
        _storage = storage;
        Layout = new MemoryLayout(storage.BlockCount, storage.BlockLength);
        Uptime = new Uptime();
        Settings = new SettingsMemory(storage, Layout.FirstSettings);
        Boot = new BootRecord(storage, Layout.FirstBoot, MemoryLayout.BootBlocks, Uptime);
        Log = new Logbook(storage, Layout.FirstLog, Layout.LogBlocks, Uptime);
    }

    /// <summary>Which blocks hold what.</summary>
    public MemoryLayout Layout { get; }

    /// <summary>The time powered in the board's life.</summary>
    public Uptime Uptime { get; }

    /// <summary>The settings.</summary>
    public SettingsMemory Settings { get; }

    /// <summary>The boot record.</summary>
    public BootRecord Boot { get; }

    /// <summary>The logbook.</summary>
    public Logbook Log { get; }

    /// <summary>Blocks and entries, those of settings left out, that lost their check value after they were whole.</summary>
    public int Corrupt => Boot.Ring.Corrupt + Log.Ring.Corrupt + Log.CorruptEntries + (_state == null ? 0 : _state.Ring.Corrupt);

    /// <summary>Saves of the state that the storage did not take, saturating.</summary>
    public int FailedSaves => _state == null ? 0 : _state.FailedSaves;

    /// <summary>Restores the newest whole state.</summary>
    /// <returns>Whether there was one.</returns>
    public bool LoadState(Controller core)
    {
        _state = new StateMemory(_storage, Layout.FirstState, Layout.StateBlocks, core.StateLength, Uptime);
        return _state.Load(core);
    }

    /// <summary>Saves the state.</summary>
    /// <returns>Whether it stands now.</returns>
    public bool SaveState(Controller core) => _state != null && _state.Save(core);

    /// <summary>Writes since power-up of blocks of a kind, entries of the logbook not counted.</summary>
    public int WritesOf(BlockKind kind) => RingOf(kind) is { } ring ? ring.Writes : 0;

    /// <summary>Writes that the most written block of a kind has stood in the board's life, as its ring's sequence number tells.</summary>
    public int LifeWritesOf(BlockKind kind) => RingOf(kind) is { } ring ? SafeDivide.QuotientUp(ring.Sequence, ring.Count) : 0;

    private BlockRing? RingOf(BlockKind kind)
    {
        switch (kind)
        {
            case BlockKind.Settings: return Settings.Ring;
            case BlockKind.Boot: return Boot.Ring;
            case BlockKind.Logbook: return Log.Ring;
            default: return _state?.Ring;
        }
    }
}
