using System;
using System.Buffers.Binary;
using System.Collections.Generic;
using LubeController.Board;
using LubeController.Core;

namespace LubeController.Analysis.PowerCuts;

/// <summary>
/// What the main loop was told is written, as it handed it over: read from the blocks themselves, by the layout that
/// <c>firmware/MEMORY.md</c> tells, and not from what the storage holds.
/// </summary>
internal sealed class Promises
{
    private const int Payload = 20;
    private readonly MemoryLayout _layout;

    public Promises(MemoryLayout layout)
    {
        _layout = layout;
    }

    /// <summary>The core's state; empty before the first.</summary>
    public byte[] State { get; private set; } = [];

    /// <summary>Values of the settings; empty before the first.</summary>
    public int[] Settings { get; private set; } = [];

    /// <summary>Starts.</summary>
    public int Starts { get; private set; }

    /// <summary>Whether a fault waits.</summary>
    public bool FaultPending { get; private set; }

    /// <summary>Entries of the logbook by number, with the block that holds each.</summary>
    public Dictionary<uint, (int Block, ulong Print)> Log { get; private set; } = [];

    public Promises Copy() => new(_layout)
    {
        State = State,
        Settings = Settings,
        Starts = Starts,
        FaultPending = FaultPending,
        Log = new Dictionary<uint, (int Block, ulong Print)>(Log),
    };

    public void Write(int block, ReadOnlySpan<byte> bytes)
    {
        ReadOnlySpan<byte> payload = bytes[Payload..^8];
        switch (_layout.KindOf(block))
        {
            case BlockKind.State:
                State = payload[8..].ToArray();
                break;
            case BlockKind.Boot:
                Starts = BinaryPrimitives.ReadInt32LittleEndian(payload);
                FaultPending = payload[12] != 0;
                break;
            case BlockKind.Settings:
                int[] values = new int[SettingField.Count];
                for (int field = 0; field < values.Length; field++)
                    values[field] = BinaryPrimitives.ReadInt32LittleEndian(payload[(8 + (8 * field) + 4)..]);
                Settings = values;
                break;
            default:
                Erase(block);
                break;
        }
    }

    /// <summary>The entries of a block are given up.</summary>
    public void Erase(int block)
    {
        foreach ((uint number, (int Block, ulong Print) entry) in Log)
        {
            if (entry.Block == block)
                Log.Remove(number);
        }
    }

    public void Program(int block, ReadOnlySpan<byte> bytes) =>
        Log[BinaryPrimitives.ReadUInt32LittleEndian(bytes[4..])] = (block, PrintOf(bytes[0], bytes[3], BinaryPrimitives.ReadInt32LittleEndian(bytes[8..]), BinaryPrimitives.ReadInt32LittleEndian(bytes[20..])));

    public static ulong PrintOf(int what, int subject, int uptimeS, int detail) =>
        unchecked(((ulong)(uint)uptimeS << 32) ^ (uint)detail ^ ((ulong)(byte)what << 56) ^ ((ulong)(byte)subject << 48));
}
