using System;
using LubeController.Board;

namespace LubeController.Analysis.PowerCuts;

/// <summary>Takes down what the main loop is promised by the storage beneath.</summary>
internal sealed class PromiseLayer(Promises kept) : IBlockStorage
{
    private Promises? _next;

    /// <summary>The storage beneath.</summary>
    public required IBlockStorage Inner { get; init; }

    /// <summary>What will be promised once the write under way is done; outside of one, what is.</summary>
    public Promises Next => _next ?? kept;

    public int BlockCount => Inner.BlockCount;

    public int BlockLength => Inner.BlockLength;

    public bool Read(int block, byte[] buffer) => Inner.Read(block, buffer);

    public bool Write(int block, byte[] buffer, int length) =>
        Promise(promises => promises.Write(block, buffer.AsSpan(0, length)), () => Inner.Write(block, buffer, length));

    public bool Program(int block, int at, byte[] buffer, int length) =>
        Promise(promises => promises.Program(block, buffer.AsSpan(0, length)), () => Inner.Program(block, at, buffer, length));

    private bool Promise(Action<Promises> promise, Func<bool> write)
    {
        _next = kept.Copy();
        promise(_next);
        bool written = write();
        if (written)
            promise(kept);
        _next = null;
        return written;
    }
}
