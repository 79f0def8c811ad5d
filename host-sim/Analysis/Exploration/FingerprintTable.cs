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
    private const int BytesOfEntry = 8 + 8 + 4 + 4 + 2;

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

    private sealed class Shard
    {
        private readonly Lock _lock = new();
        private ulong[] _low = new ulong[FirstLength];
        private ulong[] _high = new ulong[FirstLength];
        private int[] _level = new int[FirstLength];
        private int[] _parent = new int[FirstLength];
        private ushort[] _letter = new ushort[FirstLength];
        private int _count;

        public int Length => _low.Length;

        public bool Add(UInt128 fingerprint, int level, int parent, int letter)
        {
            lock (_lock)
            {
                int at = Place(fingerprint);
                if (_level[at] != 0)
                {
                    if (_level[at] == level + 1 && (parent < _parent[at] || (parent == _parent[at] && letter < _letter[at])))
                    {
                        _parent[at] = parent;
                        _letter[at] = (ushort)letter;
                    }

                    return false;
                }

                Put(at, unchecked((ulong)fingerprint), (ulong)(fingerprint >> 64), level + 1, parent, (ushort)letter);
                _count++;
                if (_count > _low.Length / 8 * 5)
                    Grow();
                return true;
            }
        }

        public (int Parent, int Letter) Find(UInt128 fingerprint)
        {
            int at = Place(fingerprint);
            return (_parent[at], _letter[at]);
        }

        private int Place(UInt128 fingerprint)
        {
            ulong low = unchecked((ulong)fingerprint);
            ulong high = (ulong)(fingerprint >> 64);
            int mask = _low.Length - 1;
            int at = (int)(low & (ulong)mask);
            while (_level[at] != 0 && (_low[at] != low || _high[at] != high))
                at = (at + 1) & mask;
            return at;
        }

        private void Put(int at, ulong low, ulong high, int level, int parent, ushort letter)
        {
            _low[at] = low;
            _high[at] = high;
            _level[at] = level;
            _parent[at] = parent;
            _letter[at] = letter;
        }

        private void Grow()
        {
            (ulong[] low, ulong[] high, int[] level, int[] parent, ushort[] letter) = (_low, _high, _level, _parent, _letter);
            int length = low.Length * 2;
            _low = new ulong[length];
            _high = new ulong[length];
            _level = new int[length];
            _parent = new int[length];
            _letter = new ushort[length];
            for (int old = 0; old < low.Length; old++)
            {
                if (level[old] != 0)
                    Put(Place(new UInt128(high[old], low[old])), low[old], high[old], level[old], parent[old], letter[old]);
            }
        }
    }
}
