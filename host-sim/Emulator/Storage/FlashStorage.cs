using System;
using LubeController.Board;
using LubeController.Plant.Numbers;

namespace LubeController.Emulator.Storage;

/// <summary>
/// Non-volatile memory of the virtual board: blocks that outlive a power cut, and that tear, fail, wear out and flip bits as
/// flash does. It depends on what was done to it alone, the garbage it leaves included.
/// </summary>
public sealed class FlashStorage : IBlockStorage
{
    private const byte Erased = 0xFF;

    private readonly byte[] _bytes;
    private readonly int[] _writes;
    private readonly int[] _programs;
    private readonly bool[] _touched;
    private readonly SeededGenerator _dice;
    private int _tearAt;
    private TearRest _rest;
    private bool _tears;
    private int _failing;
    private int _lifeWrites = int.MaxValue;
    private WornBlock _worn;

    /// <summary>Makes a storage that was never written: every byte FF.</summary>
    /// <param name="blockCount">Number of blocks, 2 or more.</param>
    /// <param name="blockLength">Bytes of one block, 1 or more.</param>
    /// <param name="seed">Seed of the garbage and of the bits that a worn block flips.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number below its range.</exception>
    public FlashStorage(int blockCount, int blockLength, ulong seed = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(blockCount, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(blockLength, 1);
        BlockCount = blockCount;
        BlockLength = blockLength;
        _bytes = new byte[blockCount * blockLength];
        Array.Fill(_bytes, Erased);
        _writes = new int[blockCount];
        _programs = new int[blockCount];
        _touched = new bool[blockCount];
        _dice = new SeededGenerator(seed);
    }

    /// <inheritdoc/>
    public int BlockCount { get; }

    /// <inheritdoc/>
    public int BlockLength { get; }

    /// <summary>Whether a torn write took the power: until <see cref="PowerBack"/> nothing is read or written.</summary>
    public bool PowerLost { get; private set; }

    /// <summary>Writes and programs so far, torn and failed ones included.</summary>
    public long TotalWrites { get; private set; }

    /// <summary>Writes and programs so far that failed and left a block as it was.</summary>
    public long RefusedWrites { get; private set; }

    /// <summary>Writes of a block, each of which erased it; torn ones included, failed ones not.</summary>
    /// <exception cref="IndexOutOfRangeException">No such block.</exception>
    public int Writes(int block) => _writes[block];

    /// <summary>Programs of a block, which erase nothing.</summary>
    /// <exception cref="IndexOutOfRangeException">No such block.</exception>
    public int Programs(int block) => _programs[block];

    /// <summary>Power fails in the middle of the next write or program.</summary>
    /// <param name="byteCount">Bytes that are still written, 0 or more; from the length of the write on it is whole, and power fails right after it.</param>
    /// <param name="rest">What the bytes after them are then.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 0 bytes.</exception>
    public void TearNextWriteAt(int byteCount, TearRest rest)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(byteCount);
        _tearAt = byteCount;
        _rest = rest;
        _tears = true;
    }

    /// <summary>Whether a tear is ordered that no write has come to yet.</summary>
    public bool TearWaits => _tears;

    /// <summary>Takes back a tear that was ordered.</summary>
    public void TearNoMore() => _tears = false;

    /// <summary>Power is there again after a torn write.</summary>
    public void PowerBack() => PowerLost = false;

    /// <summary>The next writes and programs fail: nothing is written, and the board is told.</summary>
    /// <param name="count">How many, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 0.</exception>
    public void FailNextWrites(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        _failing = count;
    }

