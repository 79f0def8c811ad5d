using LubeController.Core;

namespace LubeController.Board;

/// <summary>
/// A ring of entries. A block is erased when the turn comes to it, and takes its entries one by one, each with a check value of
/// its own, so that a torn entry loses only itself.
/// </summary>
public sealed class Logbook
{
    private const int Version = 1;
    private const int FirstAt = LogEntry.Length;

    private readonly IBlockStorage _storage;
    private readonly BlockRing _ring;
    private readonly Uptime _uptime;
    private readonly LogEntry _probe = new LogEntry();
    private readonly byte[] _bytes = new byte[LogEntry.Length];
    private readonly byte[] _block;
    private readonly bool[] _corrupt;
    private readonly int _first;
    private readonly int _newest;
    private readonly int _slots;
    private bool _stale;
    private int _slot;
    private int _shown = -1;
    private int _corruptEntries;

    /// <summary>Reads some blocks of a storage.</summary>
    /// <param name="storage">The storage.</param>
    /// <param name="first">The first block.</param>
    /// <param name="count">How many, 2 or more.</param>
    /// <param name="uptime">The time powered, which no entry may be ahead of.</param>
    public Logbook(IBlockStorage storage, int first, int count, Uptime uptime)
    {
        _storage = storage;
        _first = first;
        _uptime = uptime;
        _block = new byte[storage.BlockLength];
        _corrupt = new bool[count];
        _slots = (storage.BlockLength - FirstAt) / LogEntry.Length;
        _ring = new BlockRing(storage, BlockKind.Logbook, Version, first, count, 0, false);
        _ring.Load();
        _slot = _slots;
        _newest = _ring.Newest;
        for (int block = 0; block < count; block++)
            FindEnd(block);

        // Power was cut after the header of the next block was written and before its first entry: the old entries are still there, and the block is erased again.
        if (_stale)
            _ring.SetNewest(_ring.OlderThan(_newest));
    }

    /// <summary>The blocks.</summary>
    public BlockRing Ring => _ring;

    /// <summary>Entries found at start that lost their check value after they were whole.</summary>
    public int CorruptEntries => _corruptEntries;

    /// <summary>Whether a block of the logbook, from 0, held such an entry, or was itself corrupt.</summary>
    public bool IsCorrupt(int block) => _corrupt[block] || _ring.IsCorrupt(block);

    /// <summary>Appends an entry; its number is filled in.</summary>
    /// <returns>Whether it stands now.</returns>
    public bool Append(LogEntry entry)
    {
        _shown = -1;
        if (_slot >= _slots && !StartNextBlock())
            return false;
        entry.Sequence = SequenceOf(_ring.Newest, _slot);
        entry.UptimeS = _uptime.Seconds;
        entry.UptimeMs = _uptime.Milliseconds;
        entry.Write(_bytes);
        bool written = _storage.Program(_first + _ring.Newest, FirstAt + (LogEntry.Length * _slot), _bytes, LogEntry.Length);
        _slot++;
        return written;
    }

    /// <summary>Places for entries, from the oldest on.</summary>
    public int Places => _ring.Count * _slots;

    /// <summary>Reads the entry at a place.</summary>
    /// <param name="place">0 to <see cref="Places"/> - 1, the oldest block first.</param>
    /// <param name="entry">Takes it.</param>
    /// <returns>Whether there is a whole one.</returns>
    public bool TryRead(int place, LogEntry entry)
    {
        int ordinal = SafeDivide.Quotient(place, _slots);
        int block = _ring.Newest + 1 + ordinal;
        while (block >= _ring.Count)
            block -= _ring.Count;
        if (_shown != block)
        {
            _shown = _storage.Read(_first + block, _block) ? block : -1;
            if (_shown < 0)
                return false;
        }

        int slot = place - (ordinal * _slots);
        return _ring.IsWhole(block) && entry.Read(_block, FirstAt + (LogEntry.Length * slot)) && entry.Sequence == SequenceOf(block, slot);
    }

    /// <summary>Entries are numbered from 1 by where they stand: what a cut tore leaves a gap.</summary>
    private uint SequenceOf(int block, int slot) => unchecked(((_ring.SequenceOf(block) - 1) * (uint)_slots) + (uint)slot + 1);

    private void NoteBad(int block, int at)
    {
        if (!LogEntry.IsFinished(_block, at))
            return;
        _corruptEntries++;
        _corrupt[block] = true;
    }

    private bool Note()
    {
        _uptime.RaiseTo(_probe.UptimeS, _probe.UptimeMs);
        return true;
    }

    private bool StartNextBlock()
    {
        if (!_ring.Write(0))
            return false;
        _slot = 0;
        return true;
    }

    private void FindEnd(int block)
    {
        if (!_ring.IsWhole(block) || !_storage.Read(_first + block, _block))
            return;
        int next = 0;
        bool any = false;
        for (int slot = 0; slot < _slots; slot++)
        {
            int at = FirstAt + (LogEntry.Length * slot);
            if (ByteOrder.AreErased(_block, at, LogEntry.Length))
                continue;
            next = slot + 1;
            if (!_probe.Read(_block, at))
                NoteBad(block, at);
            else if (_probe.Sequence == SequenceOf(block, slot))
                any = Note();
        }

        if (block == _newest)
            _slot = any || next == 0 ? next : _slots;
        _stale |= block == _newest && !any && next > 0;
    }
}
