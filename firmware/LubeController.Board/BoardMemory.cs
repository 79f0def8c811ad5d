using LubeController.Core;

namespace LubeController.Board;

/// <summary>All that the board keeps over a power cut; <c>firmware/MEMORY.md</c> describes the layout.</summary>
public sealed class BoardMemory
{
    private readonly IBlockStorage _storage;
    private readonly MemoryLayout _layout;
    private readonly Uptime _uptime;
    private readonly SettingsMemory _settings;
    private readonly BootRecord _boot;
    private readonly Logbook _log;
    private StateMemory? _state;

    /// <summary>Reads everything in a storage but the state, whose length only the core knows.</summary>
    /// <param name="storage">The storage.</param>
    /// <exception cref="System.ArgumentException">It is too small.</exception>
    public BoardMemory(IBlockStorage storage)
    {
        _storage = storage;
        _layout = new MemoryLayout(storage.BlockCount, storage.BlockLength);
        _uptime = new Uptime();
        _settings = new SettingsMemory(storage, _layout.FirstSettings);
        _boot = new BootRecord(storage, _layout.FirstBoot, MemoryLayout.BootBlocks, _uptime);
        _log = new Logbook(storage, _layout.FirstLog, _layout.LogBlocks, _uptime);
    }

    /// <summary>The time powered in the board's life.</summary>
    public Uptime Uptime => _uptime;

    /// <summary>The settings.</summary>
    public SettingsMemory Settings => _settings;

    /// <summary>The boot record.</summary>
    public BootRecord Boot => _boot;

    /// <summary>The logbook.</summary>
    public Logbook Log => _log;

    /// <summary>Blocks and entries, those of settings left out, that lost their check value after they were whole.</summary>
    public int Corrupt => _boot.Ring.Corrupt + _log.Ring.Corrupt + _log.CorruptEntries + (_state == null ? 0 : _state.Ring.Corrupt);

    /// <summary>The blocks that hold them.</summary>
    public CorruptPlaces FindCorrupt()
    {
        var places = new CorruptPlaces();
        MarkCorrupt(places, _boot.Ring, _layout.FirstBoot);
        for (int block = 0; block < _layout.LogBlocks; block++)
        {
            if (_log.IsCorrupt(block))
                places.Mark(_layout.FirstLog + block);
        }

        if (_state != null)
            MarkCorrupt(places, _state.Ring, _layout.FirstState);
        return places;
    }

    /// <summary>Whether there are states, but all of another version or length: what stood in them cannot be known.</summary>
    public bool OnlyForeignStates => _state != null && !_state.Ring.AnyWhole && _state.Ring.Foreign > 0;

    /// <summary>Restores the newest whole state.</summary>
    /// <returns>Whether there was one.</returns>
    public bool LoadState(Controller core)
    {
        _state = new StateMemory(_storage, _layout.FirstState, _layout.StateBlocks, core.StateLength, _uptime);
        return _state.Load(core);
    }

    /// <summary>Saves the state.</summary>
    /// <returns>Whether it stands now.</returns>
    public bool SaveState(Controller core) => _state != null && _state.Save(core);

    private static void MarkCorrupt(CorruptPlaces places, BlockRing ring, int first)
    {
        for (int block = 0; block < ring.Count; block++)
        {
            if (ring.IsCorrupt(block))
                places.Mark(first + block);
        }
    }
}