    /// <summary>Every block stands so many writes; what is written after that goes wrong.</summary>
    /// <param name="writes">Writes that a block stands, 0 or more.</param>
    /// <param name="how">How a worn block goes wrong.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 0 writes.</exception>
    public void WearOutAfter(int writes, WornBlock how = WornBlock.Refuses)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(writes);
        _lifeWrites = writes;
        _worn = how;
    }

    /// <summary>Turns one bit round.</summary>
    /// <param name="block">0 to <see cref="BlockCount"/> - 1.</param>
    /// <param name="bit">0 to 8 times <see cref="BlockLength"/>, less 1; bit 0 is the lowest of the first byte.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such block or bit.</exception>
    public void FlipBit(int block, int bit)
    {
        Guard(block);
        ArgumentOutOfRangeException.ThrowIfNegative(bit);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(bit, 8 * BlockLength);
        _bytes[(block * BlockLength) + (bit >> 3)] ^= (byte)(1 << (bit & 7));
        _touched[block] = true;
    }

    /// <summary>The bytes of a block as they stand.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such block.</exception>
    public ReadOnlySpan<byte> Block(int block)
    {
        Guard(block);
        return _bytes.AsSpan(block * BlockLength, BlockLength);
    }

    /// <summary>
    /// Takes over the bytes of another storage of the same shape. Where that one has not changed since this was last done, only
    /// what was changed here in between is copied back.
    /// </summary>
    /// <param name="other">The other.</param>
    /// <param name="unchanged">Whether it has not changed since.</param>
    /// <exception cref="ArgumentException">Another shape.</exception>
    public void TakeOver(FlashStorage other, bool unchanged)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.BlockCount != BlockCount || other.BlockLength != BlockLength)
            throw new ArgumentException($"A storage of {other.BlockCount} blocks of {other.BlockLength} bytes does not fit one of {BlockCount} of {BlockLength}.", nameof(other));
        for (int block = 0; block < BlockCount; block++)
        {
            if (!unchanged || _touched[block])
                other.Block(block).CopyTo(Own(block));
            _touched[block] = false;
        }

        PowerLost = false;
        _tears = false;
    }

    /// <inheritdoc/>
    public bool Read(int block, byte[] buffer)
    {
        ArgumentNullException.ThrowIfNull(buffer);
        if (PowerLost || block < 0 || block >= BlockCount)
            return false;
        Array.Copy(_bytes, block * BlockLength, buffer, 0, Math.Min(BlockLength, buffer.Length));
        return true;
    }

    /// <inheritdoc/>
    public bool Write(int block, byte[] buffer, int length)
    {
        ArgumentNullException.ThrowIfNull(buffer);
        if (!Begins(block, 0, buffer, length))
            return false;
        bool worn = _writes[block] >= _lifeWrites;
        if (worn && _worn == WornBlock.Refuses)
        {
            RefusedWrites++;
            return false;
        }

        _writes[block]++;
        Span<byte> own = Own(block);
        int whole = _tears ? Math.Min(_tearAt, length) : length;
        buffer.AsSpan(0, whole).CopyTo(own);
        if (whole == length || _rest != TearRest.Old)
            own[whole..].Fill(Erased);
        if (worn && length > 0)
            FlipBit(block, (int)(_dice.Next() % (8UL * (ulong)length)));
        return Ends(own[whole..length]);
    }

    /// <inheritdoc/>
    public bool Program(int block, int at, byte[] buffer, int length)
    {
        ArgumentNullException.ThrowIfNull(buffer);
        if (!Begins(block, at, buffer, length))
            return false;
        _programs[block]++;
        Span<byte> own = Own(block).Slice(at, length);
        int whole = _tears ? Math.Min(_tearAt, length) : length;

        // Programming takes bits from 1 to 0; only an erase takes them back.
        for (int index = 0; index < whole; index++)
            own[index] &= buffer[index];
        return Ends(own[whole..]);
    }

    private bool Begins(int block, int at, byte[] buffer, int length)
    {
        if (PowerLost || block < 0 || block >= BlockCount || at < 0 || length < 0 || length > buffer.Length || at > BlockLength - length)
            return false;
        TotalWrites++;
        if (_failing > 0)
        {
            _failing--;
            RefusedWrites++;
            return false;
        }

        _touched[block] = true;
        return true;
    }

    private bool Ends(Span<byte> unwritten)
    {
        if (!_tears)
            return true;
        if (_rest == TearRest.Garbage)
        {
            for (int index = 0; index < unwritten.Length; index++)
                unwritten[index] = (byte)(_dice.Next() & 0xFF);
        }

        _tears = false;
        PowerLost = true;
        return false;
    }

    private Span<byte> Own(int block) => _bytes.AsSpan(block * BlockLength, BlockLength);

    private void Guard(int block)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(block);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(block, BlockCount);
    }
}
