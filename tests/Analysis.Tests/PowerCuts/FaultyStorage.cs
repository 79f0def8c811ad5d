using System;
using System.Collections.Generic;
using LubeController.Board;

namespace LubeController.Analysis.Tests.PowerCuts;

/// <summary>Deliberate faults between the main loop and the storage.</summary>
internal sealed class FaultyStorage(string fault, IBlockStorage inner) : IBlockStorage
{
    private readonly MemoryLayout _layout = new(inner.BlockCount, inner.BlockLength);
    private readonly Dictionary<BlockKind, (int Block, byte[] Bytes)> _late = [];

    public int BlockCount => inner.BlockCount;

    public int BlockLength => inner.BlockLength;

    public static IBlockStorage Make(string fault, IBlockStorage inner) => new FaultyStorage(fault, inner);

    public bool Read(int block, byte[] buffer)
    {
        int where = Where(block);
        if (where >= 0)
            return inner.Read(where, buffer);
        Array.Fill(buffer, (byte)0xFF);
        return true;
    }

    public bool Write(int block, byte[] buffer, int length)
    {
        BlockKind kind = _layout.KindOf(block);
        switch (fault)
        {
            case "one block for the state" when kind == BlockKind.State:
                return inner.Write(_layout.FirstState, buffer, length);
            case "one bank for the settings" when kind == BlockKind.Settings:
                return inner.Write(_layout.FirstSettings, buffer, length);
            case "boot record not written" when kind == BlockKind.Boot:
                return true;
            case "boot record one start late" when kind == BlockKind.Boot:
            case "settings one store late" when kind == BlockKind.Settings:
            case "state one save late" when kind == BlockKind.State:
                return WriteLate(kind, block, buffer, length);
            case "logbook erases the block after too" when kind == BlockKind.Logbook:
                int after = block + 1 < _layout.FirstState ? block + 1 : _layout.FirstLog;
                return inner.Write(after, buffer, 0) && inner.Write(block, buffer, length);
            case "end written first" when kind == BlockKind.State:
                // The last eight bytes are made to show the new number before the rest is written.
                byte[] old = new byte[BlockLength];
                inner.Read(block, old);
                old[0] = 0;
                Array.Copy(buffer, length - 8, old, length - 8, 8);
                return inner.Write(block, old, length) && inner.Write(block, buffer, length);
            default:
                return inner.Write(block, buffer, length);
        }
    }

    public bool Program(int block, int at, byte[] buffer, int length)
    {
        if (fault != "logbook block rewritten for each entry")
            return inner.Program(block, at, buffer, length);
        byte[] whole = new byte[BlockLength];
        inner.Read(block, whole);
        Array.Copy(buffer, 0, whole, at, length);
        return inner.Write(block, whole, at + length);
    }

    private int Where(int block) => (fault, _layout.KindOf(block)) switch
    {
        ("one block for the state", BlockKind.State) => block == _layout.FirstState ? block : -1,
        ("one bank for the settings", BlockKind.Settings) => block == _layout.FirstSettings ? block : -1,
        _ => block,
    };

    private bool WriteLate(BlockKind kind, int block, byte[] buffer, int length)
    {
        bool written = !_late.TryGetValue(kind, out (int Block, byte[] Bytes) late) || inner.Write(late.Block, late.Bytes, late.Bytes.Length);
        _late[kind] = (block, buffer.AsSpan(0, length).ToArray());
        return written;
    }
}
