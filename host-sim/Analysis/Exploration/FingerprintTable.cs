using System;
using System.Threading;

namespace LubeController.Analysis.Exploration;

/// <summary>
/// Which states are known, each by 128 bits of its comparison, with the step by which it was reached first. Two different
/// states are taken for one with a probability below n^2 / 2^129: 1e-24 for ten million.
/// </summary>
internal sealed class FingerprintTable
{
    private const int Shards = 64;
    private const int FirstLength = 1 << 10;
    private const int BytesOfEntry = 32;

    private readonly Shard[] _shards = new Shard[Shards];

    public FingerprintTable()
    {
        for (int shard = 0; shard < Shards; shard++)
            _shards[shard] = new Shard();
    }

    /// <summary>Memory taken, about.</summary>
    public long Bytes
    {
        get
        {
            long sum = 0;
            foreach (Shard shard in _shards)
                sum += (long)shard.Length * BytesOfEntry;
            return sum;
        }
    }

    /// <summary>Adds a state, or, where it was found on this very level, keeps the lesser of the two steps that lead to it.</summary>
    /// <returns>Whether it is new.</returns>
    public bool Add(UInt128 fingerprint, int level, int parent, int letter) => ShardOf(fingerprint).Add(fingerprint, level, parent, letter);

    /// <summary>The step by which a known state was reached first.</summary>
    public (int Parent, int Letter) Find(UInt128 fingerprint) => ShardOf(fingerprint).Find(fingerprint);

    private Shard ShardOf(UInt128 fingerprint) => _shards[(int)((ulong)(fingerprint >> 64) >> 58)];

    // One entry lies in one line of the cache: a search is mostly waiting for memory.
    private struct Entry
    {
        public ulong Low;
        public ulong High;
        public int Parent;

        /// <summary>One more than the level at which the state was found; 0 where there is none.</summary>
        public int Level;
        public ushort Letter;

        public readonly bool Is(ulong low, ulong high) => Low == low && High == high;
    }

    private sealed class Shard
    {
        private readonly Lock _lock = new();
        private Entry[] _entries = new Entry[FirstLength];
        private int _count;

        public int Length => _entries.Length;

        public bool Add(UInt128 fingerprint, int level, int parent, int letter)
        {
            lock (_lock)
            {
                ref Entry entry = ref EntryFor(_entries, fingerprint);
                if (entry.Level != 0)
                {
                    if (entry.Level == level + 1 && (parent < entry.Parent || (parent == entry.Parent && letter < entry.Letter)))
                    {
                        entry.Parent = parent;
                        entry.Letter = (ushort)letter;
                    }

                    return false;
                }

                entry = new Entry { Low = unchecked((ulong)fingerprint), High = (ulong)(fingerprint >> 64), Level = level + 1, Parent = parent, Letter = (ushort)letter };
                _count++;
                if (_count > _entries.Length / 8 * 5)
                    Grow();
                return true;
            }
        }

        public (int Parent, int Letter) Find(UInt128 fingerprint)
        {
            ref Entry entry = ref EntryFor(_entries, fingerprint);
            return (entry.Parent, entry.Letter);
        }

        private static ref Entry EntryFor(Entry[] entries, UInt128 fingerprint)
        {
            ulong low = unchecked((ulong)fingerprint);
            ulong high = (ulong)(fingerprint >> 64);
            int mask = entries.Length - 1;
            int at = (int)(low & (ulong)mask);
            while (entries[at].Level != 0 && !entries[at].Is(low, high))
                at = (at + 1) & mask;
            return ref entries[at];
        }

        private void Grow()
        {
            var grown = new Entry[_entries.Length * 2];
            foreach (ref readonly Entry entry in _entries.AsSpan())
            {
                if (entry.Level != 0)
                    EntryFor(grown, new UInt128(entry.High, entry.Low)) = entry;
            }

            _entries = grown;
        }
    }
}
