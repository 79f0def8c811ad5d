using System;

namespace LubeController.Board;

/// <summary>Which blocks hold what: two for settings, two for the boot record, the logbook, and all others for the state.</summary>
public sealed class MemoryLayout
{
    private readonly int _logBlocks;
    private readonly int _stateBlocks;

    /// <summary>Fewest blocks.</summary>
    public const int FewestBlocks = 8;

    /// <summary>Shortest block, bytes.</summary>
    public const int ShortestBlock = 2048;

    /// <summary>Blocks that last ten years at the preset save interval; <c>firmware/MEMORY.md</c> shows how long others last.</summary>
    public const int UsualBlocks = 72;

    /// <summary>Bytes of a block: the sector that serial NOR flash erases at once, as is common practice.</summary>
    public const int UsualBlockLength = 4096;

    /// <summary>Blocks of settings.</summary>
    public const int SettingsBlocks = 2;

    /// <summary>Blocks of the boot record.</summary>
    public const int BootBlocks = 2;

    private const int MostLogBlocks = 4;
    private const int FewestLogBlocks = 2;

    /// <summary>Lays a storage out.</summary>
    /// <param name="blockCount">Its blocks, <see cref="FewestBlocks"/> or more.</param>
    /// <param name="blockLength">Bytes of one, <see cref="ShortestBlock"/> or more.</param>
    /// <exception cref="ArgumentException">Too small.</exception>
    public MemoryLayout(int blockCount, int blockLength)
    {
        if (blockCount < FewestBlocks || blockLength < ShortestBlock)
            throw new ArgumentException("The non-volatile memory is too small: it needs 8 blocks of 2048 bytes, or more.");
        _logBlocks = blockCount < 2 * FewestBlocks ? FewestLogBlocks : MostLogBlocks;
        _stateBlocks = blockCount - SettingsBlocks - BootBlocks - _logBlocks;
    }

    /// <summary>The first block of settings.</summary>
    public int FirstSettings => 0;

    /// <summary>The first block of the boot record.</summary>
    public int FirstBoot => SettingsBlocks;

    /// <summary>The first block of the logbook.</summary>
    public int FirstLog => SettingsBlocks + BootBlocks;

    /// <summary>Blocks of the logbook, 2 or more.</summary>
    public int LogBlocks => _logBlocks;

    /// <summary>The first block of the state.</summary>
    public int FirstState => FirstLog + _logBlocks;

    /// <summary>Blocks of the state, 2 or more.</summary>
    public int StateBlocks => _stateBlocks;

    /// <summary>What a block holds.</summary>
    public BlockKind KindOf(int block)
    {
        if (block < FirstBoot)
            return BlockKind.Settings;
        if (block < FirstLog)
            return BlockKind.Boot;
        return block < FirstState ? BlockKind.Logbook : BlockKind.State;
    }
}
