using System;
using LubeController.Board;

namespace LubeController.Emulator;

/// <summary>Non-volatile memory of the virtual board: blocks in memory that outlive a power cut.</summary>
public sealed class MemoryStorage : IBlockStorage
{
    private readonly byte[][] _blocks;

    /// <summary>Makes a storage that was never written: every byte FF, as in erased flash.</summary>
    /// <param name="blockCount">Number of blocks, 2 or more.</param>
    /// <param name="blockLength">Bytes of one block, 1 or more.</param>
    public MemoryStorage(int blockCount, int blockLength)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(blockCount, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(blockLength, 1);
        _blocks = new byte[blockCount][];
        for (int block = 0; block < blockCount; block++)
        {
            _blocks[block] = new byte[blockLength];
            Array.Fill(_blocks[block], (byte)0xFF);
        }

        BlockLength = blockLength;
    }

    /// <inheritdoc/>
    public int BlockCount => _blocks.Length;

    /// <inheritdoc/>
    public int BlockLength { get; }

    /// <summary>Writes so far.</summary>
    public int Writes { get; private set; }

    /// <inheritdoc/>
    public bool Read(int block, byte[] buffer)
    {
        ArgumentNullException.ThrowIfNull(buffer);
        if (block < 0 || block >= _blocks.Length)
            return false;
        Array.Copy(_blocks[block], buffer, Math.Min(BlockLength, buffer.Length));
        return true;
    }

    /// <inheritdoc/>
    public bool Write(int block, byte[] buffer, int length)
    {
        ArgumentNullException.ThrowIfNull(buffer);
        if (block < 0 || block >= _blocks.Length || length > BlockLength)
            return false;
        Array.Copy(buffer, _blocks[block], length);
        Writes++;
        return true;
    }
}
