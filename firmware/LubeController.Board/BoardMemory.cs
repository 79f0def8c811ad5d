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

    /// <summary>The blocks in which they stand.</summary>
    public CorruptPlaces FindCorrupt()
    {
        var places = new CorruptPlaces();
        MarkCorrupt(places, Boot.Ring, Layout.FirstBoot);
        for (int block = 0; block < Layout.LogBlocks; block++)
        {
            if (Log.IsCorrupt(block))
                places.Mark(Layout.FirstLog + block);
        }

        if (_state != null)
            MarkCorrupt(places, _state.Ring, Layout.FirstState);
        return places;
    }

    /// <summary>Whether there are states, but all of another version or length: what stood in them cannot be known.</summary>
    public bool OnlyForeignStates => _state != null && !_state.Ring.AnyWhole && _state.Ring.Foreign > 0;

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

    private static void MarkCorrupt(CorruptPlaces places, BlockRing ring, int first)
    {
        for (int block = 0; block < ring.Count; block++)
        {
            if (ring.IsCorrupt(block))
                places.Mark(first + block);
        }
    }

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
