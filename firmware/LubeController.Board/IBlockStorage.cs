namespace LubeController.Board;

/// <summary>
/// Non-volatile memory in blocks. It exists so that power cuts at any byte can be tried on the bench; a fake in memory
/// stands beside it in the emulator.
/// </summary>
public interface IBlockStorage
{
    /// <summary>Number of blocks, 2 or more.</summary>
    int BlockCount { get; }

    /// <summary>Bytes of one block.</summary>
    int BlockLength { get; }

    /// <summary>Reads a block.</summary>
    /// <param name="block">0 to <see cref="BlockCount"/> - 1.</param>
    /// <param name="buffer">Takes up to <see cref="BlockLength"/> bytes, from its start.</param>
    /// <returns>Whether the block could be read.</returns>
    bool Read(int block, byte[] buffer);

    /// <summary>Erases a block and writes its beginning; a power cut may leave it half written, with anything after what was written.</summary>
    /// <param name="block">0 to <see cref="BlockCount"/> - 1.</param>
    /// <param name="buffer">The bytes, from its start.</param>
    /// <param name="length">How many, at most <see cref="BlockLength"/>.</param>
    /// <returns>Whether the block was written.</returns>
    bool Write(int block, byte[] buffer, int length);

    /// <summary>
    /// Writes into a part of a block that was not written since the block was erased. A power cut may leave the part half
    /// written, with anything after what was written; the rest of the block is not touched.
    /// </summary>
    /// <param name="block">0 to <see cref="BlockCount"/> - 1.</param>
    /// <param name="at">Where the part begins, bytes from the block's start.</param>
    /// <param name="buffer">The bytes, from its start.</param>
    /// <param name="length">How many; the part ends within the block.</param>
    /// <returns>Whether the part was written.</returns>
    bool Program(int block, int at, byte[] buffer, int length);
}
