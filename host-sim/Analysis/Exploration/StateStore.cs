using System;
using System.Collections.Generic;

namespace LubeController.Analysis.Exploration;

/// <summary>States of one length, one after the other, in blocks that are used again.</summary>
internal sealed class StateStore(int stateLength)
{
    private const int BlockBytes = 1 << 20;

    private readonly int _perBlock = Math.Max(1, BlockBytes / Math.Max(1, stateLength));
    private readonly List<byte[]> _blocks = [];

    /// <summary>States held.</summary>
    public int Count { get; private set; }

    /// <summary>Memory taken.</summary>
    public long Bytes => (long)_blocks.Count * _perBlock * stateLength;

    /// <summary>A state by its place.</summary>
    public Span<byte> this[int index] => _blocks[index / _perBlock].AsSpan(index % _perBlock * stateLength, stateLength);

    /// <summary>Makes room for one more.</summary>
    public Span<byte> Add()
    {
        if (Count / _perBlock == _blocks.Count)
            _blocks.Add(new byte[_perBlock * stateLength]);
        return this[Count++];
    }

    /// <summary>Forgets all states and keeps the room.</summary>
    public void Clear() => Count = 0;
}
