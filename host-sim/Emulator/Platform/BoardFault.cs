using System;
using LubeController.Plant.Faults;

namespace LubeController.Emulator.Platform;

/// <summary>A fault of the board: it makes a difference where the board meets something because of it.</summary>
public sealed class BoardFault : Fault
{
    private readonly Action<BoardPlatform, int, FaultSetting> _change;
    private readonly Func<BoardPlatform, int, long> _met;

    /// <param name="part">The kind of part.</param>
    /// <param name="change">What it changes in the board when it is set, and puts back when it heals; with the block that it names.</param>
    /// <param name="met">How often the board has met what it brings about.</param>
    internal BoardFault(FaultPart part, Action<BoardPlatform, int, FaultSetting> change, Func<BoardPlatform, int, long> met)
        : base(part)
    {
        _change = change;
        _met = met;
    }

    /// <inheritdoc/>
    protected override ActiveFault On(FaultHost host, string part) => new InPlace(this, part, (BoardPlatform)host);

    private sealed class InPlace(BoardFault fault, string part, BoardPlatform board) : ActiveFault(fault, part)
    {
        private readonly int _block = BoardFaults.BlockOf(part);
        private long _metBefore;

        protected override void Change(in FaultSetting setting)
        {
            fault._change(board, _block, setting);
            _metBefore = fault._met(board, _block);
        }

        protected override bool MakesDifference() => fault._met(board, _block) > _metBefore;
    }
}
